// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/plan.h"

namespace strikeoff {

/// Which part of which slab each batch fills, and which batches touch.
struct ZonePlan {
  std::vector<std::vector<Zone>> zones;      // [batch - 1]
  std::vector<std::vector<int>> neighbours;  // [batch - 1], batch numbers, rising
  int gap = 0;                               // largest number of batches between two that touch
  Length wet_edge_max;                       // longest open front
  Length joint_length;                       // between different batches, in all
  bool gap_is_assumed = false;  // some outline is not a rectangle: gap 1 is taken, not shown
};

/// Cuts the slabs, in order, into `batches` zones of equal net volume. A rectangle is swept along
/// its long side. A batch spans the front when its advance volume/(depth x front) is at least
/// max(2h, 150 mm) (assumption); else each row is cut into ceil(least advance / advance) cells,
/// placed in raster order (the same direction in every row, which beats serpentine: the gap is n
/// instead of 2n - 1). Depth for the advance is net volume / top area; h is the edge thickness.
/// Other outlines are cut straight across their long direction.
[[nodiscard]] ZonePlan cut_zones(const std::vector<SlabPlan>& slabs, int batches);

}  // namespace strikeoff
