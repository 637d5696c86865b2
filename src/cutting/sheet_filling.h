// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/box_table.h"

namespace strikeoff {

/// A choice that one sheet holds, and the box it is best cut in.
struct SheetFilling {
  Choice counts = 0;
  Choice more = 0;  // guards of the items of which the sheet holds one more
  std::size_t stock = 0;
  int choice = 0;
  std::size_t first = 0;  // the direction of the first cuts
  int box = 0;
  double rest = 0;  // area of the rectangle cut off first
};

/// All that a sheet of this stock can be filled with.
[[nodiscard]] std::vector<SheetFilling> fillings_of(const BoxTable& table, const SheetStock& sheet,
                                                    std::size_t stock);

/// True when nothing left over of `left` after it would fit in with it. Any other filling does no
/// better for cost and number of sheets.
[[nodiscard]] inline bool is_full(const SheetFilling& filling, Choice left,
                                  const ChoiceCode& code) {
  return (code.present(left) & filling.more) == 0;
}

}  // namespace strikeoff
