// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/boards.h"

namespace strikeoff {

/// The boards to cut and what is proven of them. Bounds hold for every plan that rips boards into
/// full-length strips, crosscuts these, and rips a piece that is narrower than its strip once more.
struct BoardPlan {
  BoardPacking packing;
  double cost_bound = 0;          // no plan costs less, in the unit of the sources' costs
  std::vector<int> stock_bounds;  // no plan uses fewer boards of this stock; 0 where not sought
};

/// The cheapest boards for these items: least cost, then fewest bought, then fewest on hand. The
/// plan of `pack_boards`, or an exact one (`cut_bars`) where that is cheaper; a third cut only
/// where it saves money or a board. Of a job too large for the exact search the plan may cost more
/// than the bound says it must. Jobs with parts left over keep the plan of `pack_boards` and bounds
/// of 0.
[[nodiscard]] BoardPlan plan_boards(const std::vector<BoardItem>& items,
                                    const std::vector<BoardSource>& sources, std::size_t stocks,
                                    const Saw& saw);

}  // namespace strikeoff
