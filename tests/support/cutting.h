// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "strikeoff/plan.h"
#include "support/slabs.h"

namespace strikeoff::test {

inline Part strip_part(const std::string& mark, Length width, Length length, int quantity = 1) {
  Part part;
  part.mark = mark;
  part.role = "edge strip";
  part.stock = "board";
  part.width = width;
  part.length = length;
  part.quantity = quantity;
  return part;
}

inline Part panel_part(const std::string& mark, Length length, Length width, int quantity = 1) {
  Part part = strip_part(mark, width, length, quantity);
  part.role = "backer panel";
  part.stock = "panel";
  return part;
}

inline Stock sheet(double length_in, double width_in) {
  return {"panel", "panel", in(length_in), in(width_in), in(0.5), {}, {}};
}

inline const StockTotal& total_of(const CutList& list, const std::string& stock) {
  return *std::find_if(list.totals.begin(), list.totals.end(),
                       [&](const StockTotal& t) { return t.stock == stock; });
}

}  // namespace strikeoff::test
