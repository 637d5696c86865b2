// SPDX-License-Identifier: MIT
#pragma once

#include "slab/field.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// How low the base lies below its highest reading, and how high the top rises above its low side,
/// place by place. Both are 0 everywhere for a level base and a level top.
struct Heights {
  explicit Heights(const Slab& slab);

  Field low;   // negative where three or four readings, gone on beyond themselves, say so
  Field rise;  // at least 0 over the slab
  Field both;  // low and rise together

  /// True for a level base and a level top.
  [[nodiscard]] bool are_none() const { return both.is_flat(); }
  /// Between the level line of the highest reading and the base, over a region; exact.
  [[nodiscard]] Volume under(const Outline& region) const { return low.over(region); }
  /// Between the level of the low side and the top, over a region; exact.
  [[nodiscard]] Volume over(const Outline& region) const { return rise.over(region); }
};

}  // namespace strikeoff
