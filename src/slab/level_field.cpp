// SPDX-License-Identifier: MIT
#include "slab/level_field.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "slab/triangulation.h"

namespace strikeoff {
namespace {

/// Closer readings count as one: a level's foot is wider.
constexpr double same_place_m = 0.002;

struct Readings {
  std::vector<Spot> spots;   // metres from the origin of the field
  std::vector<double> lows;  // metres below the highest reading
};

Readings distinct(std::span<const LevelReading> readings, const Point& origin) {
  Readings result;
  std::vector<int> counts;
  for (const LevelReading& reading : readings) {
    const Spot spot{(reading.at.x - origin.x).in_m(), (reading.at.y - origin.y).in_m()};
    const double low = reading.low.in_m();
    const auto same = std::find_if(result.spots.begin(), result.spots.end(), [&](const Spot& s) {
      return std::hypot(s.x - spot.x, s.y - spot.y) < same_place_m;
    });
    if (same == result.spots.end()) {
      result.spots.push_back(spot);
      result.lows.push_back(low);
      counts.push_back(1);
    } else {
      const auto k = static_cast<std::size_t>(same - result.spots.begin());
      result.lows[k] += (low - result.lows[k]) / ++counts[k];
    }
  }
  if (result.lows.empty()) return result;
  const double highest = *std::min_element(result.lows.begin(), result.lows.end());
  for (double& low : result.lows) low -= highest;
  return result;
}

/// A surface of the first degree.
Surface affine(double one, double x, double y) {
  return {one, x, y};
}

Surface scaled(const Surface& s, double by) {
  return {s.one * by, s.x * by, s.y * by, s.xx * by, s.xy * by, s.yy * by};
}

/// The product of two surfaces of the first degree.
Surface product(const Surface& a, const Surface& b) {
  return {a.one * b.one, a.one * b.x + a.x * b.one, a.one * b.y + a.y * b.one,
          a.x * b.x,     a.x * b.y + a.y * b.x,     a.y * b.y};
}

Surface plane(const Readings& r, const std::array<std::size_t, 3>& corners) {
  const Spot &a = r.spots[corners[0]], &b = r.spots[corners[1]], &c = r.spots[corners[2]];
  const double z = r.lows[corners[0]], zb = r.lows[corners[1]] - z, zc = r.lows[corners[2]] - z;
  const double bx = b.x - a.x, by = b.y - a.y, cx = c.x - a.x, cy = c.y - a.y;
  const double twice = bx * cy - by * cx;
  const double x = (zb * cy - zc * by) / twice, y = (zc * bx - zb * cx) / twice;
  return affine(z - x * a.x - y * a.y, x, y);
}

/// low = a + b u + c v + d u v, where u and v are affine coordinates along the quadrilateral's two
/// mid-lines, from -1 to 1 between the middles of opposite sides. For a parallelogram that is the
/// usual bilinear surface; for any other convex quadrilateral it meets the four readings too,
/// without a frame of its own, and as a polynomial of the second degree it integrates exactly.
///
/// With signs s, t = -1 or 1 corner (s, t) is at u = s + p s t, v = t + q s t, and the readings
/// are z0 + z1 s + z2 t + z3 s t. Equating gives d (1 - p2 - q2) = z3 - p z1 - q z2, and
/// |p| + |q| < 1 says that the quadrilateral is convex, so it always has one solution.
Surface bilinear(const Readings& r, const std::vector<std::size_t>& ring) {
  const auto mean = [&](auto value, const std::array<double, 4>& signs) {
    double sum = 0;
    for (std::size_t k = 0; k < 4; ++k) sum += signs[k] * value(ring[k]);
    return sum / 4;
  };
  const auto x = [&](std::size_t k) { return r.spots[k].x; };
  const auto y = [&](std::size_t k) { return r.spots[k].y; };
  const auto z = [&](std::size_t k) { return r.lows[k]; };
  constexpr std::array<double, 4> whole{1, 1, 1, 1}, s{-1, 1, 1, -1}, t{-1, -1, 1, 1},
      st{1, -1, 1, -1};
  const double x0 = mean(x, whole), xs = mean(x, s), xt = mean(x, t), xst = mean(x, st);
  const double y0 = mean(y, whole), ys = mean(y, s), yt = mean(y, t), yst = mean(y, st);
  const double det = xs * yt - xt * ys;
  const Surface u = affine((xt * y0 - yt * x0) / det, yt / det, -xt / det);
  const Surface v = affine((ys * x0 - xs * y0) / det, -ys / det, xs / det);
  const double p = (yt * xst - xt * yst) / det, q = (xs * yst - ys * xst) / det;
  const double z1 = mean(z, s), z2 = mean(z, t);
  const double d = (mean(z, st) - p * z1 - q * z2) / (1 - p * p - q * q);
  Surface sum = affine(mean(z, whole) - d * p * q, 0, 0);
  sum += scaled(u, z1 - d * p);
  sum += scaled(v, z2 - d * q);
  sum += scaled(product(u, v), d);
  return sum;
}

/// The border through a with its inner side to the left of the direction (dx, dy).
Border left_of(const Spot& a, double dx, double dy) {
  const double length = std::hypot(dx, dy);
  return {a.x, a.y, -dy / length, dx / length};
}
Border left_of(const Spot& a, const Spot& b) {
  return left_of(a, b.x - a.x, b.y - a.y);
}

/// A cell whose corners lie on one circle has no one Delaunay triangulation; its height is the mean
/// over all of them. Across each diagonal that mean has a crease. With m on either side of the
/// diagonal, the surface of a triangle leaves the straight line between the diagonal's ends by
/// (z_m - line(m))/|distance of m| for each metre away from it, so the crease is the sum of that
/// over all m, each weighed by how many triangulations have the triangle.
FieldCell mesh_cell(const Mesh& mesh, const Readings& r, const std::vector<std::size_t>& cell) {
  const std::size_t n = cell.size();
  const auto spot = [&](std::size_t k) { return mesh.spots[cell[k]]; };
  FieldCell result;
  for (std::size_t k = 0; k < n; ++k) {
    result.borders.push_back(left_of(spot(k), spot((k + 1) % n)));
  }
  const Readings settled{mesh.spots, r.lows};
  // The triangle on the side from the last corner to the first carries the surface.
  for (std::size_t k = 1; k + 1 < n; ++k) {
    result.surface += scaled(plane(settled, {cell[0], cell[k], cell[n - 1]}),
                             share_of_triangulations(n, 0, k, n - 1));
  }
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 2; j < n - (i == 0 ? 1 : 0); ++j) {
      const Border away = left_of(spot(j), spot(i));
      const Spot a = spot(i), b = spot(j);
      const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
      const double from = r.lows[cell[i]], rise = r.lows[cell[j]] - from;
      double steep = 0;
      for (std::size_t m = 0; m < n; ++m) {
        if (m == i || m == j) continue;
        std::array<std::size_t, 3> t{i, j, m};
        std::sort(t.begin(), t.end());
        const Spot p = spot(m);
        const double line = from + rise * ((p.x - a.x) * dx + (p.y - a.y) * dy) / square;
        steep += share_of_triangulations(n, t[0], t[1], t[2]) * (r.lows[cell[m]] - line) /
                 std::abs(away.inside(p.x, p.y));
      }
      result.creases.push_back({away, steep});
    }
  }
  return result;
}

