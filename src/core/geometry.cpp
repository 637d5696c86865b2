// SPDX-License-Identifier: MIT
#include "strikeoff/geometry.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/vec.h"
#include "strikeoff/outline.h"

namespace strikeoff {
namespace {

/// In nanometres, in which measured lengths are whole numbers and signs of areas exact.
Vec way_nm(const Point& from, const Point& to) {
  return {(to.x - from.x).in_nm(), (to.y - from.y).in_nm()};
}

std::size_t next(const Polygon& polygon, std::size_t i) {
  return (i + 1) % polygon.size();
}
std::size_t previous(const Polygon& polygon, std::size_t i) {
  return (i + polygon.size() - 1) % polygon.size();
}

/// Direction of edge k; exact along the axes, so that right-angled outlines stay exact.
Vec direction(const Polygon& polygon, std::size_t k) {
  return way_nm(polygon[k], polygon[next(polygon, k)]).unit();
}

bool on_segment(const Point& p, const Point& a, const Point& b) {
  return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

int side_of(const Point& a, const Point& b, const Point& p) {
  const double area = cross(way_nm(a, b), way_nm(a, p));
  return (area > 0) - (area < 0);
}

bool segments_touch(const Point& a, const Point& b, const Point& c, const Point& d) {
  const int abc = side_of(a, b, c), abd = side_of(a, b, d);
  const int cda = side_of(c, d, a), cdb = side_of(c, d, b);
  if (abc != abd && cda != cdb) return true;
  return (abc == 0 && on_segment(c, a, b)) || (abd == 0 && on_segment(d, a, b)) ||
         (cda == 0 && on_segment(a, c, d)) || (cdb == 0 && on_segment(b, c, d));
}

Length distance(const Point& p, const Point& a, const Point& b) {
  const Vec ab = way_nm(a, b), ap = way_nm(a, p);
  const double square = dot(ab, ab);
  const double along = square > 0 ? dot(ap, ab) / square : 0;
  return Length::nm((ap - ab * std::clamp(along, 0.0, 1.0)).length());
}

}  // namespace

Polygon corners_of(const Rectangle& r) {
  return {r.at,
          {r.at.x + r.length, r.at.y},
          {r.at.x + r.length, r.at.y + r.depth},
          {r.at.x, r.at.y + r.depth}};
}

Area area(const Rectangle& r) {
  return r.length * r.depth;
}

Area signed_area(const Polygon& polygon) {
  // About the first corner, so that a slab far from the origin loses nothing.
  double twice_m2 = 0;
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i) {
    twice_m2 += cross(vec(polygon[0], polygon[i]), vec(polygon[0], polygon[i + 1]));
  }
  return Area::from_si(twice_m2 / 2);
}

Length edge_length(const Polygon& polygon, std::size_t edge) {
  return distance(polygon[edge], polygon[next(polygon, edge)]);
}

Point towards(const Point& from, const Point& to, Length by) {
  const Length whole = distance(from, to);
  return {from.x + by * ((to.x - from.x) / whole), from.y + by * ((to.y - from.y) / whole)};
}

Length perimeter(const Polygon& polygon) {
  Length sum;
  for (std::size_t k = 0; k < polygon.size(); ++k) sum += edge_length(polygon, k);
  return sum;
}

Rectangle bounding_box(const Polygon& polygon) {
  Point low = polygon.front(), high = polygon.front();
  for (const Point& p : polygon) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return {low, high.x - low.x, high.y - low.y};
}

std::optional<std::pair<std::size_t, std::size_t>> self_contact(const Polygon& polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point &a = polygon[i], &b = polygon[next(polygon, i)];
    if (a == b) return std::pair{i, i};
    // Neighbours share a corner; they touch elsewhere only by folding straight back.
    const Point& c = polygon[next(polygon, next(polygon, i))];
    const Vec ab = way_nm(a, b), bc = way_nm(b, c);
    if (cross(ab, bc) == 0 && dot(ab, bc) < 0) return std::pair{i, next(polygon, i)};
    for (std::size_t j = i + 2; j < n; ++j) {
      if (next(polygon, j) == i) continue;
      if (segments_touch(a, b, polygon[j], polygon[next(polygon, j)])) return std::pair{i, j};
    }
  }
  return std::nullopt;
}

