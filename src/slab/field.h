// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/outline.h"

namespace strikeoff {

/// A height as a polynomial of the place, all in metres from the origin of its field.
struct Surface {
  double one = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0;
  Surface& operator+=(const Surface& other);
  [[nodiscard]] double at(double px, double py) const;
};

/// A straight line by one of its points and the unit normal to its inner side, likewise.
struct Border {
  double x = 0, y = 0, nx = 0, ny = 0;
  [[nodiscard]] double inside(double px, double py) const { return (px - x) * nx + (py - y) * ny; }
};

/// A crease: on its inner side the height grows by `steep` for each metre away from it.
struct Crease {
  Border line;
  double steep = 0;
};

/// A convex piece of the plane, bounded or not, and the height over it. Creases go with a surface
/// of the first degree only.
struct FieldCell {
  std::vector<Border> borders;
  Surface surface;
  std::vector<Crease> creases = {};
};

struct HeightAt {
  Length height;
  Point at;
};

/// A continuous height over the whole plane, piece by piece; 0 everywhere without pieces.
class Field {
 public:
  Field() = default;
  Field(const Point& origin, std::vector<FieldCell> cells);

  [[nodiscard]] bool is_flat() const { return cells_.empty(); }
  [[nodiscard]] Length at(const Point& place) const;
  /// The integral over a region: exact, arcs included.
  [[nodiscard]] Volume over(const Outline& region) const;
  /// The ends of a line and every place between them where the height can be least or greatest.
  [[nodiscard]] std::vector<HeightAt> turns(const Point& a, const Point& b) const;
  /// The integral along a straight line: exact.
  [[nodiscard]] Area along(const Point& a, const Point& b) const;
  /// The sum with another field of one cell and the same origin.
  [[nodiscard]] Field plus(const Field& plane) const;

 private:
  Point origin_;
  std::vector<FieldCell> cells_;
};

}  // namespace strikeoff
