// SPDX-License-Identifier: MIT
#include "slab/part_list.h"

#include <fmt/core.h>

namespace strikeoff {

Length total(const StripRun& run) {
  Length sum;
  for (const Length piece : run.pieces) sum += piece;
  return sum;
}

PartList::PartList(std::string slab, std::string stock, MarkCounter& marks)
    : slab_(std::move(slab)), stock_(std::move(stock)), marks_(marks) {}

std::string PartList::add(const StripRun& run) {
  std::string marks;
  for (std::size_t i = 0; i < run.pieces.size(); ++i) {
    Part part;
    part.role = run.role;
    part.stock = stock_;
    part.width = run.width;
    part.length = run.pieces[i];
    if (i == 0) part.left_cut_deg = run.left_cut_deg;
    if (i + 1 == run.pieces.size()) part.right_cut_deg = run.right_cut_deg;
    part.place = run.place;
    if (run.reads_from_left && run.pieces.size() > 1) {
      part.place += fmt::format(" (piece {} of {} from the left)", i + 1, run.pieces.size());
    }
    marks += (i == 0 ? "" : ", ") + add(std::move(part), run.letter);
  }
  return marks;
}

std::string PartList::add(Part part, char letter) {
  const Key key{part.role,   part.stock,        part.width,        part.length,
                part.height, part.left_cut_deg, part.right_cut_deg};
  const auto [at, is_new] = index_.try_emplace(key, parts_.size());
  if (is_new) {
    part.mark = marks_.next(letter);
    part.slab = slab_;
    last_place_.push_back(part.place);
    parts_.push_back(std::move(part));
    return parts_.back().mark;
  }
  Part& known = parts_[at->second];
  known.quantity += part.quantity;
  std::string& last = last_place_[at->second];
  if (last != part.place) {  // else a second piece of the same side
    known.place += ", " + part.place;
    last = part.place;
  }
  return known.mark;
}

}  // namespace strikeoff
