// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <tuple>
#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff {

struct ExactSheets {
  std::vector<CutSheet> sheets;
  std::int64_t cost = 0;  // the least
  int fewest = 0;         // sheets of any plan
};

/// The best plan by the boxes of all choices: of at most three stages if one costs as little and
/// uses as few sheets. Pieces that fit no sheet must be taken out before. Takes `steps` off;
/// nothing when they, or the choices allowed, do not suffice.
[[nodiscard]] std::optional<ExactSheets> cut_exactly(const GuillotineProblem& problem, long choices,
                                                     long& steps);

[[nodiscard]] std::int64_t cost_of(const std::vector<CutSheet>& sheets,
                                   const std::vector<SheetStock>& stocks);

/// Less is better: pieces, cost, sheets, more than three stages, largest left-over, stages.
using PlanWorth = std::tuple<std::int64_t, std::int64_t, std::size_t, bool, double, int>;
[[nodiscard]] PlanWorth worth(const std::vector<CutSheet>& sheets,
                              const std::vector<SheetStock>& stocks);

}  // namespace strikeoff
