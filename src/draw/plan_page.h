// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "draw/paper.h"
#include "strikeoff/plan.h"

namespace strikeoff::draw {

/// What a drawing of one slab is made with.
struct PlanPage {
  const SlabPlan& slab;
  Units units;
  Paper& sheet;
  View view;
  Labels labels;
  std::vector<std::string> notes = {
      "E: edge strip, S: soffit strip, P: panel, as marked in the cut list. Measure on the base "
      "before cutting."};
  bool all_sides = true;  // each has its length and its parts in the drawing
};

[[nodiscard]] inline PaperPoint middle(const PaperPoint& a, const PaperPoint& b) {
  return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}

/// Beside the sides that stand at one.
void draw_walls(PlanPage& page);
/// Lengths, names and form strips of the sides.
void draw_sides(PlanPage& page);
/// Of a slab of four corners that are not square: its sides alone leave it open how it leans.
void draw_diagonals(PlanPage& page);

}  // namespace strikeoff::draw
