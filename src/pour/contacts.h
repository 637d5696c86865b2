// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "pour/course.h"

namespace strikeoff {

/// A straight line along which two cells of a slab lie side by side.
struct CellContact {
  std::size_t first = 0, second = 0;  // cells, first < second
  Point from, to;
  bool is_joint = true;  // not too short beside a corner; what runs from edge to edge always is
};

/// Where cells touch along 10 mm and more, by first, then second, then place along the first one's outline.
[[nodiscard]] std::vector<CellContact> contacts_of(const std::vector<CutCell>& cells,
                                               const SlabPlan& shape);

}  // namespace strikeoff
