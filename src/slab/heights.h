// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"

namespace strikeoff {

/// How low the base lies below its highest reading, and how high the top rises above its low side,
/// place by place. Both are 0 everywhere for a level base and a level top.
class Heights {
 public:
  explicit Heights(const Slab& slab);

  [[nodiscard]] Length low(const Point& place) const;
  [[nodiscard]] Length rise(const Point& place) const;
  /// The greatest of either on the straight line between two places.
  [[nodiscard]] Length most_low(const Point& a, const Point& b) const;
  [[nodiscard]] Length most_rise(const Point& a, const Point& b) const;
  /// Between the level line of the highest reading and the base, over a region; exact.
  [[nodiscard]] Volume under(const Outline& region) const;
  /// Between the level of the low side and the top, over a region; exact.
  [[nodiscard]] Volume over(const Outline& region) const;
};

}  // namespace strikeoff
