// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "pour/mesh.h"

namespace strikeoff {

// The course of a pour over a slab: at each node of its mesh a number that rises from where the
// pour starts to where it ends. Fronts are the lines on which it is the same.

/// 0 at the nodes of `start`, 1 at those of `end`, between them the solution of Laplace's equation
/// with no flux through the rest of the edge: fronts meet the forms at right angles, fan round
/// corners and part and meet again round openings; no place is left behind (maximum principle).
/// Linear finite elements (elementary). Parts of the mesh that reach neither start nor end get 1.
[[nodiscard]] std::vector<double> harmonic_field(const PourMesh& mesh,
                                                 const std::vector<std::size_t>& start,
                                                 const std::vector<std::size_t>& end);

/// How far it is from the nearest node of `start` inside the region, over the farthest of all: for
/// shapes with dead ends. Fast marching on the triangles (Kimmel and Sethian 1998, from memory).
[[nodiscard]] std::vector<double> distance_field(const PourMesh& mesh,
                                                 const std::vector<std::size_t>& start);

}  // namespace strikeoff
