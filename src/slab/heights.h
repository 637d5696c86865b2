// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "slab/field.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// How low the base lies below its highest reading, and how high the top rises above its low side,
/// place by place. Both are 0 everywhere for a level base and a level top.
class Heights {
 public:
  explicit Heights(const Slab& slab);

  /// True for a level base and a level top.
  [[nodiscard]] bool are_none() const { return both_.is_flat(); }
  /// Negative where three or four readings, gone on beyond themselves, say that the base is higher.
  [[nodiscard]] Length low(const Point& place) const;
  [[nodiscard]] Length rise(const Point& place) const;
  /// The greatest of either on the straight line between two places; exact.
  [[nodiscard]] Length most_low(const Point& a, const Point& b) const;
  [[nodiscard]] Length most_rise(const Point& a, const Point& b) const;
  /// Between the level line of the highest reading and the base, over a region; exact.
  [[nodiscard]] Volume under(const Outline& region) const;
  /// Between the level of the low side and the top, over a region; exact.
  [[nodiscard]] Volume over(const Outline& region) const;

  /// What low and rise together add to an upright face along a straight line; exact.
  [[nodiscard]] Area along(const Point& a, const Point& b) const;

  /// The ends of a line and every place between them where low, or low and rise together, can be
  /// least or greatest.
  [[nodiscard]] std::vector<HeightAt> low_turns(const Point& a, const Point& b) const;
  [[nodiscard]] std::vector<HeightAt> both_turns(const Point& a, const Point& b) const;

 private:
  Field low_, rise_, both_;
};

}  // namespace strikeoff
