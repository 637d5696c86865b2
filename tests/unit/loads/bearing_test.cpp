// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "loads/bearing.h"
#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr Density density = kilograms_per_m3(2300);

std::vector<Bearing> bearings_of(const Slab& slab) {
  SlabPlan plan = measure_slab(slab, mm(16));
  plan.mass = plan.concrete * density;
  return bearings(slab, plan, mm(16));
}

/// 2000 x 600 mm, flush with its base, 50 mm thick: 60 L, 138 kg.
Slab bench() {
  return slab_on(corners_of({{}, mm(2000), mm(600)}), {}, mm(50));
}

Partition across(double x_mm) {
  return {{mm(x_mm), {}}, {mm(x_mm), mm(600)}};
}

}  // namespace

TEST_CASE("four legs at the corners carry a quarter each", "[loads]") {
  Slab slab = bench();
  slab.legs = {{mm(50), mm(50)}, {mm(1950), mm(50)}, {mm(1950), mm(550)}, {mm(50), mm(550)}};
  const auto legs = bearings_of(slab);
  REQUIRE(legs.size() == 4);
  CHECK(legs[0].on == "leg 1");
  for (const Bearing& leg : legs) {
    CHECK(leg.mass.si() == Approx(34.5));
    CHECK(leg.area.si() == Approx(0.3));
  }
}

// Mid lines at 500 and 1250 mm: 500, 750 and 750 mm of 2000, 0.069 kg a millimetre.
TEST_CASE("partitions from front to back are parted by the lines midway", "[loads]") {
  Slab slab = bench();
  slab.partitions = {across(200), across(800), across(1700)};
  const auto carried = bearings_of(slab);
  REQUIRE(carried.size() == 3);
  CHECK(carried[0].on == "partition 1");
  CHECK(carried[0].mass.si() == Approx(34.5));
  CHECK(carried[1].mass.si() == Approx(51.75));
  CHECK(carried[2].mass.si() == Approx(51.75));
}

// A leg at (0, 0) and one at (600, 600) of a square: the diagonal between the other corners parts
// it, so each has half.
TEST_CASE("two legs across a square part it along its diagonal", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(600), mm(600)}), {}, mm(50));
  slab.legs = {{mm(0), mm(0)}, {mm(600), mm(600)}};
  for (const Bearing& leg : bearings_of(slab)) CHECK(leg.area.si() == Approx(0.18));
}

// Of 1000 mm on each side the left has 600 x 300 of its 600 000 mm2 cut out: 0.42 and 0.6 m2.
TEST_CASE("an opening weighs nothing on the support beside it", "[loads]") {
  Slab slab = bench();
  slab.partitions = {across(500), across(1500)};
  slab.openings = {{"sink", {{mm(200), mm(150)}, mm(600), mm(300)}, true, {}}};
  const auto carried = bearings_of(slab);
  CHECK(carried[0].area.si() == Approx(0.42));
  CHECK(carried[1].area.si() == Approx(0.6));
  CHECK(carried[0].mass.si() == Approx(0.42 * 0.05 * 2300));
}

// The base lies 20 mm low at its right end: 50 mm rising to 70 mm of concrete. Left half: mean 55
// mm of 0.6 m2 = 33 L; right half: mean 65 mm = 39 L.
TEST_CASE("a hollow weighs on the support under it", "[loads]") {
  Slab slab = bench();
  slab.partitions = {across(500), across(1500)};
  slab.levels = {{{{}, {}}, {}}, {{{}, mm(600)}, {}}, {{mm(2000), {}}, mm(20)}};
  const auto carried = bearings_of(slab);
  CHECK(carried[0].mass.si() == Approx(33 * 2.3));
  CHECK(carried[1].mass.si() == Approx(39 * 2.3));
}

// Crossing at the slab's middle: by symmetry about it both ends of each carry alike, and together
// they carry the slab.
TEST_CASE("partitions that cross share the slab without counting any of it twice", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(600), mm(600)}), {}, mm(50));
  slab.partitions = {{{mm(0), mm(300)}, {mm(600), mm(300)}},
                     {{mm(300), mm(0)}, {mm(300), mm(600)}}};
  const auto carried = bearings_of(slab);
  CHECK((carried[0].area + carried[1].area).si() == Approx(0.36));
  CHECK(carried[0].area.si() == Approx(0.18).epsilon(0.02));
}

// The bisectors of a right angle are parabolas only beyond the ends; here the nearest of two walls
// of an L is parted by the diagonal: 0.18 m2 each. Points 25 mm apart miss it by less than 1 %.
TEST_CASE("walls at a right angle are parted by the diagonal to a hundredth", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(600), mm(600)}), {}, mm(50));
  slab.partitions = {{{mm(0), mm(0)}, {mm(600), mm(0)}}, {{mm(0), mm(0)}, {mm(0), mm(600)}}};
  for (const Bearing& wall : bearings_of(slab)) {
    CHECK(wall.area.si() == Approx(0.18).epsilon(0.01));
  }
}

TEST_CASE("a slab without named supports and one on the ground have no bearings", "[loads]") {
  Slab slab = bench();
  CHECK(bearings_of(slab).empty());
  slab.partitions = {across(500)};
  CHECK(bearings_of(slab).size() == 1);
  CHECK(bearings_of(slab).front().mass.si() == Approx(138));
  slab.support = Support::ground;
  CHECK(bearings_of(slab).empty());
}

TEST_CASE("as many supports as a job may name are parted in bounded work", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(20000), mm(2000)}), {}, mm(50));
  for (int i = 0; i < 200; ++i) {
    slab.legs.push_back({mm(50 + 99.0 * i), mm(i % 2 == 0 ? 100 : 1900)});
    slab.partitions.push_back({{mm(50 + 99.0 * i), mm(200)}, {mm(60 + 99.0 * i), mm(1800)}});
  }
  Mass sum;
  for (const Bearing& one : bearings_of(slab)) sum += one.mass;
  CHECK(sum.si() == Approx(20 * 2 * 0.05 * 2300).epsilon(1e-9));
}
