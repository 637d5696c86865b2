// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

namespace strikeoff {

// Cutting along one direction, in whole numbers. A bar of length L takes n pieces when
// sum(l) + (n - 1) kerf <= L; with the kerf added to every piece and to every bar that is
// sum(l') <= L', and so lengths here hold the kerf already.

struct BarItem {
  std::int64_t length = 1;
  int demand = 0;
};

struct BarStock {
  std::int64_t length = 1;
  std::int64_t cost = 0;
  int available = std::numeric_limits<int>::max();
};

struct BarProblem {
  std::vector<BarItem> items;
  std::vector<BarStock> stocks;
};

/// How often one stock is cut in one way.
struct BarPattern {
  std::size_t stock = 0;
  std::vector<int> counts;  // one an item
  int times = 1;
  bool operator==(const BarPattern&) const = default;
};

/// How many bars of each stock.
using BarMix = std::vector<int>;

}  // namespace strikeoff
