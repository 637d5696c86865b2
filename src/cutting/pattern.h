// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>

#include "cutting/bars.h"

namespace strikeoff {

/// The most valuable way to cut one board of a stock that was found: strip by strip of each width
/// the best pieces still wanted (a knapsack along the board), then the best choice of these strips
/// across it. Values below 0 count as 0. `demand` bounds the pieces. Adds the steps taken to
/// `work`.
[[nodiscard]] BarPattern best_pattern(const BarProblem& problem, std::size_t stock,
                                      std::span<const double> value, std::span<const int> demand,
                                      long nodes, long& work);

/// Puts what is still wanted where its strips have room: with third cuts, strips of two widths may
/// have chosen the same piece, which only one of them got.
void fill_up(const BarProblem& problem, std::span<const double> value, std::span<const int> demand,
             long nodes, BarPattern& pattern, long& work);

/// No way to cut one board of the stock is worth more. Exact for bars; for boards every strip of a
/// width counts as the best one, and all of them as no more than all pieces of the width.
[[nodiscard]] std::int64_t pattern_bound(const BarProblem& problem, std::size_t stock,
                                         std::span<const std::int64_t> value,
                                         std::span<const int> demand, long nodes, long& work);

/// The widths of the items, each once, widest first.
[[nodiscard]] std::vector<std::int64_t> widths_of(const BarProblem& problem);

/// True when no stock is wide enough for two strips and all pieces are of one width.
[[nodiscard]] bool is_one_dimensional(const BarProblem& problem);

}  // namespace strikeoff
