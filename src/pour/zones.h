// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Zones that touch along less only meet at a corner: no mix need knit there (assumption).
inline constexpr Length least_joint = Length::mm(10);

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
/// slab, is worked out once, when a slab is first cut in two, so that plans with other numbers of
/// batches come cheap. Not to be called from two threads at once.
class ZoneCutter {
 public:
  /// `shapes` are the slabs' in the same order; `strip` forms the inner faces of their aprons.
  ZoneCutter(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
             Length strip = {});
  ~ZoneCutter();
  ZoneCutter(ZoneCutter&&) noexcept;
  ZoneCutter& operator=(ZoneCutter&&) noexcept;

  /// The slabs in order, in zones whose volumes are as `shares` (all positive; the whole is
  /// shared out). Of the courses each slab may take, those with the smallest gap and joints at
  /// most a tenth longer than the shortest; of these the one with the fewest joints that
  /// are bent or end at a corner, then the shortest joints, then the shortest front.
  ///
  /// The front advances by at least max(2h, 150 mm) (assumption): a thinner ribbon cannot be worked
  /// in and dries at its edge. Where batches are too small for that they fill rows of cells. Slabs
  /// thicker than 150 mm are filled in lifts of at most that (assumption): so many batches in turn
  /// fill one cell from the bottom up, the last few each its own.
  ///
  /// `keep`, of each slab in order, is the course it is already poured by: no other is taken where
  /// that one can be cut.
  [[nodiscard]] ZonePlan cut(const std::vector<double>& shares,
                             const std::vector<Sweep>& keep = {}) const;

 private:
  struct Courses;
  std::unique_ptr<Courses> courses_;
};

/// The slabs in this many zones of equal volume.
[[nodiscard]] ZonePlan cut_zones(const std::vector<Slab>& slabs,
                                 const std::vector<SlabPlan>& shapes, int batches,
                                 Length strip = {});

}  // namespace strikeoff
