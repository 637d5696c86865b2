// SPDX-License-Identifier: MIT
#include "slab/squared.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <vector>

#include "slab/line_cut.h"
#include "slab/slices.h"

namespace strikeoff {
namespace {

// Assumptions, from common practice, no source.
constexpr double aslant_deg = 2;
constexpr Length in_line = Length::mm(25);

/// The line that an edge is to lie on.
struct AxisLine {
  bool along_x = false;
  bool faces_up = false;  // outwards is where y, or x, grows
  Length at;
};

/// The line just outside an edge; nothing when the edge runs aslant.
std::optional<AxisLine> outer_line(const Point& from, const Point& to) {
  const Length dx = to.x - from.x, dy = to.y - from.y;
  const Length wide = std::max(dx, -dx), high = std::max(dy, -dy);
  const double slope = std::tan(aslant_deg * std::numbers::pi / 180);
  const bool along_x = wide >= high;
  if (std::min(wide, high) > std::max(wide, high) * slope) return std::nullopt;
  // The inside lies on the left, so outwards is down from an edge that runs to the right.
  const bool faces_up = along_x ? dx < Length{} : dy > Length{};
  const Length a = along_x ? from.y : from.x, b = along_x ? to.y : to.x;
  return AxisLine{along_x, faces_up, faces_up ? std::max(a, b) : std::min(a, b)};
}

/// Brings lines of one direction that are nearly in line into one. Those that face each other
/// across a sliver of outside meet, so that two limbs which were to end in one line do.
void line_up(std::vector<AxisLine*> lines) {
  std::sort(lines.begin(), lines.end(),
            [](const AxisLine* a, const AxisLine* b) { return a->at < b->at; });
  for (std::size_t first = 0, end = 0; first < lines.size(); first = end) {
    while (end < lines.size() && lines[end]->at - lines[first]->at <= in_line) ++end;
    std::optional<Length> down, up;  // the outermost of those that face each way
    for (std::size_t i = first; i < end; ++i) {
      if (lines[i]->faces_up) up = lines[i]->at;
      if (!lines[i]->faces_up && !down) down = lines[i]->at;
    }
    if (up && down) up = std::max(*up, *down);
    for (std::size_t i = first; i < end; ++i) lines[i]->at = lines[i]->faces_up ? *up : *down;
  }
}

/// Without doubled points, points within a straight side, and spikes.
Polygon without_idle_corners(Polygon polygon) {
  for (std::size_t k = 0, kept = 0; kept < polygon.size();) {
    const std::size_t n = polygon.size();
    const Point &before = polygon[(k + n - 1) % n], &here = polygon[k],
                &after = polygon[(k + 1) % n];
    const bool idle =
        (before.x == here.x && here.x == after.x) || (before.y == here.y && here.y == after.y);
    if (!idle) {
      k = (k + 1) % n;
      ++kept;
      continue;
    }
    polygon.erase(polygon.begin() + static_cast<std::ptrdiff_t>(k));
    // What stood before it has a new neighbour, so all is looked at once more from there.
    kept = 0;
    k = k > 0 ? k - 1 : 0;
  }
  return polygon;
}

bool any_thin(const Slices& slices) {
  return std::any_of(slices.rectangles.begin(), slices.rectangles.end(),
                     [](const Rectangle& r) { return std::min(r.length, r.depth) <= in_line; });
}

bool encloses(const Slices& slices, const Polygon& polygon) {
  Area common;
  for (const Rectangle& slice : slices.rectangles) common += overlap(polygon, slice);
  return common + Length::mm(1) * Length::mm(1) >= signed_area(polygon);
}

}  // namespace

std::optional<Polygon> squared(const Polygon& polygon) {
  const std::size_t n = polygon.size();
  std::vector<AxisLine> lines;
  for (std::size_t k = 0; k < n; ++k) {
    const auto line = outer_line(polygon[k], polygon[(k + 1) % n]);
    if (!line) return std::nullopt;
    lines.push_back(*line);
  }
  std::vector<AxisLine*> flat, upright;
  for (AxisLine& line : lines) (line.along_x ? flat : upright).push_back(&line);
  line_up(std::move(flat));
  line_up(std::move(upright));

  Polygon corners;
  for (std::size_t k = 0; k < n; ++k) {
    const AxisLine &in = lines[(k + n - 1) % n], &out = lines[k];
    if (in.along_x != out.along_x) {
      corners.push_back({in.along_x ? out.at : in.at, in.along_x ? in.at : out.at});
    } else {  // a bend in a side, or a step where the two are not in line
      for (const Length at : {in.at, out.at}) {
        corners.push_back(in.along_x ? Point{polygon[k].x, at} : Point{at, polygon[k].y});
      }
    }
  }
  corners = without_idle_corners(std::move(corners));
  if (corners.size() < 4 || self_contact(corners) || signed_area(corners) <= Area{}) {
    return std::nullopt;
  }
  const Slices slices = slice(corners);
  if (any_thin(slices) || any_thin(slice(turned(corners))) || !encloses(slices, polygon)) {
    return std::nullopt;
  }
  return corners;
}

}  // namespace strikeoff
