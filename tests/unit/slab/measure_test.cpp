// SPDX-License-Identifier: MIT
#include "slab/measure.h"

#include <catch2/catch.hpp>

#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr double in3_per_ft3 = 1728;
double cubic_inches(Volume v) {
  return in_cubic_feet(v) * in3_per_ft3;
}
double square_inches(Area a) {
  return in_square_feet(a) * 144;
}

}  // namespace

TEST_CASE("the potting bench holds the concrete worked by hand", "[measure]") {
  const SlabPlan shape = measure_slab(potting_bench());
  CHECK(shape.name == "slab");
  CHECK(square_inches(shape.area) == Approx(94 * 28).epsilon(1e-12));
  CHECK(shape.perimeter == in(244));
  CHECK(bounding_box(shape.panel).length == in(92.5));
  CHECK(bounding_box(shape.panel).depth == in(26.5));
  CHECK(cubic_inches(shape.panel_displacement) == Approx(1225.625).epsilon(1e-12));
  CHECK(cubic_inches(shape.concrete) == Approx(2722.375).epsilon(1e-12));
  CHECK(in_litres(shape.concrete) == Approx(44.61173).epsilon(1e-7));
  CHECK(shape.least_thickness == in(1));
}

TEST_CASE("a thin slab over a panel needs a third less than its plain box", "[measure]") {
  // Common practice, no source: 40 x 84 in, 1 1/2 in edge, 1/2 in panel ending 1/4 in inside.
  Slab slab = slab_on(corners_of({{}, in(84), in(40)}), {}, in(1.5));
  add_panel(slab, in(-0.25), in(0.5));
  const SlabPlan shape = measure_slab(slab);
  CHECK(in_cubic_feet(shape.concrete) == Approx(1.96).margin(0.005));
  CHECK(in_cubic_feet(shape.area * slab.thickness) == Approx(2.92).margin(0.005));
}

TEST_CASE("an opening takes the concrete above it and only a through one takes panel",
          "[measure]") {
  Slab slab = potting_bench();
  const Volume whole = measure_slab(slab).concrete;
  slab.openings.push_back({"sink", {{in(20), in(6)}, in(18), in(14)}, true});
  const SlabPlan through = measure_slab(slab);
  CHECK(through.openings.front().box.at == Point{in(19), in(5)});
  CHECK(cubic_inches(whole - through.concrete) == Approx(18 * 14 * 1.0));
  CHECK(square_inches(cut_panel_area(slab, through)) == Approx(92.5 * 26.5 - 18 * 14));
  slab.openings.front().through = false;
  const SlabPlan blind = measure_slab(slab);
  CHECK(cubic_inches(whole - blind.concrete) == Approx(18 * 14 * 1.0));
  CHECK(square_inches(cut_panel_area(slab, blind)) == Approx(92.5 * 26.5));
  slab.openings.front().through = true;
  slab.openings.push_back({"tap", {{in(50), in(6)}, in(4), in(3)}, true});
  CHECK(square_inches(cut_panel_area(slab, measure_slab(slab))) ==
        Approx(92.5 * 26.5 - 18 * 14 - 4 * 3));
}
