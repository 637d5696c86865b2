// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "cutting/bars.h"
#include "cutting/boards.h"

namespace strikeoff {

/// Boards and parts in whole numbers; stock k of `bars` is source k, and costs are 0.
struct BoardProblem {
  BarProblem bars;
  std::vector<std::vector<std::size_t>> parts;  // of each item, one entry per piece
};

/// Whole nanometres, parts rounded up and boards down, the kerf added to both, then in units of
/// the largest length and width that divide all parts: a sum of parts is a multiple of it, so the
/// rest of a board counts for nothing.
[[nodiscard]] BoardProblem board_problem(const std::vector<BoardItem>& items,
                                         const std::vector<BoardSource>& sources, const Saw& saw);

/// The boards that the patterns cut, each part once; what a pattern has over is left out.
[[nodiscard]] BoardPacking packing_of(const std::vector<BarPattern>& patterns,
                                      const BoardProblem& problem,
                                      const std::vector<BoardItem>& items,
                                      const std::vector<BoardSource>& sources, const Saw& saw);

}  // namespace strikeoff
