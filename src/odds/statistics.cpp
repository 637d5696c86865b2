// SPDX-License-Identifier: MIT
#include "odds/statistics.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace strikeoff {
namespace {

double lower_tail(double p) {
  const double q = std::sqrt(-2 * std::log(p));
  return (((((-7.784894002430293e-03 * q - 3.223964580411365e-01) * q - 2.400758277161838) * q -
            2.549732539343734) *
               q +
           4.374664141464968) *
              q +
          2.938163982698783) /
         ((((7.784695709041462e-03 * q + 3.224671290700398e-01) * q + 2.445134137142996) * q +
           3.754408661907416) *
              q +
          1);
}

}  // namespace

double normal_quantile(double p) {
  constexpr double tail = 0.02425;
  if (p < tail) return lower_tail(p);
  if (p > 1 - tail) return -lower_tail(1 - p);
  const double q = p - 0.5, r = q * q;
  return (((((-3.969683028665376e+01 * r + 2.209460984245205e+02) * r - 2.759285104469687e+02) * r +
            1.383577518672690e+02) *
               r -
           3.066479806614716e+01) *
              r +
          2.506628277459239) *
         q /
         (((((-5.447609879822406e+01 * r + 1.615858368580409e+02) * r - 1.556989798598866e+02) * r +
            6.680131188771972e+01) *
               r -
           1.328068155288572e+01) *
              r +
          1);
}

Chance chance_of(std::int64_t times, std::int64_t runs) {
  constexpr double z = 1.959963984540054;  // normal quantile of 0.975
  const auto n = static_cast<double>(runs);
  const double p = static_cast<double>(times) / n;
  const double middle = p + z * z / (2 * n), whole = 1 + z * z / n;
  const double half = z * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
  // At either end the interval reaches it exactly; rounding must not print 1e-19.
  return {times, runs, p, times == 0 ? 0 : std::max(0.0, (middle - half) / whole),
          times == runs ? 1 : std::min(1.0, (middle + half) / whole)};
}

double quantile(std::vector<double>& values, double p) {
  // 1e-6: 0.95 of 20 values is the 19th, whatever 1 - 0.05 rounds to.
  const double rank = std::ceil(p * static_cast<double>(values.size()) - 1e-6);
  const auto index = static_cast<std::ptrdiff_t>(std::max(1.0, rank)) - 1;
  std::nth_element(values.begin(), values.begin() + index, values.end());
  return values[static_cast<std::size_t>(index)];
}

}  // namespace strikeoff
