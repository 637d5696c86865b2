// SPDX-License-Identifier: MIT
#pragma once

#include "slab/heights.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// How much concrete stands over a part of one slab: its thickness varies with the panel, the
/// levels of the base, the fall of the top and its aprons.
class SlabVolume {
 public:
  /// `strip` forms the inner face of the aprons.
  SlabVolume(const Slab& slab, const SlabPlan& shape, Length strip);

  /// True when the slab is equally thick all over: volumes are as areas.
  [[nodiscard]] bool is_even() const { return even_; }
  /// Over a polygon inside the slab's outline that leaves its openings out; negative when it runs
  /// clockwise. Exact.
  [[nodiscard]] Volume over(const Polygon& part) const;

 private:
  Length thickness_, panel_thickness_, apron_depth_;
  Polygon panel_;   // empty: none, or taken off the thickness because it reaches everywhere
  Polygon inside_;  // of the aprons; empty without
  Heights heights_;
  bool even_ = true;
};

}  // namespace strikeoff
