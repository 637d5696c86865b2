// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/bar_search.h"
#include "cutting/bars.h"
#include "cutting/column_generation.h"

namespace strikeoff {

struct PackedBars {
  Packing outcome = Packing::unknown;
  std::vector<BarPattern> patterns;  // when found
};

/// Cuts all pieces from these bars, or shows that they do not hold them. SheetFilling bar by bar
/// first, then rounding the continuous solution down again and again (diving), then a complete
/// search
/// (`BarSearch` for bars, `rip_boards` for boards). `effort` is what may still be spent, in steps
/// of `ColumnGeneration::work`; when it is used up the outcome is `unknown`.
[[nodiscard]] PackedBars pack_bars(const BarProblem& problem, const BarMix& mix,
                                   ColumnGeneration& continuous, long& effort);

}  // namespace strikeoff
