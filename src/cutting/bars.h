// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

namespace strikeoff {

// Cutting in whole numbers. A bar of length L takes n pieces when sum(l) + (n - 1) kerf <= L; with
// the kerf added to every piece and to every bar that is sum(l') <= L', and so lengths and widths
// here hold the kerf already. A board is ripped into strips over its whole length, each as wide as
// the pieces then crosscut from it; a bar is a board of which all pieces have the width.

struct BarItem {
  std::int64_t length = 1;
  int demand = 0;
  std::int64_t width = 1;
};

struct BarStock {
  std::int64_t length = 1;
  std::int64_t cost = 0;
  int available = std::numeric_limits<int>::max();
  std::int64_t width = 1;
};

struct BarProblem {
  std::vector<BarItem> items;
  std::vector<BarStock> stocks;
  bool trim = false;  // a strip may hold narrower pieces, each then ripped to its width
};

/// A strip of one width and the pieces cut from it.
struct BarStrip {
  std::int64_t width = 1;
  std::vector<int> counts;  // one an item
  bool operator==(const BarStrip&) const = default;
};

/// How often one stock is cut in one way.
struct BarPattern {
  std::size_t stock = 0;
  std::vector<int> counts;  // one an item, in all strips together
  std::vector<BarStrip> strips;
  int times = 1;
  bool operator==(const BarPattern&) const = default;
};

/// How many bars of each stock.
using BarMix = std::vector<int>;

}  // namespace strikeoff
