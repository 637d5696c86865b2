// SPDX-License-Identifier: MIT
#include "resume/stop_end.h"

#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"

namespace strikeoff {
namespace {

std::vector<Joint> front_after(const std::vector<Joint>& joints, int batch) {
  std::vector<Joint> front;
  for (const Joint& joint : joints) {
    if (joint.first <= batch && joint.second > batch) front.push_back(joint);
  }
  return front;
}

Length length_of(const std::vector<Joint>& joints) {
  Length length;
  for (const Joint& joint : joints) length += joint.length;
  return length;
}

std::string reason_of(const Prospect& prospect, int after, bool is_late) {
  if (!is_late) {
    return fmt::format("the bags on site are enough for {} more",
                       count(prospect.with_bags - prospect.begun, "batch", "batches"));
  }
  const int late = *prospect.too_late;
  std::string reason = late <= prospect.begun
                           ? fmt::format("batch {} in hand cannot be placed in time", late)
                           : fmt::format("batch {} cannot be placed in time", late);
  if (after > prospect.begun) reason += ", and the front is shortest here";
  return reason;
}

}  // namespace

std::optional<StopEnd> find_stop_end(const Prospect& prospect) {
  const int in_time = prospect.too_late ? *prospect.too_late - 1 : prospect.batches;
  const int last = std::min(in_time, std::max(prospect.begun, prospect.with_bags));
  if (last >= prospect.batches) return std::nullopt;
  StopEnd best;
  bool found = false;
  // A hair longer is no longer: rounding must not move the board.
  constexpr Length hair = Length::mm(0.1);
  for (int after = std::max(prospect.placed, std::min(prospect.begun, last)); after <= last;
       ++after) {
    std::vector<Joint> front = front_after(*prospect.joints, after);
    const Length length = length_of(front);
    if (found && length > best.length + hair) continue;
    best.after = after;
    best.length = length;
    best.joints = std::move(front);
    found = true;
  }
  best.is_for_bags = last < in_time;
  best.leaves_out = prospect.batches - best.after;
  best.reason = reason_of(prospect, best.after, !best.is_for_bags);
  return best;
}

}  // namespace strikeoff
