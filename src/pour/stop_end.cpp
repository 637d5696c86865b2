// SPDX-License-Identifier: MIT
#include "pour/stop_end.h"

#include <algorithm>

namespace strikeoff {
namespace {

PlannedStop board_after(const std::vector<Joint>& joints, int after) {
  PlannedStop board;
  board.after = after;
  const Joint* longest = nullptr;
  for (const Joint& joint : joints) {
    if (joint.first > after || joint.second <= after) {
      board.wait = std::max(board.wait, joint.wait);
      continue;
    }
    board.length += joint.length;
    if (longest == nullptr || joint.length > longest->length) longest = &joint;
  }
  if (longest != nullptr) board.longest = *longest;
  return board;
}

}  // namespace

std::optional<PlannedStop> stop_end(const std::vector<Joint>& joints, int batches,
                                    Duration allowed) {
  // Every joint that waits too long lies across the board.
  int least = 1, most = batches - 1;
  for (const Joint& joint : joints) {
    if (joint.wait <= allowed + minutes(1e-9)) continue;
    least = std::max(least, joint.first);
    most = std::min(most, joint.second - 1);
  }
  std::optional<PlannedStop> best;
  for (int after = least; after <= most; ++after) {
    PlannedStop board = board_after(joints, after);
    if (board.length <= Length{}) continue;
    if (!best || board.length < best->length) best = std::move(board);
  }
  return best;
}

}  // namespace strikeoff
