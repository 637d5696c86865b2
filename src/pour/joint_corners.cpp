// SPDX-License-Identifier: MIT
#include "pour/joint_corners.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace strikeoff {
namespace {

/// Where an edge turns right, or, of an opening, left: into the concrete.
void add_corners(const Outline& edge, bool left, Length clearance, std::vector<Point>& corners) {
  constexpr double least_turn = 0.35;  // 20 degrees: a gentler bend gathers no stress (assumption)
  const double sign = left ? 1 : -1;
  const std::size_t n = edge.size();
  const auto chord = [&](std::size_t i) {
    const Point &a = edge[i].from, &b = edge[(i + 1) % n].from;
    return std::atan2((b.y - a.y).in_m(), (b.x - a.x).in_m());
  };
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t before = (i + n - 1) % n;
    const double arrives = chord(before) + edge[before].sweep / 2;
    const double leaves = chord(i) - edge[i].sweep / 2;
    if (std::remainder(leaves - arrives, 8 * std::atan(1.0)) * sign > least_turn) {
      corners.push_back(edge[i].from);
    }
    if (edge[i].sweep * sign <= least_turn) continue;
    const Point &a = edge[i].from, &b = edge[(i + 1) % n].from;
    const double length = std::hypot((b.x - a.x).in_m(), (b.y - a.y).in_m());
    const double radius = length / (2 * std::sin(std::abs(edge[i].sweep) / 2));
    if (radius > clearance.in_m()) continue;
    // The arc's middle lies beside the chord's, to the right where it turns left.
    const double rise = std::tan(edge[i].sweep / 4) / 2;
    corners.push_back({(a.x + b.x) / 2 + (b.y - a.y) * rise, (a.y + b.y) / 2 - (b.x - a.x) * rise});
  }
}

}  // namespace

Length corner_clearance(const SlabPlan& slab) {
  return std::max(2 * slab.edge_thickness, Length::mm(100));
}

std::vector<Point> crack_corners(const SlabPlan& slab) {
  const Length clearance = corner_clearance(slab);
  std::vector<Point> corners;
  add_corners(slab.edge, false, clearance, corners);
  for (const OpeningPlan& opening : slab.openings) {
    add_corners(opening.edge, true, clearance, corners);
  }
  return corners;
}

std::optional<Length> near_corner(const Polygon& joint, const std::vector<Point>& corners,
                                  Length clearance) {
  std::optional<Length> nearest;
  if (joint.empty()) return nearest;
  for (const Point& corner : corners) {
    for (const Point& end : {joint.front(), joint.back()}) {
      const Length away =
          Length::nm(std::hypot((end.x - corner.x).in_nm(), (end.y - corner.y).in_nm()));
      if (away < clearance * (1 - 1e-9) && (!nearest || away < *nearest)) nearest = away;
    }
  }
  return nearest;
}

}  // namespace strikeoff