/// Beyond the hull the nearest of its points holds: square off each piece of its sides the height
/// runs as along the piece, and beyond its corners it stays as at the corner.
void add_beyond(const Mesh& mesh, const Readings& r, std::vector<FieldCell>& cells) {
  for (std::size_t h = 0; h < mesh.sides.size(); ++h) {
    const auto& side = mesh.sides[h];
    const auto& next = mesh.sides[(h + 1) % mesh.sides.size()];
    const auto direction = [&](const std::vector<std::size_t>& s) {
      const Spot &a = mesh.spots[s.front()], &b = mesh.spots[s.back()];
      const double length = std::hypot(b.x - a.x, b.y - a.y);
      return Spot{(b.x - a.x) / length, (b.y - a.y) / length};
    };
    const Spot d = direction(side), e = direction(next);
    for (std::size_t k = 0; k + 1 < side.size(); ++k) {
      const Spot &a = mesh.spots[side[k]], &b = mesh.spots[side[k + 1]];
      const double slope =
          (r.lows[side[k + 1]] - r.lows[side[k]]) / std::hypot(b.x - a.x, b.y - a.y);
      cells.push_back(
          {{{a.x, a.y, d.y, -d.x}, {a.x, a.y, d.x, d.y}, {b.x, b.y, -d.x, -d.y}},
           affine(r.lows[side[k]] - slope * (d.x * a.x + d.y * a.y), slope * d.x, slope * d.y)});
    }
    // The third border keeps a corner that hardly turns from reaching into the hull.
    const Spot& corner = mesh.spots[side.back()];
    cells.push_back({{{corner.x, corner.y, d.x, d.y},
                      {corner.x, corner.y, -e.x, -e.y},
                      left_of(corner, -d.x - e.x, -d.y - e.y)},
                     affine(r.lows[side.back()], 0, 0)});
  }
}

}  // namespace

Field level_field(std::span<const LevelReading> readings, const Point& origin) {
  const Readings r = distinct(readings, origin);
  if (std::all_of(r.lows.begin(), r.lows.end(), [](double low) { return low == 0; })) return {};
  if (r.spots.size() == 3) return Field(origin, {{{}, plane(r, {0, 1, 2})}});
  if (r.spots.size() == 4) {
    const std::vector<std::size_t> ring = hull_of(r.spots);
    if (ring.size() == 4) return Field(origin, {{{}, bilinear(r, ring)}});
  }
  const Mesh mesh = delaunay(r.spots);
  std::vector<FieldCell> cells;
  for (const auto& cell : mesh.cells) cells.push_back(mesh_cell(mesh, r, cell));
  add_beyond(mesh, r, cells);
  return Field(origin, std::move(cells));
}

}  // namespace strikeoff