bool is_right_angled(const Polygon& polygon) {
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    const Vec a = way_nm(polygon[previous(polygon, k)], polygon[k]);
    const Vec b = way_nm(polygon[k], polygon[next(polygon, k)]);
    const bool a_along_x = a.y == 0 && a.x != 0, a_along_y = a.x == 0 && a.y != 0;
    const bool b_along_x = b.y == 0 && b.x != 0, b_along_y = b.x == 0 && b.y != 0;
    if (!((a_along_x && b_along_y) || (a_along_y && b_along_x))) return false;
  }
  return true;
}

bool is_convex_corner(const Polygon& polygon, std::size_t corner) {
  const Vec in = way_nm(polygon[previous(polygon, corner)], polygon[corner]);
  const Vec out = way_nm(polygon[corner], polygon[next(polygon, corner)]);
  return cross(in, out) > 0;
}

Turn turn_at(const Polygon& polygon, std::size_t corner) {
  const Vec u = direction(polygon, previous(polygon, corner)), v = direction(polygon, corner);
  const double sine = cross(u, v), cosine = dot(u, v);
  return {std::atan2(sine, cosine), sine / (1 + cosine)};
}

Polygon offset_edges(const Polygon& polygon, std::span<const Length> outward) {
  Polygon moved;
  moved.reserve(polygon.size());
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    // Corner i is where edges i-1 and i meet after each has moved along its outward normal
    // (dy, -dx). With unit directions u, v and offsets a, b it moves by (b u - a v)/(u x v).
    const std::size_t before = previous(polygon, i);
    const Vec u = direction(polygon, before), v = direction(polygon, i);
    const double turn = cross(u, v);
    const Length a = outward[before], b = outward[i];
    if (turn == 0) {  // straight through: both edges lie on one line
      moved.push_back({polygon[i].x + b * v.y, polygon[i].y - b * v.x});
      continue;
    }
    moved.push_back(
        {polygon[i].x + (b * u.x - a * v.x) / turn, polygon[i].y + (b * u.y - a * v.y) / turn});
  }
  return moved;
}

std::optional<std::size_t> swallowed_edge(const Polygon& before, const Polygon& after) {
  for (std::size_t k = 0; k < before.size(); ++k) {
    const Vec was = way_nm(before[k], before[next(before, k)]);
    const Vec is = way_nm(after[k], after[next(after, k)]);
    if (dot(was, is) <= 0) return k;
  }
  return std::nullopt;
}

Area overlap(const Polygon& polygon, const Rectangle& r) {
  return area(clipped(outline_of(polygon), corners_of(r)));
}

bool contains(const Polygon& polygon, const Rectangle& r) {
  // The rectangle is inside when none of its area is outside; 1e-12 m2 (or that share of a larger
  // rectangle) is far below what a saw or a tape can show and far above rounding.
  return (area(r) - overlap(polygon, r)).si() <= 1e-12 * std::max(1.0, area(r).si());
}

bool contains(const Polygon& polygon, const Point& p) {
  // A ray to the right crosses the boundary an odd number of times from inside.
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &a = polygon[i], &b = polygon[next(polygon, i)];
    const int side = side_of(a, b, p);
    if (side == 0 && on_segment(p, a, b)) return true;
    if ((a.y <= p.y) == (b.y <= p.y)) continue;
    if ((a.y < b.y) == (side > 0)) inside = !inside;
  }
  return inside;
}

Length distance(const Point& p, const Polygon& polygon) {
  Length least = distance(p, polygon[0], polygon[next(polygon, 0)]);
  for (std::size_t i = 1; i < polygon.size(); ++i) {
    least = std::min(least, distance(p, polygon[i], polygon[next(polygon, i)]));
  }
  return least;
}

Length distance(const Polygon& a, const Polygon& b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    for (std::size_t j = 0; j < b.size(); ++j) {
      if (segments_touch(a[i], a[next(a, i)], b[j], b[next(b, j)])) return {};
    }
  }
  // Two boundaries that do not meet are nearest at a corner of one of them.
  Length least = distance(a[0], b);
  for (const Point& corner : a) least = std::min(least, distance(corner, b));
  for (const Point& corner : b) least = std::min(least, distance(corner, a));
  return least;
}

bool overlaps(const Rectangle& a, const Rectangle& b) {
  return a.at.x < b.at.x + b.length && b.at.x < a.at.x + a.length && a.at.y < b.at.y + b.depth &&
         b.at.y < a.at.y + a.depth;
}

}  // namespace strikeoff
