// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <cmath>
#include <cstddef>
#include <vector>

#include "slab/measure.h"
#include "slab/panels.h"
#include "support/geos.h"
#include "support/random_outlines.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// By turns right-angled, right-angled but for corners a tape found up to 5 mm off, star-shaped.
Polygon some_area(Draw& draw, int round) {
  if (round % 3 == 0) return random_star(draw);
  Polygon area = random_outline(draw, mm(310));
  if (round % 3 == 1) return area;
  for (Point& p : area) p = {p.x + mm(draw.whole(-5, 5)), p.y + mm(draw.whole(-5, 5))};
  return area;
}

struct Laid {
  Polygon area;
  PanelLayout layout;
  std::vector<Polygon> outlines;
};

Laid laid_on(const Polygon& base, Length gap) {
  Slab slab = slab_on(base, {}, mm(40));
  add_panel(slab, {}, mm(12));
  slab.panel_gap = gap;
  const SlabPlan shape = measure_slab(slab);
  MarkCounter marks;
  Laid laid{shape.panel, lay_panels(slab, shape, in(0.125), marks), {}};
  for (const PanelPiece& piece : laid.layout.pieces) {
    laid.outlines.push_back(piece.outline.empty() ? corners_of(piece.at) : piece.outline);
  }
  return laid;
}

// Parts under 1 mm2 are left out where a row ends in a sharp tip.
constexpr double tips = 5e-5;

}  // namespace

TEST_CASE("panels without gaps cover any area and no place twice", "[panels]") {
  Draw draw(41);
  for (int round = 0; round < 150; ++round) {
    CAPTURE(round);
    const Laid laid = laid_on(some_area(draw, round), {});
    double sum = 0;
    for (const Polygon& outline : laid.outlines) sum += geos_area(outline).si();
    const GeosRegion together = GeosRegion::union_of(laid.outlines), area(laid.area);
    // As large as their sum: none overlap. All of it in the area, and the area all in it.
    CHECK(together.area().si() == Approx(sum).margin(1e-8));
    CHECK(together.without(area).area().si() == Approx(0).margin(1e-8));
    CHECK(area.without(together).area().si() == Approx(0).margin(tips));
  }
}

TEST_CASE("panels leave nothing open but their gaps and meet nowhere", "[panels]") {
  Draw draw(42);
  const Length gap = mm(3);
  for (int round = 0; round < 100; ++round) {
    CAPTURE(round);
    const Laid laid = laid_on(some_area(draw, round), gap);
    const GeosRegion together = GeosRegion::union_of(laid.outlines), area(laid.area);
    CHECK(together.without(area).area().si() == Approx(0).margin(1e-8));
    // Every place is within a gap of a panel.
    CHECK(area.without(together.grown_mitred(gap * 1.001)).area().si() == Approx(0).margin(tips));
    for (std::size_t i = 0; i < laid.outlines.size(); ++i) {
      for (std::size_t j = i + 1; j < laid.outlines.size(); ++j) {
        const GeosRegion a(laid.outlines[i]), b(laid.outlines[j]);
        CHECK_FALSE(a.overlaps(b));
      }
    }
  }
}
