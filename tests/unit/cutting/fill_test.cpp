// SPDX-License-Identifier: MIT
#include "cutting/fill.h"

#include <catch2/catch.hpp>

#include "support/slabs.h"

using namespace strikeoff;
using strikeoff::test::in;

TEST_CASE("bins are filled exactly where falling first fit would waste", "[fill]") {
  // First fit decreasing: 5 4, 4 3 2, 2.
  const auto bins = fill_bins({in(5), in(4), in(4), in(3), in(2), in(2)}, in(10));
  CHECK(bins == std::vector<std::vector<std::size_t>>{{0, 3, 4}, {1, 2, 5}});
}

TEST_CASE("nothing to fill needs no bin", "[fill]") {
  CHECK(fill_bins({}, in(10)).empty());
}
