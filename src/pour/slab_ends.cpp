// SPDX-License-Identifier: MIT
#include "pour/slab_ends.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/format.h"
#include "core/outlines.h"

namespace strikeoff {
namespace {

constexpr double pi = std::numbers::pi;

/// A line of chords and how it runs at its ends.
struct EdgeLine {
  Polygon line;
  double start = 0, end = 0;  // radians
  double curvature = 0;       // to the left, 1/m
};

/// Each edge of the outline with its chords.
std::vector<EdgeLine> stretches(const Outline& edge) {
  std::vector<EdgeLine> all;
  for (std::size_t i = 0; i < edge.size(); ++i) {
    const Point &from = edge[i].from, &to = edge[(i + 1) % edge.size()].from;
    // The chords of one arc: those of the outline made of it and the straight way back.
    EdgeLine stretch{chords({edge[i], {to, 0}}, drawn_within), 0, 0, 0};
    const double dx = (to.x - from.x).in_m(), dy = (to.y - from.y).in_m();
    const double chord = std::atan2(dy, dx), sweep = edge[i].sweep;
    stretch.start = chord - sweep / 2;
    stretch.end = chord + sweep / 2;
    stretch.curvature = 2 * std::sin(sweep / 2) / std::hypot(dx, dy);
    all.push_back(std::move(stretch));
  }
  return all;
}

/// True when b goes on where a ends without a corner and as curved.
bool goes_on(const EdgeLine& a, const EdgeLine& b) {
  const double turn = std::remainder(b.start - a.end, 2 * pi);
  return std::abs(turn) < 1e-6 &&
         std::abs(a.curvature - b.curvature) <= 1e-6 * std::abs(a.curvature);
}

std::vector<EdgeLine> joined_stretches(const Outline& edge) {
  std::vector<EdgeLine> all = stretches(edge);
  std::size_t start = 0;  // one that does not go on the last
  while (start < all.size() && goes_on(all[(start + all.size() - 1) % all.size()], all[start])) {
    ++start;
  }
  if (start < all.size()) {
    std::rotate(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(start), all.end());
  }
  std::vector<EdgeLine> joined;
  double turned = 0;
  for (EdgeLine& next : all) {
    const double sweep = std::remainder(next.end - next.start, 2 * pi);
    // A circle has two ends at least.
    if (!joined.empty() && goes_on(joined.back(), next) && std::abs(turned + sweep) < pi + 1e-6) {
      joined.back().line.insert(joined.back().line.end(), next.line.begin() + 1, next.line.end());
      joined.back().end = next.end;
      turned += sweep;
    } else {
      joined.push_back(std::move(next));
      turned = sweep;
    }
  }
  return joined;
}

double distance_nm(const Point& p, const Point& a, const Point& b) {
  const double x = (b.x - a.x).in_nm(), y = (b.y - a.y).in_nm();
  const double px = (p.x - a.x).in_nm(), py = (p.y - a.y).in_nm();
  const double t = std::clamp((px * x + py * y) / (x * x + y * y), 0.0, 1.0);
  return std::hypot(px - t * x, py - t * y);
}

constexpr double on_it = 1e3;  // nm

std::string name_of(const Slab& slab, const Polygon& sharp, const EdgeLine& side) {
  if (side.curvature != 0) return "the round side";
  for (std::size_t k = 0; k < sharp.size(); ++k) {
    const Point &a = sharp[k], &b = sharp[(k + 1) % sharp.size()];
    if (distance_nm(side.line.front(), a, b) < on_it && distance_nm(side.line[1], a, b) < on_it) {
      return the_side(slab.sides[k].name);
    }
  }
  return "the cut-off corner";
}

std::vector<std::size_t> nodes_on(const Polygon& line, const PourMesh& mesh) {
  std::vector<std::size_t> nodes;
  for (const std::size_t node : mesh.rings.front()) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
      if (distance_nm(mesh.nodes[node], line[i], line[i + 1]) < on_it) {
        nodes.push_back(node);
        break;
      }
    }
  }
  std::sort(nodes.begin(), nodes.end());
  return nodes;
}

}  // namespace

std::vector<SlabEnd> ends_of(const Slab& slab, const SlabPlan& shape, const PourMesh& mesh) {
  const Polygon sharp = sharp_outline(slab);
  const Length least = Length::m(shape.area.si() / shape.perimeter.in_m());
  std::vector<SlabEnd> ends;
  for (const EdgeLine& side : joined_stretches(shape.edge)) {
    Length length;
    for (std::size_t i = 0; i + 1 < side.line.size(); ++i) {
      length += edge_length({side.line[i], side.line[i + 1]}, 0);
    }
    if (length < least) continue;
    const Point &a = side.line.front(), &b = side.line.back();
    ends.push_back({name_of(slab, sharp, side),
                    length,
                    {(a.x + b.x) / 2, (a.y + b.y) / 2},
                    nodes_on(side.line, mesh)});
  }
  std::stable_sort(ends.begin(), ends.end(), [](const SlabEnd& a, const SlabEnd& b) {
    return a.length < b.length - Length::mm(0.001);
  });
  return ends;
}

bool are_adjacent(const SlabEnd& a, const SlabEnd& b) {
  return std::find_first_of(a.nodes.begin(), a.nodes.end(), b.nodes.begin(), b.nodes.end()) !=
         a.nodes.end();
}

}  // namespace strikeoff
