// SPDX-License-Identifier: MIT
#include "slab/triangulation.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <optional>

namespace strikeoff {
namespace {

constexpr double one_circle_m = 0.001;  // corners this close to a circle lie on it
constexpr double on_side_m = 0.001;     // of the hull
constexpr double on_line_m = 1e-6;      // far below a tape, far above rounding

double cross(const Spot& o, const Spot& a, const Spot& b) {
  return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}
double dot(const Spot& o, const Spot& a, const Spot& b) {
  return (a.x - o.x) * (b.x - o.x) + (a.y - o.y) * (b.y - o.y);
}
double distance(const Spot& a, const Spot& b) {
  return std::hypot(b.x - a.x, b.y - a.y);
}
/// Of p to the left of the line from a to b.
double offset(const Spot& a, const Spot& b, const Spot& p) {
  return cross(a, b, p) / distance(a, b);
}

using Triangle = std::array<std::size_t, 3>;

/// Triangles by their directed edges: the third corner of the one left of each.
class Triangles {
 public:
  explicit Triangles(const std::vector<Spot>& spots)
      : spots_(spots), third_(spots.size() * spots.size()) {}

  [[nodiscard]] std::optional<std::size_t> left_of(std::size_t i, std::size_t j) const {
    return third_[i * spots_.size() + j];
  }
  void add(std::size_t i, std::size_t j, std::size_t k) {
    set(i, j, k);
    set(j, k, i);
    set(k, i, j);
  }
  void remove(std::size_t i, std::size_t j, std::size_t k) {
    set(i, j, std::nullopt);
    set(j, k, std::nullopt);
    set(k, i, std::nullopt);
  }

  [[nodiscard]] std::vector<Triangle> all() const;
  void split_edge(std::size_t i, std::size_t j, std::size_t p);
  void insert(std::size_t p);
  void make_delaunay();

 private:
  void set(std::size_t i, std::size_t j, std::optional<std::size_t> k) {
    third_[i * spots_.size() + j] = k;
  }
  [[nodiscard]] bool should_flip(std::size_t i, std::size_t j, std::size_t k, std::size_t l) const;

