// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cutting/bar_solver.h"

namespace strikeoff::test {

/// The least that boards for all pieces cost, by trying every way to cut every board: memoized,
/// but with no bound and nothing left out. For a handful of pieces. Nothing when no boards do.
[[nodiscard]] std::optional<std::int64_t> cheapest_by_trying(const BarProblem& problem);

/// What is wrong with a solution, one sentence each: pieces not cut or cut too seldom, strips that
/// hold what they must not or too much of it, boards that do not exist, a wrong cost, a bound above
/// it. Pieces over count as no fault: what a pattern has too many of is left out.
[[nodiscard]] std::vector<std::string> faults_of(const BarSolution& solution,
                                                 const BarProblem& problem);

/// Items and stocks only, as text that a failed check can show.
[[nodiscard]] std::string text_of(const BarProblem& problem);

}  // namespace strikeoff::test
