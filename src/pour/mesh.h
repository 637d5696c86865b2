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
  /// Every corner of the outline and the holes is among them, at its exact place and in its
  /// order, the first corner of the outline first; between them are nodes on the straight sides.
  /// Two neighbours are the side of one triangle, unless a hole lies along the edge there.
  std::vector<std::vector<std::size_t>> rings;
};

/// The region inside `outline` less `holes` (each in either sense); sides of triangles at most
/// about `spacing` long, shorter beside short sides of the region. The number of nodes is bounded,
/// about 25 000 or some more than the corners: a smaller spacing is widened to keep to it. Delaunay
/// as far as the edge allows. Precondition: simple polygons, the holes inside the outline and
/// apart; upright rectangles may also lie along its sides and each other's.
[[nodiscard]] PourMesh mesh_of(const Polygon& outline, const std::vector<Polygon>& holes,
                               Length spacing);

}  // namespace strikeoff