  const std::vector<Spot>& spots_;
  std::vector<std::optional<std::size_t>> third_;
};

/// Each once, by the edge that leaves its lowest corner.
std::vector<Triangle> Triangles::all() const {
  std::vector<Triangle> triangles;
  for (std::size_t i = 0; i < spots_.size(); ++i) {
    for (std::size_t j = i + 1; j < spots_.size(); ++j) {
      const auto k = left_of(i, j);
      if (k && *k > i) triangles.push_back({i, j, *k});
    }
  }
  return triangles;
}

void Triangles::split_edge(std::size_t i, std::size_t j, std::size_t p) {
  const auto k = left_of(i, j), l = left_of(j, i);
  if (k) {
    remove(i, j, *k);
    add(i, p, *k);
    add(p, j, *k);
  }
  if (l) {
    remove(j, i, *l);
    add(j, p, *l);
    add(p, i, *l);
  }
}

void Triangles::insert(std::size_t p) {
  Triangle home{};
  std::size_t nearest = 0;  // which of its edges p is nearest to
  double deepest = -1;
  bool found = false;
  for (const Triangle& t : all()) {
    std::size_t edge = 0;
    double depth = offset(spots_[t[0]], spots_[t[1]], spots_[p]);
    for (std::size_t e = 1; e < 3; ++e) {
      const double d = offset(spots_[t[e]], spots_[t[(e + 1) % 3]], spots_[p]);
      if (d < depth) {
        depth = d;
        edge = e;
      }
    }
    if (found && depth <= deepest) continue;
    found = true;
    home = t;
    nearest = edge;
    deepest = depth;
  }
  if (deepest < on_line_m) {
    split_edge(home[nearest], home[(nearest + 1) % 3], p);
    return;
  }
  remove(home[0], home[1], home[2]);
  for (std::size_t e = 0; e < 3; ++e) add(home[e], home[(e + 1) % 3], p);
}

/// The other diagonal is better when the angles opposite this one exceed half a turn together.
bool Triangles::should_flip(std::size_t i, std::size_t j, std::size_t k, std::size_t l) const {
  const Spot &a = spots_[i], &b = spots_[j], &c = spots_[k], &d = spots_[l];
  const double size = distance(c, a) * distance(c, b) * distance(d, a) * distance(d, b);
  return (cross(c, a, b) * dot(d, a, b) + dot(c, a, b) * cross(d, b, a)) / size < -1e-12;
}

/// Lawson's flips (1977): each improves the triangulation, so they end; the bound is a precaution.
void Triangles::make_delaunay() {
  const std::size_t n = spots_.size();
  bool changed = true;
  for (std::size_t round = 0; changed && round < n * n; ++round) {
    changed = false;
    for (std::size_t i = 0; i < n; ++i) {
      for (std::size_t j = i + 1; j < n; ++j) {
        const auto k = left_of(i, j), l = left_of(j, i);
        if (!k || !l || !should_flip(i, j, *k, *l)) continue;
        remove(i, j, *k);
        remove(j, i, *l);
        add(i, *l, *k);
        add(*l, j, *k);
        changed = true;
      }
    }
  }
}

/// Moves spots close to a side of the hull onto it and lists the spots along each side.
void settle_sides(const std::vector<std::size_t>& hull, Mesh& mesh) {
  std::vector<bool> is_corner(mesh.spots.size(), false);
  for (const std::size_t corner : hull) is_corner[corner] = true;
  for (std::size_t h = 0; h < hull.size(); ++h) {
    mesh.sides.push_back({hull[h], hull[(h + 1) % hull.size()]});
  }
  for (std::size_t p = 0; p < mesh.spots.size(); ++p) {
    if (is_corner[p]) continue;
    Spot& spot = mesh.spots[p];
    const auto away = [&](const std::vector<std::size_t>& side) {
      return offset(mesh.spots[side.front()], mesh.spots[side.back()], spot);
    };
    auto& side = *std::min_element(mesh.sides.begin(), mesh.sides.end(),
                                   [&](const auto& a, const auto& b) { return away(a) < away(b); });
    if (away(side) > on_side_m) continue;
    const Spot a = mesh.spots[side.front()], b = mesh.spots[side.back()];
    const double t = dot(a, b, spot) / dot(a, b, b);
    spot = {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
    side.insert(
        std::find_if(side.begin() + 1, side.end() - 1,
                     [&](std::size_t q) { return dot(a, b, mesh.spots[q]) > dot(a, b, spot); }),
        p);
  }
}

struct Circle {
  Spot centre;
  double radius;
};

Circle circle_through(const Spot& a, const Spot& b, const Spot& c) {
  const double bx = b.x - a.x, by = b.y - a.y, cx = c.x - a.x, cy = c.y - a.y;
  const double d = 2 * (bx * cy - by * cx), bb = bx * bx + by * by, cc = cx * cx + cy * cy;
  const double x = (cy * bb - by * cc) / d, y = (bx * cc - cx * bb) / d;
  return {{a.x + x, a.y + y}, std::hypot(x, y)};
}

/// True when a polygon stays convex with p put in after its corner e.
bool stays_convex(const std::vector<Spot>& spots, const std::vector<std::size_t>& polygon,
                  std::size_t e, std::size_t p) {
  const std::size_t n = polygon.size();
  const auto at = [&](std::size_t k) { return spots[polygon[k % n]]; };
  return offset(at(e + n - 1), spots[p], at(e)) < -on_line_m &&
         offset(spots[p], at(e + 2), at(e + 1)) < -on_line_m;
}

/// Joins triangles to cells, the largest first, for its circle is the best known.
std::vector<std::vector<std::size_t>> join_cells(const std::vector<Spot>& spots,
                                                 Triangles triangles) {
  std::vector<Triangle> seeds = triangles.all();
  const auto size = [&](const Triangle& t) { return cross(spots[t[0]], spots[t[1]], spots[t[2]]); };
  std::stable_sort(seeds.begin(), seeds.end(),
                   [&](const Triangle& a, const Triangle& b) { return size(a) > size(b); });
  std::vector<std::vector<std::size_t>> cells;
  for (const Triangle& seed : seeds) {
    if (triangles.left_of(seed[0], seed[1]) != seed[2]) continue;
    triangles.remove(seed[0], seed[1], seed[2]);
    std::vector<std::size_t> cell(seed.begin(), seed.end());
    const Circle circle = circle_through(spots[seed[0]], spots[seed[1]], spots[seed[2]]);
    for (std::size_t e = 0; e < cell.size();) {
      const std::size_t a = cell[e], b = cell[(e + 1) % cell.size()];
      const auto p = triangles.left_of(b, a);
      if (!p || std::abs(distance(spots[*p], circle.centre) - circle.radius) > one_circle_m ||
          !stays_convex(spots, cell, e, *p)) {
        ++e;
        continue;
      }
      triangles.remove(b, a, *p);
      cell.insert(cell.begin() + static_cast<std::ptrdiff_t>(e) + 1, *p);
      e = 0;
    }
    cells.push_back(std::move(cell));
  }
  return cells;
}

double catalan(std::size_t n) {
  double c = 1;
  for (std::size_t k = 0; k < n; ++k) {
    c *= 2 * (2 * static_cast<double>(k) + 1) / (static_cast<double>(k) + 2);
  }
  return c;
}

}  // namespace

std::vector<std::size_t> hull_of(const std::vector<Spot>& spots) {
  std::vector<std::size_t> order(spots.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return spots[a].x != spots[b].x ? spots[a].x < spots[b].x : spots[a].y < spots[b].y;
  });
  // Andrew's monotone chain (1979): the lower side, then the upper.
  std::vector<std::size_t> hull;
  for (int pass = 0; pass < 2; ++pass) {
    const std::size_t start = hull.size();
    for (const std::size_t p : order) {
      while (hull.size() >= start + 2 &&
             offset(spots[hull[hull.size() - 2]], spots[p], spots[hull.back()]) > -on_line_m) {
        hull.pop_back();
      }
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(order.begin(), order.end());
  }
  return hull;
}

Mesh delaunay(const std::vector<Spot>& spots) {
  Mesh mesh{spots, {}, {}};
  const std::vector<std::size_t> hull = hull_of(spots);
  settle_sides(hull, mesh);
  Triangles triangles(mesh.spots);
  for (std::size_t h = 1; h + 1 < hull.size(); ++h) triangles.add(hull[0], hull[h], hull[h + 1]);
  std::vector<bool> placed(spots.size(), false);
  for (const auto& side : mesh.sides) {
    for (std::size_t k = 0; k + 1 < side.size(); ++k) {
      placed[side[k]] = true;
      if (k > 0) triangles.split_edge(side[k - 1], side.back(), side[k]);
    }
  }
  for (std::size_t p = 0; p < spots.size(); ++p) {
    if (!placed[p]) triangles.insert(p);
  }
  triangles.make_delaunay();
  mesh.cells = join_cells(mesh.spots, std::move(triangles));
  return mesh;
}

double share_of_triangulations(std::size_t n, std::size_t i, std::size_t j, std::size_t k) {
  return catalan(j - i - 1) * catalan(k - j - 1) * catalan(n - (k - i) - 1) / catalan(n - 2);
}

}  // namespace strikeoff
