// SPDX-License-Identifier: MIT
#include "slab/level_field.h"

#include <algorithm>
#include <array>
#include <limits>
#include <tuple>

#include "slab/triangulation.h"

namespace strikeoff {
namespace {

/// A place in metres from the origin of the field, and how low it lies in metres.
struct Spot {
  Vec at;
  double low = 0;
};

/// Below the highest reading, and in an order of their own, so that theirs does not matter.
std::vector<Spot> spots_of(std::span<const LevelReading> readings, const Point& origin) {
  std::vector<Spot> spots;
  double highest = std::numeric_limits<double>::infinity();
  for (const LevelReading& reading : readings) {
    spots.push_back({vec(origin, reading.at), reading.low.in_m()});
    highest = std::min(highest, reading.low.in_m());
  }
  for (Spot& spot : spots) spot.low -= highest;
  std::sort(spots.begin(), spots.end(), [](const Spot& a, const Spot& b) {
    return std::tie(a.at.x, a.at.y) < std::tie(b.at.x, b.at.y);
  });
  return spots;
}

/// Through a spot, rising by `slope` for each metre its way.
Surface tilted(const Spot& spot, Vec slope) {
  return {spot.low - dot(slope, spot.at), slope.x, slope.y};
}

Surface plane(const Spot& a, const Spot& b, const Spot& c) {
  const Vec ab = b.at - a.at, ac = c.at - a.at;
  return tilted(a, ((c.low - a.low) * ab.left() - (b.low - a.low) * ac.left()) / cross(ab, ac));
}

/// low = a + b u + c v + d u v, where u and v are affine coordinates along the quadrilateral's two
/// mid-lines, from -1 to 1 between the middles of opposite sides. For a parallelogram that is the
/// usual bilinear surface; for any other convex quadrilateral it meets the four readings too,
/// without a frame of its own, and as a polynomial of the second degree it integrates exactly.
///
/// With signs s, t = -1 or 1 corner (s, t) is at u = s + p s t, v = t + q s t, and the readings
/// are z0 + z1 s + z2 t + z3 s t. Equating gives d (1 - p2 - q2) = z3 - p z1 - q z2, and
/// |p| + |q| < 1 says that the quadrilateral is convex, so it always has one solution.
Surface bilinear(const std::vector<Spot>& spots, const Ring& ring) {
  const auto mean = [&](const std::array<double, 4>& signs) {
    Spot sum;
    for (std::size_t k = 0; k < 4; ++k) {
      sum.at = sum.at + spots[ring[k]].at * (signs[k] / 4);
      sum.low += spots[ring[k]].low * (signs[k] / 4);
    }
    return sum;
  };
  const Spot z0 = mean({1, 1, 1, 1}), z1 = mean({-1, 1, 1, -1}), z2 = mean({-1, -1, 1, 1}),
             z3 = mean({1, -1, 1, -1});
  const double det = cross(z1.at, z2.at);
  const double p = cross(z3.at, z2.at) / det, q = cross(z1.at, z3.at) / det;
  const double d = (z3.low - p * z1.low - q * z2.low) / (1 - p * p - q * q);
  // u = u0 + dot(du, place), and v likewise.
  const Vec du = -z2.at.left() / det, dv = z1.at.left() / det;
  const double u0 = -dot(du, z0.at), v0 = -dot(dv, z0.at);
  Surface sum = tilted({z0.at, z0.low - d * p * q}, (z1.low - d * p) * du + (z2.low - d * q) * dv);
  sum += {d * u0 * v0,     d * (u0 * dv.x + v0 * du.x),     d * (u0 * dv.y + v0 * du.y),
          d * du.x * dv.x, d * (du.x * dv.y + du.y * dv.x), d * du.y * dv.y};
  return sum;
}

FieldCell triangle(const Spot& a, const Spot& b, const Spot& c) {
  return {{left_of(a.at, b.at), left_of(b.at, c.at), left_of(c.at, a.at)}, plane(a, b, c)};
}

/// Corners on one circle have no one Delaunay triangulation: their cell is a fan about their mean.
void add_cell(const std::vector<Spot>& spots, const Ring& ring, std::vector<FieldCell>& cells) {
  if (ring.size() == 3) {
    cells.push_back(triangle(spots[ring[0]], spots[ring[1]], spots[ring[2]]));
    return;
  }
  Spot middle;
  for (const std::size_t k : ring) {
    middle.at = middle.at + spots[k].at / static_cast<double>(ring.size());
    middle.low += spots[k].low / static_cast<double>(ring.size());
  }
  for (std::size_t k = 0; k < ring.size(); ++k) {
    cells.push_back(triangle(spots[ring[k]], spots[ring[(k + 1) % ring.size()]], middle));
  }
}

/// Beyond the hull the nearest of its points holds: square off each of its sides the height runs as
/// along the side, and beyond its corners it stays as at the corner.
void add_beyond(const std::vector<Spot>& spots, const Ring& hull, std::vector<FieldCell>& cells) {
  for (std::size_t k = 0; k < hull.size(); ++k) {
    const auto corner = [&](std::size_t i) { return spots[hull[(k + i) % hull.size()]]; };
    const Spot a = corner(0), b = corner(1), c = corner(2);
    const Vec ab = b.at - a.at, way = ab.unit(), next = (c.at - b.at).unit();
    const HalfPlane beside{b.at, way.left()};
    cells.push_back({{left_of(b.at, a.at), {a.at, -way.left()}, beside},
                     tilted(a, way * ((b.low - a.low) / ab.length()))});
    // The third border keeps a corner that hardly turns from reaching into the hull.
    cells.push_back({{{b.at, -way.left()}, {b.at, next.left()}, left_of(b.at, b.at - way - next)},
                     tilted(b, {})});
  }
}

}  // namespace

Field level_field(std::span<const LevelReading> readings, const Point& origin) {
  std::vector<Spot> spots = spots_of(readings, origin);
  if (std::all_of(spots.begin(), spots.end(), [](const Spot& s) { return s.low == 0; })) return {};
  if (spots.size() == 3) return Field(origin, {{{}, plane(spots[0], spots[1], spots[2])}});
  std::vector<Vec> places;
  for (const Spot& spot : spots) places.push_back(spot.at);
  if (spots.size() == 4) {
    const Ring ring = hull_of(places);
    if (ring.size() == 4) return Field(origin, {{{}, bilinear(spots, ring)}});
  }
  const Cells mesh = delaunay_cells(places);
  for (std::size_t k = 0; k < spots.size(); ++k) spots[k].at = mesh.spots[k];
  std::vector<FieldCell> cells;
  for (const Ring& ring : mesh.rings) add_cell(spots, ring, cells);
  add_beyond(spots, mesh.hull, cells);
  return Field(origin, std::move(cells));
}

}  // namespace strikeoff
