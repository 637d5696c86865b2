// SPDX-License-Identifier: MIT
#pragma once

#include "cutting/bar_packing.h"

namespace strikeoff {

/// Cuts all pieces from these boards, or shows that they do not hold them, every strip as wide as
/// its pieces. It separates: for each width the smallest numbers of strips of each stock that hold
/// its pieces (bars along the board), then a choice of one such set of numbers for each width whose
/// strips lie side by side on the boards (bars across them). With one stock that is the two-level
/// decomposition of two-stage cutting (Gilmore and Gomory, Operations Research 13, 1965).
[[nodiscard]] PackedBars rip_boards(const BarProblem& problem, const BarMix& mix, long& effort);

}  // namespace strikeoff
