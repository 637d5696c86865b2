// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// A plane region as triangles that fill it without gap or overlap, so that the course of a pour
/// can be worked out over it. Neighbouring triangles share whole sides.
struct PourMesh {
  std::vector<Point> nodes;
  std::vector<std::array<std::size_t, 3>> triangles;  // node numbers, anticlockwise
  /// The region's edge as nodes in order: the outline anticlockwise, then each hole clockwise.
  /// Every corner of the outline and the holes is among them.
  std::vector<std::vector<std::size_t>> rings;
};

/// The region inside `outline` (anticlockwise) less `holes`; sides of triangles at most about
/// `spacing` long. Holes that touch or reach past the outline are taken as they cut it. The number
/// of nodes is bounded (20 000): a smaller spacing is widened to keep to it.
[[nodiscard]] PourMesh mesh_of(const Polygon& outline, const std::vector<Polygon>& holes,
                           Length spacing);

}  // namespace strikeoff
