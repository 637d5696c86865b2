// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "pour/mesh.h"

namespace strikeoff {

/// A side of a triangle on the region's edge; the edge runs on from it to `next`.
struct RingEdge {
  std::size_t from = 0, to = 0;  // nodes
  std::size_t ring = 0, next = 0;
  std::size_t triangle = 0, side = 0;
  bool corner = false;  // the edge turns at `from`
};

/// A mesh with what walking over it and along its edge needs.
struct WalkedMesh {
  explicit WalkedMesh(PourMesh of);

  PourMesh mesh;
  std::vector<RingEdge> edges;                      // ring by ring
  std::vector<std::size_t> first_of;                // of each ring, then the number of edges
  std::vector<std::array<std::size_t, 3>> beyond;   // across side i to i + 1: triangle, else none
  std::vector<std::array<std::size_t, 3>> edge_of;  // the ring edge on that side, else none
  std::vector<Polygon> corners;                     // of each ring
  bool is_sound = true;  // every side of a triangle has another triangle or the edge beyond it
  static constexpr std::size_t none = static_cast<std::size_t>(-1);
};

/// A line on which a field over the mesh is the same, from edge to edge, what is lower on its left.
struct FrontLine {
  std::size_t up = 0, down = 0;  // ring edges: it starts where the field rises, ends where it falls
  double up_at = 0, down_at = 0;  // how far along them, 0 to 1
  Polygon line;
};

using Front = std::vector<FrontLine>;

/// The lines of this level that reach the edge.
[[nodiscard]] Front front_at(const WalkedMesh& mesh, const std::vector<double>& field,
                             double level);

/// The front as a board is pulled: each line straight from end to end; where that would leave the
/// region or pass an opening on its other side, with the few corners it needs to stay within 5 mm.
[[nodiscard]] Front straightened(const WalkedMesh& mesh, Front front);

/// True when no line of one front crosses one of the other.
[[nodiscard]] bool are_apart(const Front& a, const Front& b);

/// Between fronts at rising levels: before the first, between neighbours, after the last.
struct Bands {
  std::vector<std::vector<Polygon>> parts;      // loops that have lines of a front in them
  std::vector<std::vector<std::size_t>> whole;  // rings that no front meets
};
[[nodiscard]] Bands bands_between(const WalkedMesh& mesh, const std::vector<double>& field,
                                  const std::vector<double>& levels,
                                  const std::vector<const Front*>& fronts);

}  // namespace strikeoff
