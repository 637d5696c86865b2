// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Which part of which slab each batch fills, and which batches touch.
struct ZonePlan {
  std::vector<std::vector<Zone>> zones;      // [batch - 1]
  std::vector<Volume> volumes;               // [batch - 1]: net, in all its zones
  std::vector<std::vector<int>> neighbours;  // [batch - 1], batch numbers, rising
  std::vector<Joint> joints;                 // by first, then second batch
  std::vector<Joint> too_short;              // contacts too short to be joints, likewise
  std::vector<Length> fronts;                // [batch - 1]: the wet edge once it is placed
  std::vector<Length> advances;              // [batch - 1]: how far its front moves, on average
  std::vector<Sweep> sweeps;                 // of each slab, in the order of the pour
  int gap = 0;                               // largest number of batches between two that touch
  Length wet_edge_max;                       // longest open front
  Length joint_length;                       // between different batches, in all
  Length narrowest;                          // of the advances of whole batches and remainders
  bool in_cells = false;                     // some front is filled cell by cell
};

/// How wide a ribbon across the front should be, and must be.
struct RibbonRule {
  std::optional<Length> least;  // wished; nothing: max(2h, 150 mm) (assumption)
  Length must;                  // max(40 mm, three grains): a narrower one cannot be worked in
};
[[nodiscard]] RibbonRule ribbon_rule(const Crew& crew, const Mix& mix);
/// What a slab so thick wishes by default.
[[nodiscard]] Length usual_advance(Length thickness);

/// How many batches apart two that touch may be: in time, and with a tenth of the usable time to
/// spare.
struct Reach {
  int works = 1000000, comfortable = 1000000;
  auto operator<=>(const Reach&) const = default;
};

/// What a pour wants of its zones.
struct ZoneWish {
  RibbonRule rule;
  std::vector<double> shares;  // of the batches, all positive; the whole is shared out
  double room = -1;            // what a batch has to spare, as a part of it; negative: keep shares
  double more_room = -1;       // with all of its waste
  Reach reach;
  std::vector<Sweep> keep;  // how it is poured already; empty: open
};

/// Cuts the slabs of a job into zones. What costs time, the ways across each slab, is worked out
/// once. Not to be called from two threads at once.
class ZoneCutter {
 public:
  /// `shapes` are the slabs' in the same order; `strip` forms the inner faces of their aprons.
  ZoneCutter(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
             Length strip = {});
  ~ZoneCutter();
  ZoneCutter(ZoneCutter&&) noexcept;
  ZoneCutter& operator=(ZoneCutter&&) noexcept;

  /// A batch is a ribbon across the whole front, so that each meets the next: also where its
  /// advance is less than wished, as long as it is as wide as it must be. Only where that advance
  /// is less and cells reach comfortably is the front filled cell by cell, row after row the same
  /// way round. Of the ways across a slab, first those that reach and are as wide as wished, then
  /// those that reach as narrow ribbons; then the smallest gap, the shortest joints, the shortest
  /// longest one.
  ///
  /// The order of the slabs is the job's, unless another leaves fewer ribbons too narrow or shares
  /// fewer batches between slabs. Slabs thicker than 150 mm are filled in lifts of at most that
  /// (assumption): so many batches in turn fill one cell from the bottom up, the last few each its
  /// own.
  [[nodiscard]] ZonePlan cut(const ZoneWish& wish) const;

 private:
  struct Slabs;
  std::unique_ptr<Slabs> slabs_;
};

}  // namespace strikeoff
