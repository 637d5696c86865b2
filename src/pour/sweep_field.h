// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "pour/mesh.h"

namespace strikeoff {

/// The courses a pour may take over a slab: at each node of its mesh a number from 0, where the
/// pour starts, to 1, where it ends. Fronts are the lines on which it is the same. What all courses
/// share is worked out once.
class SweepFields {
 public:
  explicit SweepFields(const PourMesh& mesh);

  /// 0 at the nodes of `start`, 1 at those of `end` that are not also of `start`, between them the
  /// solution of Laplace's equation with no flux through the rest of the edge: fronts meet the
  /// forms at right angles, fan round corners and part and meet again round openings; no place is
  /// left behind (maximum principle). Linear finite elements (elementary); a negative weight, which
  /// an obtuse angle opposite the edge of the region gives, counts as none, so that the principle
  /// holds at the nodes too. Exact to about 1e-10 for that; a dead end is level but for as much.
  /// Parts of the mesh that reach neither start nor end get 1.
  [[nodiscard]] std::vector<double> harmonic(const std::vector<std::size_t>& start,
                                             const std::vector<std::size_t>& end) const;

  /// How far it is from the nearest node of `start` inside the region, over the farthest of all:
  /// for shapes with dead ends. Within about 2 % of the farthest. Parts of the mesh that do not
  /// reach the start get 1. Every other node has a neighbour that is nearer.
  [[nodiscard]] std::vector<double> distance(const std::vector<std::size_t>& start) const;

 private:
  struct Link {
    std::size_t to = 0;
    double weight = 0;  // of the finite elements, at least 0
  };

  [[nodiscard]] std::vector<std::size_t> reached_from(const std::vector<std::size_t>& start,
                                                      const std::vector<std::size_t>& end) const;

  std::vector<Point> nodes_;
  std::vector<std::array<std::size_t, 3>> triangles_;
  std::vector<bool> re_entrant_;  // corners that a shortest way may bend at
  // Node n's links are those from first_[n] up to first_[n + 1]; its triangles likewise.
  std::vector<Link> links_;
  std::vector<std::size_t> first_;
  std::vector<std::size_t> around_, first_around_;
};

}  // namespace strikeoff
