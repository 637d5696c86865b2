// SPDX-License-Identifier: MIT
#include "slab/triangulation.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <utility>

namespace strikeoff {
namespace {

constexpr double on_it_m = 1e-9;
constexpr double on_line_m = 1e-6;  // far below a tape, far above rounding
/// To a circle, or to a side of the hull; a millimetre on the tape is within.
constexpr double near_m = 0.001 + on_it_m;

using Edge = std::pair<std::size_t, std::size_t>;
/// By the directed edges of triangles, the third corner of the one left of each.
using Triangles = std::map<Edge, std::size_t>;

void add(Triangles& triangles, std::size_t i, std::size_t j, std::size_t k) {
  triangles[{i, j}] = k;
  triangles[{j, k}] = i;
  triangles[{k, i}] = j;
}

/// Of p to the left of the line from a to b.
double offset(Vec a, Vec b, Vec p) {
  return cross((b - a).unit(), p - a);
}

/// The hull by Andrew's monotone chains (1979). A corner between two others is left out when it
/// lies more than `inside` metres within; each one left out closes a triangle, and together they
/// fill the hull.
Ring chains(const std::vector<Vec>& spots, double inside, Triangles& triangles) {
  // In a direction that no rows of readings are square to.
  const auto along = [&](std::size_t k) { return spots[k].x + spots[k].y * 0.6180339887; };
  std::vector<std::size_t> order(spots.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return along(a) < along(b); });
  Ring hull;
  for (int side = 0; side < 2; ++side) {
    const std::size_t start = hull.size();
    for (const std::size_t p : order) {
      while (hull.size() >= start + 2) {
        const std::size_t a = hull[hull.size() - 2], b = hull.back();
        if (offset(spots[a], spots[p], spots[b]) <= inside) break;
        add(triangles, a, p, b);
        hull.pop_back();
      }
      hull.push_back(p);
    }
    hull.pop_back();
    std::reverse(order.begin(), order.end());
  }
  return hull;
}

/// Moves spots close to a side of the hull onto it.
void settle_sides(std::vector<Vec>& spots) {
  const Ring hull = hull_of(spots);
  for (std::size_t p = 0; p < spots.size(); ++p) {
    if (std::find(hull.begin(), hull.end(), p) != hull.end()) continue;
    Vec to_side;
    double nearest = near_m;
    for (std::size_t k = 0; k < hull.size(); ++k) {
      const Vec a = spots[hull[k]], b = spots[hull[(k + 1) % hull.size()]];
      const double away = offset(a, b, spots[p]);
      if (away > nearest) continue;
      nearest = away;
      to_side = (b - a).unit().left() * -away;
    }
    spots[p] = spots[p] + to_side;
  }
}

/// Lawson's flips (1977): the other diagonal of a quadrilateral is better when the angles opposite
/// this one exceed half a turn together.
void flip_to_delaunay(const std::vector<Vec>& spots, Triangles& triangles) {
  std::vector<Edge> open;
  for (const auto& [edge, third] : triangles) open.push_back(edge);
  while (!open.empty()) {
    const auto [i, j] = open.back();
    open.pop_back();
    const auto one = triangles.find({i, j}), other = triangles.find({j, i});
    if (one == triangles.end() || other == triangles.end()) continue;
    const std::size_t k = one->second, l = other->second;
    const Vec ki = (spots[i] - spots[k]).unit(), kj = (spots[j] - spots[k]).unit();
    const Vec li = (spots[i] - spots[l]).unit(), lj = (spots[j] - spots[l]).unit();
    const double sine_of_both = cross(ki, kj) * dot(li, lj) + dot(ki, kj) * cross(lj, li);
    if (sine_of_both > -1e-12) continue;
    triangles.erase(one);
    triangles.erase(other);
    add(triangles, i, l, k);
    add(triangles, l, j, k);
    open.insert(open.end(), {{i, l}, {l, j}, {j, k}, {k, i}});
  }
}

/// True when the circle through some three of the corners passes all within so many metres.
bool on_one_circle(const Ring& corners, const std::vector<Vec>& spots, double within) {
  const std::size_t n = corners.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      for (std::size_t k = j + 1; k < n; ++k) {
        const Vec a = spots[corners[i]], b = spots[corners[j]] - a, c = spots[corners[k]] - a;
        const double longest = std::max({b.length(), c.length(), (c - b).length()});
        if (std::abs(cross(b, c)) < on_line_m * longest) continue;
        const Vec centre = (dot(c, c) * b.left() - dot(b, b) * c.left()) / (2 * cross(b, c));
        if (std::all_of(corners.begin(), corners.end(), [&](std::size_t p) {
              return std::abs((spots[p] - a - centre).length() - centre.length()) <= within;
            })) {
          return true;
        }
      }
    }
  }
  return false;
}

