// SPDX-License-Identifier: MIT
#include "strikeoff/geometry.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

TEST_CASE("an outline grows by its offsets at mitred corners", "[geometry]") {
  const Polygon rectangle = corners_of({{}, Length::inches(92), Length::inches(26)});
  const std::vector<Length> outward{Length::inches(1), Length::inches(2), Length::inches(3),
                                    Length::inches(4)};
  const Polygon grown = offset_edges(rectangle, outward);
  CHECK(grown == corners_of({{Length::inches(-4), Length::inches(-1)},
                             Length::inches(92 + 2 + 4),
                             Length::inches(26 + 1 + 3)}));
}
