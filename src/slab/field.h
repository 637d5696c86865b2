// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "core/vec.h"
#include "strikeoff/outline.h"

namespace strikeoff {

/// A height as a polynomial of the place, all in metres from the origin of its field.
struct Surface {
  double one = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0;
  Surface& operator+=(const Surface& other);
  [[nodiscard]] double at(Vec place) const;
};

/// A convex piece of the plane, within its borders, and the height over it.
struct FieldCell {
  std::vector<HalfPlane> borders;
  Surface surface;
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
  /// The ends of a line and every place between them where the height can be least or greatest,
  /// in turn.
  [[nodiscard]] std::vector<HeightAt> turns(const Point& a, const Point& b) const;
  /// The greatest height on a straight line, and the integral along it: both exact.
  [[nodiscard]] Length most(const Point& a, const Point& b) const;
  [[nodiscard]] Area along(const Point& a, const Point& b) const;
  /// The sum with another field of one cell and the same origin.
  [[nodiscard]] Field plus(const Field& plane) const;

 private:
  Point origin_;
  std::vector<FieldCell> cells_;
};

}  // namespace strikeoff
