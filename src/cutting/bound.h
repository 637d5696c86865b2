// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/quantity.h"

namespace strikeoff {

struct BoundItem {
  Length length, width;
  int quantity = 1;
  bool may_turn = false;
};

/// A number of boards of `length` x `width` that no cutting can beat, ripped first or not: with
/// `kerf` added to parts and board, the area, and the area after dual feasible functions of length
/// and of width (Fekete and Schepers, "A general framework for bounds for higher-dimensional
/// orthogonal packing problems", Math. Methods Oper. Res. 60, 2004; the functions: "New classes of
/// fast lower bounds for bin packing problems", Math. Program. 91, 2001; from memory). A part that
/// may be turned counts as the lesser of its two ways. Every item must fit the board. Rounding can
/// only lower it.
[[nodiscard]] int boards_bound(const std::vector<BoundItem>& items, Length length, Length width,
                               Length kerf);

}  // namespace strikeoff
