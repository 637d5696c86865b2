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

TEST_CASE("stretches that touch in a point are not in contact", "[region]") {
  std::vector<BatchContact> contacts;
  add_contacts({{0, 1e6, 1}, {1e6, 2e6, 2}}, {{0, 1e6 - 1e-6, 3}, {1e6 - 1e-6, 2e6, 4}}, contacts);
  REQUIRE(contacts.size() == 2);
  CHECK(contacts[0].second == 3);
  CHECK(contacts[1].first == 2);
  CHECK(contacts[1].length == Approx(1e6));
}
