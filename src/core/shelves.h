// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// A kind of sheet to pack on; nothing as `count` means as many as needed.
struct SheetSource {
  Length length, width;
  std::optional<int> count;
};

struct SheetItem {
  Length length, width;
  int quantity = 1;
};

struct PackedItem {
  std::size_t item;
  Rectangle at;  // on the sheet, from its lower left corner
};

struct PackedSheet {
  std::size_t source;
  std::vector<PackedItem> items;
};

struct SheetPacking {
  std::vector<PackedSheet> sheets;
  std::vector<std::size_t> unplaced;  // one entry per piece left over
};

/// Packs rectangles, turned where that helps, on sheets taken from the sources in their order.
/// Guillotine in three stages: the sheet into shelves, shelves into pieces, pieces trimmed to
/// depth; `kerf` between neighbours. First fit by falling depth (Coffman, Garey, Johnson and
/// Tarjan, SIAM J. Comput. 9, 1980, from memory) with shelves along or across the sheet and pieces
/// flat or upright; keeps the packing that leaves least over, then uses fewest sheets. The
/// answer depends on the order of equal items only.
[[nodiscard]] SheetPacking pack_on_shelves(const std::vector<SheetItem>& items,
                                           const std::vector<SheetSource>& sources, Length kerf);

}  // namespace strikeoff
