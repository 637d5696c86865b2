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
  CHECK(square_inches(shape.area) == Approx(78.25 * 26.25).epsilon(1e-12));
  CHECK(shape.perimeter == in(209));
  CHECK(bounding_box(shape.panel).length == in(77));
  CHECK(bounding_box(shape.panel).depth == in(25));
  CHECK(cubic_inches(shape.panel_displacement) == Approx(842.1875).epsilon(1e-12));
  CHECK(cubic_inches(shape.concrete) == Approx(2752.421875).epsilon(1e-12));
  CHECK(in_litres(shape.concrete) == Approx(45.10411).epsilon(1e-7));
  CHECK(shape.least_thickness == in(1.3125));
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
  CHECK(through.openings.front().box.at == Point{in(18.875), in(4.875)});
  CHECK(cubic_inches(whole - through.concrete) == Approx(18 * 14 * 1.3125));
  CHECK(square_inches(cut_panel_area(slab, through)) == Approx(77 * 25 - 18 * 14));
  slab.openings.front().through = false;
  const SlabPlan blind = measure_slab(slab);
  CHECK(cubic_inches(whole - blind.concrete) == Approx(18 * 14 * 1.3125));
  CHECK(square_inches(cut_panel_area(slab, blind)) == Approx(77 * 25));
  slab.openings.front().through = true;
  slab.openings.push_back({"tap", {{in(50), in(6)}, in(4), in(3)}, true});
  CHECK(square_inches(cut_panel_area(slab, measure_slab(slab))) ==
        Approx(77 * 25 - 18 * 14 - 4 * 3));
}

TEST_CASE("a level slab is thinnest over its panel and thickest at its edge", "[measure]") {
  const SlabPlan shape = measure_slab(potting_bench());
  CHECK(shape.thinnest.thickness == in(1.3125));
  CHECK(shape.thinnest.at == Point{in(-0.5), in(-0.5)});
  CHECK(shape.thickest.thickness == in(1.75));
  CHECK(shape.thickest.at == Point{in(-1.125), in(-1.125)});
  CHECK(shape.base_low == Length{});
  CHECK(shape.level_correction == Volume{});
}

TEST_CASE("a bench whose right end is low takes the wedge worked by hand", "[measure]") {
  // The base falls 0.76 in over its 76 in: low = 0.01 x, and below 0 at the overhang's left end.
  // Over the outline of 2054.0625 in2, centroid at x = 38 in: x 0.38 in = 780.54375 in3. An
  // opening of 10 x 10 in centred at x = 58 in takes 100 in2 x 0.58 in = 58 in3 of it.
  Slab slab = potting_bench();
  slab.levels = {{{in(0), in(0)}, in(2)},
                 {{in(76), in(0)}, in(2.76)},
                 {{in(0), in(24)}, in(2)},
                 {{in(76), in(24)}, in(2.76)}};
  // From the slab's corner, 1 1/8 in before the base.
  slab.openings.push_back({"sink", {{in(54.125), in(9)}, in(10), in(10)}, true});
  const SlabPlan shape = measure_slab(slab);
  CHECK(cubic_inches(shape.level_correction) == Approx(780.54375 - 58).epsilon(1e-9));
  // Level: 2752.421875 in3 less 100 in2 x 1.3125 in.
  CHECK(cubic_inches(shape.concrete) == Approx(2752.421875 - 131.25 + 722.54375).epsilon(1e-9));
  CHECK(shape.base_low.in_in() == Approx(0.77125));
  CHECK(shape.base_low_at.x == in(77.125));
  // Over the panel from x = -1/2 in; at the edge to x = 77 1/8 in.
  CHECK(shape.thinnest.thickness.in_in() == Approx(1.3125 - 0.005));
  CHECK(shape.least_thickness.in_in() == Approx(1.3125 - 0.005));
  CHECK(shape.thickest.thickness.in_in() == Approx(1.75 + 0.77125));
}

TEST_CASE("apron and fall add to the concrete what was worked by hand", "[measure]") {
  // Apron 3 in deep at the front and right, strip 1/4 in, overhang 2 in there: outline 76 + 2 and
  // 24 + 2, 1 1/8 in more at the back and left: 79.125 x 27.125 in, legs 1 3/4 in wide, ring =
  // 79.125 x 27.125 - 77.375 x 25.375 = 2146.265625 - 1963.390625 = 182.875 in2, so 548.625 in3.
  Slab slab = potting_bench();
  for (const std::size_t k : {std::size_t{0}, std::size_t{1}}) {
    slab.sides[k].overhang = in(2);
    slab.sides[k].apron = true;
  }
  slab.apron_depth = in(3);
  // The top falls 1 % to the front: over 27.125 in it rises 0.27125 in, in the mean half of
  // that: 2146.265625 in2 x 0.135625 in = 291.087 in3.
  slab.fall = Fall{0.01, 0};
  const SlabPlan shape = measure_slab(slab, in(0.25));
  CHECK(cubic_inches(shape.apron) == Approx(548.625).epsilon(1e-9));
  CHECK(cubic_inches(shape.fall_wedge) == Approx(2146.265625 * 0.135625).epsilon(1e-9));
  // 2146.265625 x 1.75 - 842.1875 = 2913.77734375 in3 besides.
  CHECK(cubic_inches(shape.concrete) ==
        Approx(2913.77734375 + 548.625 + 2146.265625 * 0.135625).epsilon(1e-9));
  CHECK(shape.thickest.thickness.in_in() == Approx(2.02125));
}

TEST_CASE("a rounded corner takes its share of the apron", "[measure]") {
  // A radius of 1 in at the corner of two aprons takes 1 in2 x (1 - pi/4) of the ring.
  Slab slab = slab_on(corners_of({{}, in(40), in(20)}), in(2), in(2));
  for (Side& side : slab.sides) side.apron = true;
  slab.apron_depth = in(3);
  const Volume sharp = measure_slab(slab, in(0.5)).apron;
  slab.corner_cuts = {{0, in(1), true}};
  CHECK(cubic_inches(sharp - measure_slab(slab, in(0.5)).apron) ==
        Approx(3 * (1 - 3.14159265358979 / 4)).epsilon(1e-9));
}

TEST_CASE("of readings equally low the place does not hang on their order", "[measure]") {
  Slab slab = slab_on(corners_of({{}, in(40), in(20)}), {}, in(2));
  slab.levels = {{{in(30), in(10)}, in(0.5)}, {{in(10), in(10)}, in(0.5)}};
  for (const Point& corner : slab.base) slab.levels.push_back({corner, {}});
  const SlabPlan one = measure_slab(slab);
  std::swap(slab.levels[0], slab.levels[1]);
  const SlabPlan other = measure_slab(slab);
  CHECK(one.base_low_at == Point{in(10), in(10)});
  CHECK(other.base_low_at == one.base_low_at);
  CHECK(one.thickest.at == Point{in(10), in(10)});
  CHECK(other.thickest.at == one.thickest.at);
}
