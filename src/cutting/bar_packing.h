// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/bars.h"
#include "cutting/column_generation.h"

namespace strikeoff {

enum class Packing { found, impossible, unknown };

struct PackedBars {
  Packing outcome = Packing::unknown;
  std::vector<BarPattern> patterns;  // when found
};

/// Cuts all pieces from these bars, or shows that they do not hold them. Filling bar by bar first,
/// then rounding the continuous solution, then a complete search: the longest piece left goes into
/// every bar and pattern whose waste the mix can still afford, cut off where the continuous
/// solution of the rest shows in integers (`dual_cut`) that the rest does not fit. `effort` counts
/// what may still be searched; when it is used up the outcome is `unknown`.
[[nodiscard]] PackedBars pack_bars(const BarProblem& problem, const BarMix& mix,
                                   ColumnGeneration& continuous, long& effort);

}  // namespace strikeoff
