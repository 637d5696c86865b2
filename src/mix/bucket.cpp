// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <numbers>

#include "mix/mix.h"

namespace strikeoff {

BucketMark bucket_mark(const Bucket& bucket, Volume water) {
  const double r0 = bucket.bottom.in_m() / 2, r1 = bucket.top.in_m() / 2;
  const double height = bucket.height.in_m(), pi = std::numbers::pi;
  const double brim = pi * height * (r0 * r0 + r0 * r1 + r1 * r1) / 3;

  BucketMark mark;
  mark.fills = std::max(1, whole_up(water.si() / brim));
  const double fill = water.si() / mark.fills;
  const double r = std::cbrt(r0 * r0 * r0 + 3 * fill * (r1 - r0) / (pi * height));
  // The frustum's volume solved for h rather than (r - r0) H/(r1 - r0): it holds for a straight
  // bucket too and loses nothing for a nearly straight one.
  mark.depth = Length::m(3 * fill / (pi * (r0 * r0 + r0 * r + r * r)));
  return mark;
}

}  // namespace strikeoff
