// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/quantity.h"

namespace strikeoff {

struct BoundItem {
  Length length, width;
  int quantity = 1;
};

/// A number of boards of `length` x `width` that no cutting without turning parts can beat, ripped
/// first or not: with `kerf` added to parts and board, the area, and the area after dual feasible
/// functions of length and of width (Fekete and Schepers, "A general framework for bounds for
/// higher-dimensional orthogonal packing problems", Math. Methods Oper. Res. 60, 2004; the
/// functions: "New classes of fast lower bounds for bin packing problems", Math. Program. 91,
/// 2001; from memory). Every item must fit the board. Rounding can only lower it.
[[nodiscard]] int boards_bound(const std::vector<BoundItem>& items, Length length, Length width,
                               Length kerf);

/// The same for sheets whose parts may be turned: by area alone.
[[nodiscard]] int sheets_bound(const std::vector<BoundItem>& items, Length length, Length width,
                               Length kerf);

}  // namespace strikeoff
