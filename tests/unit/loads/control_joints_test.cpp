// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "loads/control_joints.h"
#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

ControlJoints joints_of(Length length, Length depth, Length thickness,
                        std::optional<Length> grain = {}) {
  Slab slab = slab_on(corners_of({{}, length, depth}), {}, thickness);
  slab.support = Support::ground;
  Mix mix;
  mix.aggregate = grain;
  return control_joints(slab, measure_slab(slab), mix);
}

constexpr Length feet(double v) {
  return Length::inches(12 * v);
}

}  // namespace

// ACI 302.1R as quoted on a page that was read: 24 to 36 thicknesses, 18 ft at most: 8 to 12 ft for
// 4 in and 12 to 18 ft for 6 in. Portland Cement Association's factors as quoted: 24 under 3/4 in
// aggregate, 30 over it. Joints a quarter deep: 1 in of 4 in.
TEST_CASE("joints stand 24 to 30 thicknesses apart as published", "[loads]") {
  CHECK(joints_of(feet(20), feet(20), in(4), in(0.5)).apart.in_in() == Approx(96));
  CHECK(joints_of(feet(20), feet(20), in(4), in(1)).apart.in_in() == Approx(120));
  CHECK(joints_of(feet(20), feet(20), in(6)).apart.in_in() == Approx(144));
  CHECK(joints_of(feet(20), feet(20), in(9)).apart.in_in() == Approx(216));
  CHECK(joints_of(feet(20), feet(20), in(12), in(1)).apart.in_in() == Approx(216));
  CHECK(joints_of(feet(20), feet(20), in(1.5)).apart.in_in() == Approx(36));
  CHECK(joints_of(feet(20), feet(20), in(4)).depth.in_in() == Approx(1));
}

TEST_CASE("a slab is parted into equal panels only past the spacing", "[loads]") {
  CHECK(joints_of(feet(8), feet(8), in(4)).none());
  const ControlJoints one = joints_of(feet(8) + mm(1), feet(6), in(4));
  REQUIRE(one.from_left.size() == 1);
  CHECK(one.from_left[0].in_mm() == Approx((feet(8).in_mm() + 1) / 2));
  CHECK(one.from_front.empty());
  const ControlJoints floor = joints_of(feet(24), feet(16), in(4));
  CHECK(floor.from_left == std::vector<Length>{feet(8), feet(16)});
  CHECK(floor.from_front == std::vector<Length>{feet(8)});
}

// Read, in pages on jointing: no panel more than 1.5 times as long as wide.
TEST_CASE("no panel is long for its width unless it is short", "[loads]") {
  CHECK(joints_of(feet(6), feet(4), in(4)).none());
  CHECK(joints_of(feet(6) + mm(1), feet(4), in(4)).from_left.size() == 1);
  CHECK(joints_of(feet(4), feet(6) + mm(1), in(4)).from_front.size() == 1);
  CHECK(joints_of(feet(4), feet(1), in(4)).none());  // half the spacing
}
