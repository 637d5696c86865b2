// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// A place or a way in the plane as plain numbers, for formulas: in metres unless said otherwise.
struct Vec {
  double x = 0, y = 0;

  [[nodiscard]] double length() const { return std::hypot(x, y); }
  /// Of length 1 in the same direction, exact along the axes; none stays none.
  [[nodiscard]] Vec unit() const {
    const double l = length();
    return l > 0 ? Vec{x / l, y / l} : Vec{};
  }
  /// Turned a quarter to the left.
  [[nodiscard]] constexpr Vec left() const { return {-y, x}; }

  friend constexpr Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec operator-(Vec a) { return {-a.x, -a.y}; }
  friend constexpr Vec operator*(Vec a, double k) { return {a.x * k, a.y * k}; }
  friend constexpr Vec operator*(double k, Vec a) { return a * k; }
  friend constexpr Vec operator/(Vec a, double k) { return {a.x / k, a.y / k}; }
};

constexpr double dot(Vec a, Vec b) {
  return a.x * b.x + a.y * b.y;
}
/// Twice the area of the triangle of both: positive where b points to the left of a.
constexpr double cross(Vec a, Vec b) {
  return a.x * b.y - a.y * b.x;
}

constexpr Vec vec(const Point& p) {
  return {p.x.in_m(), p.y.in_m()};
}
/// The way from one place to another, in metres.
constexpr Vec vec(const Point& from, const Point& to) {
  return {(to.x - from.x).in_m(), (to.y - from.y).in_m()};
}
constexpr Point point(Vec v) {
  return {Length::m(v.x), Length::m(v.y)};
}

/// What lies to the left of a straight line.
struct HalfPlane {
  Vec at, way;  // a place on the line and its direction, of length 1

  /// How far to the left of the line, negative to the right.
  [[nodiscard]] constexpr double depth(Vec place) const { return cross(way, place - at); }
};
/// Left of the line from a through b, which must differ.
inline HalfPlane left_of(Vec a, Vec b) {
  return {a, (b - a).unit()};
}
inline HalfPlane left_of(const Point& a, const Point& b) {
  return {vec(a), vec(a, b).unit()};
}

/// The length of the straight line between two places; exact along the axes.
inline Length distance(const Point& a, const Point& b) {
  return Length::nm(std::hypot((b.x - a.x).in_nm(), (b.y - a.y).in_nm()));
}

/// So much of the way from a to b: 0 at a, 1 at b.
constexpr Point between(const Point& a, const Point& b, double share) {
  return {a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share};
}

}  // namespace strikeoff
