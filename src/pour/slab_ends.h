// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "pour/mesh.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// A side of a slab where a pour can start or end: edges in one line, or one arc.
struct SlabEnd {
  std::string name;  // in a sentence: "the left", "edge 3"
  Length length;
  Point middle;
  std::vector<std::size_t> nodes;  // of the mesh, on it
};

/// The sides that can be an end, the shortest first: those not shorter than half the slab's mean
/// width 2A/P (assumption), which leaves out its cut corners and small jogs.
[[nodiscard]] std::vector<SlabEnd> ends_of(const Slab& slab, const SlabPlan& shape,
                                           const PourMesh& mesh);

/// True when the two have a corner in common.
[[nodiscard]] bool are_adjacent(const SlabEnd& a, const SlabEnd& b);

}  // namespace strikeoff
