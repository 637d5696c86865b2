// SPDX-License-Identifier: MIT
#include "slab/heights.h"

#include "core/outlines.h"
#include "slab/level_field.h"

namespace strikeoff {
namespace {

/// The top is as thick as asked along the line square to the fall through the slab's outermost
/// place that way, so that no place is thinner; from there it rises backwards.
Field fall_field(const Slab& slab, const Point& origin) {
  if (!slab.fall || slab.fall->slope == 0) return {};
  const Polygon sharp = sharp_outline(slab);
  const std::size_t k = slab.fall->side;
  const Vec side = vec(sharp[k], sharp[(k + 1) % sharp.size()]).unit();
  // Seen with that side along x its outward direction is down, and its outermost place lowest.
  Outline turned = slab_edge(slab);
  for (OutlineEdge& edge : turned) {
    const Vec from = vec(origin, edge.from);
    edge.from = point({dot(side, from), cross(side, from)});
  }
  const double lowest = bounding_box(turned).at.y.in_m(), slope = slab.fall->slope;
  return Field(origin, {{{}, {-slope * lowest, -slope * side.y, slope * side.x}}});
}

}  // namespace

Heights::Heights(const Slab& slab)
    : low(level_field(slab.levels, slab.base.front())),
      rise(fall_field(slab, slab.base.front())),
      both(low.plus(rise)) {}

}  // namespace strikeoff
