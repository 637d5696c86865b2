// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "cutting/box_table.h"

namespace strikeoff {

/// One box cut from one sheet of a stock.
struct SheetLoad {
  std::size_t stock = 0;
  int choice = 0, box = 0;
};

/// Which boxes are cut from which sheets.
struct SheetMix {
  std::vector<SheetLoad> loads;
  std::int64_t cost = 0;
  int unplaced = 0;
};

/// The mix of the table's boxes that leaves the fewest pieces unplaced, then costs least, then
/// uses the fewest sheets, by dynamic programming over the choices. Among equals one of at most
/// three stages, of a large rest and of few stages is preferred, but may be missed. Takes `steps`
/// off; nothing when they do not suffice.
[[nodiscard]] std::optional<SheetMix> best_mix(const BoxTable& table,
                                               const std::vector<SheetStock>& stocks, long& steps);

}  // namespace strikeoff
