// SPDX-License-Identifier: MIT
#include "cutting/mix_search.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

TEST_CASE("a mix search goes on past all mixes that do not pack", "[cutting]") {
  // Two bars of the one stock satisfy the cut, but 2, 3, 4 and 5 are known not to pack: 6 x 7 = 42.
  BarProblem problem;
  problem.items = {{10, 4, 1}};
  problem.stocks = {{20, 7, 100, 1}};
  const BarMix most{100};
  MixSearch mixes(problem, most);
  mixes.cuts.push_back({{10}, {20}, 40});
  CHECK(mixes.cheapest(0) == BarMix{2});
  for (const int n : {2, 3, 4, 5}) mixes.not_packed.push_back({n});
  CHECK(mixes.cheapest(14) == BarMix{6});
  CHECK(mixes.missed() == MixSearch::no_cost);
}