/// True when a ring turns left about the mean of its corners, all of them on one circle.
bool is_cell(const Ring& ring, const std::vector<Vec>& spots, double within) {
  if (ring.size() == 3) return true;
  Vec middle;
  for (const std::size_t k : ring) middle = middle + spots[k] / static_cast<double>(ring.size());
  for (std::size_t k = 0; k < ring.size(); ++k) {
    const Vec from = spots[ring[k]], to = spots[ring[(k + 1) % ring.size()]];
    if (offset(from, to, middle) < on_line_m) return false;
  }
  return on_one_circle(ring, spots, within);
}

/// Joins cells over every edge whose two cells have one circle, unless what that makes is no cell.
std::vector<Ring> joined(const std::vector<Ring>& cells, const std::vector<Vec>& spots,
                         double within) {
  std::map<Edge, std::size_t> cell_left_of;
  for (std::size_t c = 0; c < cells.size(); ++c) {
    for (std::size_t k = 0; k < cells[c].size(); ++k) {
      cell_left_of[{cells[c][k], cells[c][(k + 1) % cells[c].size()]}] = c;
    }
  }
  std::vector<bool> is_done(cells.size());
  // The cell to join over an edge, if any.
  const auto beyond = [&](std::size_t i, std::size_t j) -> std::optional<std::size_t> {
    const auto found = cell_left_of.find({j, i});
    if (found == cell_left_of.end() || is_done[found->second]) return std::nullopt;
    Ring both = cells[cell_left_of.at({i, j})];
    const Ring& other = cells[found->second];
    both.insert(both.end(), other.begin(), other.end());
    return on_one_circle(both, spots, within) ? std::optional(found->second) : std::nullopt;
  };
  std::vector<Ring> result;
  for (std::size_t c = 0; c < cells.size(); ++c) {
    if (is_done[c]) continue;
    is_done[c] = true;
    std::vector<Ring> members{cells[c]};
    Ring ring = cells[c];
    for (std::size_t e = 0; e < ring.size();) {
      const std::size_t i = ring[e];
      const auto next = beyond(i, ring[(e + 1) % ring.size()]);
      if (!next) {
        ++e;
        continue;
      }
      is_done[*next] = true;
      Ring other = cells[*next];
      members.push_back(other);
      std::rotate(other.begin(), std::find(other.begin(), other.end(), i), other.end());
      ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(e) + 1, other.begin() + 1,
                  other.end() - 1);
    }
    if (is_cell(ring, spots, within)) members = {ring};
    result.insert(result.end(), members.begin(), members.end());
  }
  return result;
}

}  // namespace

Ring hull_of(const std::vector<Vec>& spots) {
  Triangles unused;
  return chains(spots, -on_line_m, unused);
}

Cells delaunay_cells(std::vector<Vec> spots) {
  settle_sides(spots);
  Cells cells{std::move(spots), {}, {}};
  Triangles triangles;
  cells.hull = chains(cells.spots, on_it_m, triangles);
  flip_to_delaunay(cells.spots, triangles);
  for (const auto& [edge, third] : triangles) {
    const auto& [i, j] = edge;
    if (third > std::max(i, j)) cells.rings.push_back({i, j, third});
  }
  // First those on one circle to the last digit, so that it does not matter where they were cut.
  for (const double within : {on_it_m, near_m}) {
    cells.rings = joined(cells.rings, cells.spots, within);
  }
  return cells;
}

}  // namespace strikeoff
