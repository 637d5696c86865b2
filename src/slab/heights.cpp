// SPDX-License-Identifier: MIT
#include "slab/heights.h"

#include <algorithm>
#include <cmath>

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
  const Point &a = sharp[k], &b = sharp[(k + 1) % sharp.size()];
  const double length = edge_length(sharp, k).in_m();
  const double along_x = (b.x - a.x).in_m() / length, along_y = (b.y - a.y).in_m() / length;
  // Seen with that side along x its outward direction is down, and its outermost place lowest.
  Outline turned = slab_edge(slab);
  for (OutlineEdge& edge : turned) {
    const Length x = edge.from.x - origin.x, y = edge.from.y - origin.y;
    edge.from = {x * along_x + y * along_y, y * along_x - x * along_y};
  }
  const double lowest = bounding_box(turned).at.y.in_m(), slope = slab.fall->slope;
  return Field(origin, {{{}, {-slope * lowest, -slope * along_y, slope * along_x}}});
}

Length most(const std::vector<HeightAt>& turns) {
  return std::max_element(turns.begin(), turns.end(),
                          [](const HeightAt& a, const HeightAt& b) { return a.height < b.height; })
      ->height;
}

}  // namespace

Heights::Heights(const Slab& slab)
    : low_(level_field(slab.levels, slab.base.front())),
      rise_(fall_field(slab, slab.base.front())),
      both_(low_.plus(rise_)) {}

Length Heights::low(const Point& place) const {
  return low_.at(place);
}
Length Heights::rise(const Point& place) const {
  return rise_.at(place);
}

Length Heights::most_low(const Point& a, const Point& b) const {
  return most(low_.turns(a, b));
}
Length Heights::most_rise(const Point& a, const Point& b) const {
  return most(rise_.turns(a, b));
}

Volume Heights::under(const Outline& region) const {
  return low_.over(region);
}
Volume Heights::over(const Outline& region) const {
  return rise_.over(region);
}

Area Heights::along(const Point& a, const Point& b) const {
  return both_.along(a, b);
}

std::vector<HeightAt> Heights::low_turns(const Point& a, const Point& b) const {
  return low_.turns(a, b);
}
std::vector<HeightAt> Heights::both_turns(const Point& a, const Point& b) const {
  return both_.turns(a, b);
}

}  // namespace strikeoff
