// SPDX-License-Identifier: MIT
#include "cutting/knapsack.h"

#include <catch2/catch.hpp>

#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

using Item = KnapsackItem<std::int64_t>;
constexpr long nodes = 100'000;

/// The best value by trying every count of every item.
std::int64_t best_by_trying(const std::vector<Item>& items, std::size_t at, std::int64_t room) {
  if (at == items.size()) return 0;
  std::int64_t best = 0;
  for (int n = 0; n <= items[at].most && n * items[at].length <= room; ++n) {
    best = std::max(
        best, n * items[at].value + best_by_trying(items, at + 1, room - n * items[at].length));
  }
  return best;
}

}  // namespace

TEST_CASE("the most valuable filling is not the one of the best value per length",
          "[cutting][knapsack]") {
  // 6/4 = 1.5 per length is the best rate, but 4 leaves 6 - 4 = 2 unused; 2 x 3 fills the bar: 8.
  const std::vector<Item> items{{4, 6, 1}, {3, 4, 2}};
  const auto fill = best_fill(items, 6, nodes);
  CHECK(fill.value == 8);
  CHECK(fill.upper == 8);
  CHECK(fill.counts == std::vector<int>{0, 2});
}

TEST_CASE("a filling takes no more of an item than there are", "[cutting][knapsack]") {
  const std::vector<Item> items{{1, 5, 2}, {1, 1, 9}};
  CHECK(best_fill(items, 4, nodes).counts == std::vector<int>{2, 2});
}

TEST_CASE("nothing goes into a bar shorter than every piece", "[cutting][knapsack]") {
  const std::vector<Item> items{{5, 5, 2}};
  const auto fill = best_fill(items, 4, nodes);
  CHECK(fill.value == 0);
  CHECK(fill.counts == std::vector<int>{0});
}

TEST_CASE("short and long capacities are filled as trying everything finds best",
          "[cutting][knapsack]") {
  Draw draw(51);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    // The same job in millimetres and in micrometres, which no table of lengths can hold.
    std::vector<Item> items, fine;
    for (int i = draw.whole(1, 6); i > 0; --i) {
      items.push_back({draw.whole(1, 30), draw.whole(0, 50), draw.whole(0, 3)});
      fine.push_back(items.back());
      fine.back().length *= 1'000'000;
    }
    const int room = draw.whole(0, 60);
    const std::int64_t best = best_by_trying(items, 0, room);
    CHECK(best_fill(items, room, nodes).value == best);
    const auto fill = best_fill(fine, room * std::int64_t{1'000'000}, nodes);
    CHECK(fill.value == best);
    CHECK(fill.upper == best);
    const auto hasty = best_fill(fine, room * std::int64_t{1'000'000}, 1);
    CHECK(hasty.value <= best);
    CHECK(hasty.upper >= best);
  }
}
