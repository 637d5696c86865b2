// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/boards.h"

namespace strikeoff {

/// Moves parts between strips of one width, and strips between boards of one source, where that
/// leaves a larger single left-over that can be used again (from 300 x 40 mm: assumption); the
/// boards stay the same in number and kind. Strips of a board are put widest first.
void gather(BoardPacking& packing, const std::vector<BoardItem>& items,
            const std::vector<BoardSource>& sources, const Saw& saw);

}  // namespace strikeoff
