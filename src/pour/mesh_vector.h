// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// From one node of a pour's mesh to another, in nanometres.
struct MeshVector {
  double x = 0, y = 0;
};

inline MeshVector from_to(const Point& a, const Point& b) {
  return {b.x.in_nm() - a.x.in_nm(), b.y.in_nm() - a.y.in_nm()};
}
inline double cross(const MeshVector& a, const MeshVector& b) {
  return a.x * b.y - a.y * b.x;
}
inline double dot(const MeshVector& a, const MeshVector& b) {
  return a.x * b.x + a.y * b.y;
}
inline double length(const MeshVector& v) {
  return std::sqrt(dot(v, v));
}

}  // namespace strikeoff
