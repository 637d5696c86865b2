// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "cutting/cut_list.h"

namespace strikeoff {

/// Boards of one kind that can be had: pieces on hand, or stock to buy.
struct BoardSource {
  std::size_t stock = 0;  // index of the stock
  bool on_hand = false;
  Length length, width;      // of the whole board
  std::optional<int> count;  // nothing: as many as needed
  double cost = 0;           // of one; 0 on hand
};

/// One part to cut, once.
struct BoardItem {
  Length width, length;
  std::size_t part;
};

struct PackedStrip {
  Length width;
  std::vector<std::size_t> parts;
  Length rest;  // usable length and a kerf, less every part and its kerf: what is left and a kerf
};

struct PackedBoard {
  std::size_t source;
  std::vector<PackedStrip> strips;
  Length rest;  // of the width, likewise
};

struct BoardPacking {
  std::vector<PackedBoard> boards;
  std::vector<std::size_t> unplaced;  // parts, one entry per piece left over
};

/// Cuts the items from boards ripped into full-length strips, cheaply: least left over, then
/// least cost, then fewest boards, among these plans: best fit by falling size in several
/// orders, each kind of stock preferred in turn, on-hand pieces before or after it; and strips
/// filled as far as they go. Each plan's boards are then changed for the cheapest that still hold
/// what was put on them. No proof of the optimum; n log n but for odd stock. Items must be sorted,
/// so that equal jobs give equal plans.
[[nodiscard]] BoardPacking pack_boards(const std::vector<BoardItem>& items,
                                       const std::vector<BoardSource>& sources, const Saw& saw);

}  // namespace strikeoff
