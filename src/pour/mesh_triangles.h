// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "pour/mesh.h"

namespace strikeoff {

// How the cells of a mesh, between two cuts across the region, become triangles.

/// A corner of a cell on its way along it, and whether it lies on its upper side.
struct CellNode {
  std::size_t node = 0;
  bool upper = false;
};

/// Adds triangles between two straight cuts, both from low to high: a convex cell without corners
/// but those on the cuts.
void zip(std::span<const std::size_t> left, std::span<const std::size_t> right, PourMesh& mesh);

/// Adds triangles that fill a cell whose nodes are given in order along it, both sides merged; the
/// first and the last belong to both. Linear (Garey, Johnson, Preparata and Tarjan 1978, from
/// memory).
void fill_monotone(std::span<const CellNode> cell, PourMesh& mesh);

/// Swaps diagonals until each has no more than half a turn in the two angles opposite it (Lawson's
/// flips, 1977), and puts a node on a side of the region where the angle opposite it is obtuse, at
/// the foot of its corner: then no weight of the finite elements is negative, but for a few
/// triangles too flat to be worth it.
void make_delaunay(PourMesh& mesh);

}  // namespace strikeoff
