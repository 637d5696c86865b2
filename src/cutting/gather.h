// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/boards.h"

namespace strikeoff {

/// What is left of a board beside and behind its strips and can be used again, largest first.
[[nodiscard]] std::vector<LeftOver> left_over_of(const PackedBoard& board,
                                                 const BoardSource& source, const Saw& saw);

/// Moves parts between strips of one width, and strips between boards of one source, where that
/// leaves a larger single left-over that can be used again, or one as large and takes fewer
/// settings of the fence; the boards stay the same in number and kind. A few ways are tried, not
/// all. Strips of a board are put widest first.
void gather(BoardPacking& packing, const std::vector<BoardItem>& items,
            const std::vector<BoardSource>& sources, const Saw& saw);

}  // namespace strikeoff
