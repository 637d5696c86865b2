// SPDX-License-Identifier: MIT
#pragma once

#include <cmath>
#include <optional>

namespace strikeoff {

/// Where a rising function becomes 0 between `lo`, where it is negative, and `hi`, where it is
/// positive: by secants from `guess`, kept between the two and halved where they do not help. To
/// `tolerance` in the function; nothing where it jumps over that.
template <class Function>
std::optional<double> rising_root(Function f, double lo, double hi, double guess,
                                  double tolerance) {
  double x = guess > lo && guess < hi ? guess : (lo + hi) / 2;
  double before_x = x, before_f = 0;
  for (int step = 0; step < 100; ++step) {
    const double fx = f(x);
    if (std::abs(fx) <= tolerance) return x;
    (fx < 0 ? lo : hi) = x;
    const double slope = step == 0 ? 0 : (fx - before_f) / (x - before_x);
    before_x = x;
    before_f = fx;
    double next = slope > 0 && step % 5 != 4 ? x - fx / slope : (lo + hi) / 2;
    if (!(next > lo && next < hi)) next = (lo + hi) / 2;
    if (next == lo || next == hi) return std::nullopt;
    x = next;
  }
  return std::nullopt;
}

}  // namespace strikeoff
