// SPDX-License-Identifier: MIT
#include "slab/squared.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstddef>

#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// The same corners from the same first one.
bool same(const std::optional<Polygon>& squared, const Polygon& expected) {
  if (!squared || squared->size() != expected.size()) return false;
  Polygon turned = *squared;
  const auto first = std::find(turned.begin(), turned.end(), expected.front());
  std::rotate(turned.begin(), first, turned.end());
  return turned == expected;
}

}  // namespace

TEST_CASE("an L off by millimetres is squared outwards", "[squared]") {
  // Each side goes to the outermost of its two corners: bottom min(0, -3), right max(2000, 2004),
  // foot's top max(603, 600), leg's right max(900, 902), top max(1798, 1800), left min(2, 0).
  const Polygon ell{{mm(0), mm(0)},     {mm(2000), mm(-3)},  {mm(2004), mm(603)},
                    {mm(902), mm(600)}, {mm(900), mm(1798)}, {mm(2), mm(1800)}};
  CHECK(same(squared(ell), {{mm(0), mm(-3)},
                            {mm(2004), mm(-3)},
                            {mm(2004), mm(603)},
                            {mm(902), mm(603)},
                            {mm(902), mm(1800)},
                            {mm(0), mm(1800)}}));
}

TEST_CASE("a right-angled area is squared to itself", "[squared]") {
  Draw draw(61);
  for (int round = 0; round < 100; ++round) {
    CAPTURE(round);
    const Polygon area = random_outline(draw, mm(310));
    CHECK(same(squared(area), area));
  }
}

TEST_CASE("sides within 25 mm of one line come into line", "[squared]") {
  // A U: the ends of its legs at 1000 and 1020 mm become 1020; 30 mm apart they stay two levels,
  // but then the slice between them is still wider than 25 mm.
  const auto u = [](double left, double right) {
    return Polygon{{mm(0), mm(0)},        {mm(1500), mm(0)},   {mm(1500), mm(right)},
                   {mm(1000), mm(right)}, {mm(1000), mm(400)}, {mm(500), mm(400)},
                   {mm(500), mm(left)},   {mm(0), mm(left)}};
  };
  CHECK(same(squared(u(1000, 1020)), u(1020, 1020)));
  CHECK(same(squared(u(1000, 1030)), u(1000, 1030)));
}

TEST_CASE("a step under 25 mm and a bend in a side are levelled", "[squared]") {
  const Polygon plain = corners_of({{}, mm(2000), mm(600)});
  // The back steps down from 600 to 580 mm at 800 mm from the left.
  CHECK(same(squared({{mm(0), mm(0)},
                      {mm(2000), mm(0)},
                      {mm(2000), mm(580)},
                      {mm(800), mm(580)},
                      {mm(800), mm(600)},
                      {mm(0), mm(600)}}),
             plain));
  // The front bends 4 mm in at its middle.
  CHECK(same(squared({{mm(0), mm(0)},
                      {mm(1000), mm(4)},
                      {mm(2000), mm(0)},
                      {mm(2000), mm(600)},
                      {mm(0), mm(600)}}),
             plain));
}

TEST_CASE("an area with a side over 2 degrees off is not squared", "[squared]") {
  // tan 2 degrees is 0.0349: 600 mm rise 21 mm.
  const auto trapezoid = [](double off) {
    return Polygon{{mm(0), mm(0)}, {mm(2000), mm(0)}, {mm(2000), mm(600)}, {mm(off), mm(600)}};
  };
  CHECK(squared(trapezoid(20)));
  CHECK_FALSE(squared(trapezoid(22)));
}

TEST_CASE("an area that squaring would tear or spoil is not squared", "[squared]") {
  // Two limbs that overlap by 10 mm only: a slice as narrow as the error.
  CHECK_FALSE(squared({{mm(0), mm(0)},
                       {mm(1000), mm(0)},
                       {mm(1000), mm(500)},
                       {mm(2000), mm(500)},
                       {mm(2000), mm(1000)},
                       {mm(0) + mm(990), mm(1000)},
                       {mm(990), mm(501)},
                       {mm(0), mm(500)}}));
}

TEST_CASE("what is squared encloses the area and is right-angled and simple", "[squared]") {
  Draw draw(62);
  int done = 0;
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    Polygon area = random_outline(draw, mm(310));
    for (Point& p : area) p = {p.x + mm(draw.whole(-5, 5)), p.y + mm(draw.whole(-5, 5))};
    const auto around = squared(area);
    if (!around) continue;
    ++done;
    CHECK(is_right_angled(*around));
    CHECK_FALSE(self_contact(*around));
    for (const Point& p : area) CHECK(contains(*around, p));
    // No side moves by more than the 10 mm that its ends may be apart and 25 mm to come in line.
    CHECK(signed_area(*around) <= signed_area(area) + perimeter(area) * mm(35));
  }
  CHECK(done >= 200);
}
