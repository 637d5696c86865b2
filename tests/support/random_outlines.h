// SPDX-License-Identifier: MIT
// Made-up outlines of every kind, in whole millimetres, the same on every machine. Anticlockwise,
// simple, a few metres across, not far from the origin.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>
#include <vector>

#include "strikeoff/outline.h"
#include "support/slabs.h"

namespace strikeoff::test {

/// Corners at rising angles about a middle; one radius gives a convex outline, several a star.
inline Polygon star(Draw& draw, int corners, int least_mm, int most_mm) {
  const int x = draw.whole(-3000, 3000), y = draw.whole(-3000, 3000);
  Polygon polygon;
  for (int k = 0; k < corners; ++k) {
    const double angle = 2 * std::numbers::pi * (k + draw.whole(0, 60) / 100.0) / corners;
    const double radius = draw.whole(least_mm, most_mm);
    polygon.push_back({Length::mm(x + std::round(radius * std::cos(angle))),
                       Length::mm(y + std::round(radius * std::sin(angle)))});
  }
  return polygon;
}

inline Polygon random_convex(Draw& draw) {
  const int radius = draw.whole(500, 3000);
  return star(draw, draw.whole(3, 12), radius, radius);
}

inline Polygon random_star(Draw& draw) {
  return star(draw, draw.whole(5, 16), 600, 3000);
}

/// Columns side by side, each with its own foot and head, right angles all over.
inline Polygon random_rectilinear(Draw& draw) {
  const int columns = draw.whole(2, 6), left = draw.whole(-2000, 2000);
  std::vector<int> at{left}, foot, head;
  for (int k = 0; k < columns; ++k) {
    at.push_back(at.back() + draw.whole(150, 900));
    // No two neighbours alike, or they would meet at no corner.
    foot.push_back(draw.whole(-600, -300) * 2 + k % 2);
    head.push_back(draw.whole(300, 1000) * 2 + k % 2);
  }
  Polygon polygon;
  const auto add = [&](int x, int y) { polygon.push_back({Length::mm(x), Length::mm(y)}); };
  for (std::size_t k = 0; k < foot.size(); ++k) add(at[k], foot[k]), add(at[k + 1], foot[k]);
  for (std::size_t k = foot.size(); k-- > 0;) add(at[k + 1], head[k]), add(at[k], head[k]);
  return polygon;
}

inline Polygon random_outline(Draw& draw) {
  switch (draw.whole(0, 2)) {
    case 0:
      return random_convex(draw);
    case 1:
      return random_star(draw);
    default:
      return random_rectilinear(draw);
  }
}

/// About every other corner rounded or clipped, by at most 45 % of the shorter of its edges.
inline Outline random_cut_corners(Draw& draw, const Polygon& polygon) {
  std::vector<CornerCut> cuts;
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    if (draw.one_in(2)) continue;
    const Length shorter = std::min(
        edge_length(polygon, k), edge_length(polygon, (k + polygon.size() - 1) % polygon.size()));
    CornerCut cut{k, shorter * (draw.whole(5, 45) / 100.0), !draw.one_in(4)};
    if (cut.round) cut.size = cut.size / std::abs(turn_at(polygon, k).tan_half);
    cuts.push_back(cut);
  }
  return with_corners(polygon, cuts);
}

}  // namespace strikeoff::test
