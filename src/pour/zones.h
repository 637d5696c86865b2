// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Which part of which slab each batch fills, and which batches touch.
struct ZonePlan {
  std::vector<std::vector<Zone>> zones;      // [batch - 1]
  std::vector<std::vector<int>> neighbours;  // [batch - 1], batch numbers, rising
  std::vector<Joint> joints;                 // by first, then second batch
  std::vector<Length> fronts;                // [batch - 1]: the wet edge once it is placed
  std::vector<Length> advances;              // [batch - 1]: how far its front moves, on average
  std::vector<Sweep> sweeps;                 // of each slab
  int gap = 0;                               // largest number of batches between two that touch
  Length wet_edge_max;                       // longest open front
  Length joint_length;                       // between different batches, in all
};

/// Cuts the slabs of a job into zones. What costs time, the courses a pour may take over each
/// slab, is worked out once, so that plans with other numbers of batches come cheap.
class ZoneCutter {
 public:
  ZoneCutter(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes);
  ~ZoneCutter();
  ZoneCutter(ZoneCutter&&) noexcept;
  ZoneCutter& operator=(ZoneCutter&&) noexcept;

  /// The slabs in order, in zones whose volumes are as `shares` (all positive; the whole is
  /// shared out). Of the courses each slab may take the one with the smallest gap, then the
  /// shortest joints, then the shortest front.
  [[nodiscard]] ZonePlan cut(const std::vector<double>& shares) const;

 private:
  struct Courses;
  std::unique_ptr<Courses> courses_;
};

/// The slabs in this many zones of equal volume.
[[nodiscard]] ZonePlan cut_zones(const std::vector<Slab>& slabs,
                                 const std::vector<SlabPlan>& shapes, int batches);

}  // namespace strikeoff
