// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

#include "cutting/sheet_filling.h"

namespace strikeoff {

/// What each piece and each sheet of a stock is worth, in units of which `scale` are one of cost:
/// a sheet filled in any way is worth at most its cost and `extra`. So pieces cost at least their
/// worth less the extras of the sheets they may use.
struct SheetDual {
  std::int64_t scale = 1;
  std::vector<std::int64_t> weights;  // of the items
  std::vector<std::int64_t> extra;    // of the stocks; 0 where there is no end of sheets
  std::int64_t bound = 0;             // cost of all pieces

  [[nodiscard]] std::int64_t weight(Choice choice, const ChoiceCode& code) const;
  /// Whole cost that a worth takes, at least 0.
  [[nodiscard]] std::int64_t cost(std::int64_t worth) const {
    return worth <= 0 ? 0 : (worth + scale - 1) / scale;
  }
};

/// A good one: a dual solution of Gilmore and Gomory's linear program ("A linear programming
/// approach to the cutting-stock problem", Operations Research 9, 1961, from memory) over all the
/// fillings of each stock, raised and cut back by turns and then checked in whole numbers.
[[nodiscard]] SheetDual sheet_dual(const std::vector<std::vector<SheetFilling>>& fillings,
                                   const GuillotineProblem& problem, const ChoiceCode& code,
                                   long& steps);

}  // namespace strikeoff
