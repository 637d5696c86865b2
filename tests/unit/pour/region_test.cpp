// SPDX-License-Identifier: MIT
#include "pour/region.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

TEST_CASE("rings side by side leave no seam and a ring inside is a hole", "[region]") {
  const Ring low{{0, 0}, {10, 0}, {10, 4}, {0, 4}}, high{{0, 4}, {10, 4}, {10, 6}, {0, 6}};
  CHECK(region_of({low, high}).size() == 1);
  const Ring hole{{2, 1}, {4, 1}, {4, 3}, {2, 3}};
  const Region region = region_of({low, hole});
  CHECK(region.size() == 4);  // before it, below and above it, after it
  CHECK(area(region) == Approx(40 - 4));
}

TEST_CASE("a triangle is cut into equal areas across its slope", "[region]") {
  // Base 100 along u, height growing to 100: half the area lies within 100/sqrt(2).
  const Region region = region_of({Ring{{0, 0}, {100, 0}, {100, 100}}});
  const std::vector<Region> parts = cut_by_area(region, {1, 1});
  REQUIRE(parts.size() == 2);
  CHECK(parts[0].back().u1 == Approx(70.710678));
  CHECK(parts[0].back().u1 == parts[1].front().u0);
  CHECK(area(parts[0]) == Approx(2500));
}

TEST_CASE("parts follow unequal shares", "[region]") {
  const Region region = region_of({Ring{{0, 0}, {90, 0}, {90, 10}, {0, 10}}});
  const std::vector<Region> parts = cut_by_area(region, {1, 3, 0.5});
  CHECK(area(parts[0]) == Approx(200));
  CHECK(area(parts[1]) == Approx(600));
  CHECK(area(parts[2]) == Approx(100));
}

TEST_CASE("a line across a step of the edge has what lies on both sides of it", "[region]") {
  // An L: 10 high up to u = 4, then 3 high.
  const Region region = region_of({Ring{{0, 0}, {9, 0}, {9, 3}, {4, 3}, {4, 10}, {0, 10}}});
  using Stretches = std::vector<std::pair<double, double>>;
  CHECK(across(region, 2) == Stretches{{0, 10}});
  CHECK(across(region, 4) == Stretches{{0, 3}});
  CHECK(across(region, 6) == Stretches{{0, 3}});
  CHECK(width_after(region, 0) == Approx(10));
  CHECK(width_after(region, 4) == Approx(3));
  CHECK(area(between(region, 3, 5)) == Approx(10 + 3));
}

TEST_CASE("a region is cut where it is told to", "[region]") {
  const Region region = region_of({Ring{{0, 0}, {90, 0}, {90, 10}, {0, 10}}});
  const std::vector<Region> parts = cut_at(region, {20, 20, 50});
  REQUIRE(parts.size() == 4);
  CHECK(area(parts[0]) == Approx(200));
  CHECK(parts[1].empty());
  CHECK(area(parts[3]) == Approx(400));
}
