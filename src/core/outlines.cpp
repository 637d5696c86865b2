// SPDX-License-Identifier: MIT
#include "core/outlines.h"

#include <algorithm>

namespace strikeoff {
namespace {

template <class Outward>
Polygon moved_out(const Slab& slab, Outward by) {
  std::vector<Length> outward;
  for (const Side& side : slab.sides) outward.push_back(by(side));
  return offset_edges(slab.base, outward);
}

}  // namespace

Polygon sharp_outline(const Slab& slab) {
  return moved_out(slab, [](const Side& side) { return side.overhang; });
}

Outline slab_edge(const Slab& slab) {
  return with_corners(sharp_outline(slab), slab.corner_cuts);
}

Polygon panel_outline(const Slab& slab) {
  return moved_out(slab, [](const Side& side) { return side.panel_overhang; });
}

Polygon inside_aprons(const Slab& slab, Length strip) {
  return moved_out(slab, [&](const Side& side) { return side.apron ? strip : side.overhang; });
}

bool has_apron(const Slab& slab) {
  return std::any_of(slab.sides.begin(), slab.sides.end(),
                     [](const Side& side) { return side.apron; });
}

Outline opening_edge(const Opening& opening, const Outline& edge) {
  const Point corner = bounding_box(edge).at;
  Rectangle place = opening.at;
  place.at = {corner.x + place.at.x, corner.y + place.at.y};
  return outline_of(place, opening.corner_radius);
}

}  // namespace strikeoff
