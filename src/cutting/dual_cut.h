// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "cutting/bars.h"

namespace strikeoff {

/// What every mix of bars that holds the pieces satisfies: the sum of worth[k] x bars of stock k is
/// at least `need`. `need` is the pieces valued at whole-number prices, and worth[k] the most such
/// value that one bar of stock k can hold, so the inequality holds whatever the prices are: it is
/// proven in integers even where they come from floating point.
struct DualCut {
  std::vector<std::int64_t> value;  // of one piece of each item
  std::vector<std::int64_t> worth;
  std::int64_t need = 0;
};

/// The cut of these prices (of any scale, negative ones count as 0); nothing when all are 0.
/// Adds the steps taken to `work`.
[[nodiscard]] std::optional<DualCut> dual_cut(const BarProblem& problem,
                                              std::span<const int> demand,
                                              std::span<const double> price, long& work);

/// True when a mix may hold the pieces as far as this cut can tell.
[[nodiscard]] bool satisfies(const BarMix& mix, const DualCut& cut);
/// The same when only some of the pieces are left to cut; a cut for all of them holds for fewer.
[[nodiscard]] bool satisfies(const BarMix& mix, const DualCut& cut, std::span<const int> demand);

}  // namespace strikeoff
