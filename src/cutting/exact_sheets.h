// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <tuple>
#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff {

struct ExactSheets {
  std::vector<CutSheet> sheets;   // no worse than those known
  std::int64_t cost_bound = 0;    // no plan costs less
  std::int64_t number_bound = 0;  // nor uses fewer sheets
  bool proven = false;            // nor is better in cost, and then in number
};

/// The best plan, by all that one sheet can be filled with (`box_table.h`): a bound, then a search
/// for what beats the sheets `known`, then for one that leaves a larger rectangle. Pieces that fit
/// no sheet must be taken out before. Takes `steps` off; nothing when there are more choices than
/// allowed, or the steps do not suffice for the bound. Bounds hold for all pieces; unless proven,
/// they are 0 where some are unplaced.
[[nodiscard]] std::optional<ExactSheets> cut_exactly(const GuillotineProblem& problem,
                                                     std::vector<CutSheet> known,
                                                     std::size_t choices, long& steps);

[[nodiscard]] std::int64_t cost_of(const std::vector<CutSheet>& sheets,
                                   const std::vector<SheetStock>& stocks);

/// Less is better: pieces (less than 0), cost, sheets, largest left-over (less than 0), stages and
/// settings of the saw.
using PlanWorth = std::tuple<std::int64_t, std::int64_t, std::size_t, double, int, std::size_t>;
[[nodiscard]] PlanWorth worth(const std::vector<CutSheet>& sheets,
                              const std::vector<SheetStock>& stocks);

}  // namespace strikeoff
