// SPDX-License-Identifier: MIT
#include "checks/rails.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

Length distance(const Point& p, const Point& a, const Point& b) {
  const double abx = (b.x - a.x).in_nm(), aby = (b.y - a.y).in_nm();
  const double apx = (p.x - a.x).in_nm(), apy = (p.y - a.y).in_nm();
  const double along = (apx * abx + apy * aby) / (abx * abx + aby * aby);
  const double t = std::clamp(along, 0.0, 1.0);
  return Length::nm(std::hypot(apx - t * abx, apy - t * aby));
}

/// Two outlines that do not cross are nearest at a corner of one of them.
Length distance(const Polygon& a, const Polygon& b) {
  Length least = distance(a[0], b[0], b[1]);
  const auto corners_to_edges = [&](const Polygon& corners, const Polygon& edges) {
    for (const Point& corner : corners) {
      for (std::size_t k = 0; k < edges.size(); ++k) {
        least = std::min(least, distance(corner, edges[k], edges[(k + 1) % edges.size()]));
      }
    }
  };
  corners_to_edges(a, b);
  corners_to_edges(b, a);
  return least;
}

}  // namespace

std::optional<Rail> narrowest_rail(const SlabPlan& slab) {
  std::optional<Rail> narrowest;
  const auto consider = [&](Length width, std::size_t opening) {
    if (!narrowest || width < narrowest->width) narrowest = Rail{width, opening};
  };
  for (std::size_t i = 0; i < slab.openings.size(); ++i) {
    const Polygon opening = corners_of(slab.openings[i]);
    consider(distance(opening, slab.outline), i);
    for (std::size_t j = i + 1; j < slab.openings.size(); ++j) {
      consider(distance(opening, corners_of(slab.openings[j])), i);
    }
  }
  return narrowest;
}

}  // namespace strikeoff
