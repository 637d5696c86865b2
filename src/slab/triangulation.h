// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

namespace strikeoff {

/// A place in metres.
struct Spot {
  double x = 0, y = 0;
};

/// The corners of the convex hull, anticlockwise; a spot within a micrometre of a side is none.
[[nodiscard]] std::vector<std::size_t> hull_of(const std::vector<Spot>& spots);

/// The Delaunay triangulation with triangles whose corners lie on one circle joined to one cell.
struct Mesh {
  std::vector<Spot> spots;                      // within 1 mm of the hull's side: moved onto it
  std::vector<std::vector<std::size_t>> cells;  // convex, anticlockwise, three corners and more
  std::vector<std::vector<std::size_t>> sides;  // of the hull, in turn: the spots along each
};

/// Precondition: three spots and more, at least 2 mm apart, not in one line.
[[nodiscard]] Mesh delaunay(const std::vector<Spot>& spots);

/// The share of all triangulations of a convex polygon of n corners that have the triangle
/// i < j < k: C(a) C(b) C(c)/C(n - 2), where C are the Catalan numbers, which count the
/// triangulations of a polygon of two corners more, and a, b, c belong to the three polygons that
/// the triangle leaves.
[[nodiscard]] double share_of_triangulations(std::size_t n, std::size_t i, std::size_t j,
                                             std::size_t k);

}  // namespace strikeoff
