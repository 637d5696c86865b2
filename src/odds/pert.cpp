// SPDX-License-Identifier: MIT
#include "odds/pert.h"

#include <cmath>

namespace strikeoff {

Pert::Pert(double least, double usual, double most) : least_(least) {
  const double range = most - least;
  if (!(range > 0)) return;
  scale_ = range / static_cast<double>(steps);
  const double rise = 4 * (usual - least) / range, fall = 4 * (most - usual) / range;
  const auto density = [&](double x) { return std::pow(x, rise) * std::pow(1 - x, fall); };
  // Simpson's rule, 16 parts a step: the density is smooth except at the ends, where it is
  // bounded, so what it leaves is far below the step.
  constexpr int parts = 16;
  for (std::size_t k = 0; k < steps; ++k) {
    double sum = 0;
    for (int j = 0; j <= parts; ++j) {
      const double weight = j == 0 || j == parts ? 1 : j % 2 == 1 ? 4 : 2;
      sum += weight *
             density((static_cast<double>(k) + static_cast<double>(j) / parts) / double{steps});
    }
    below_[k + 1] = below_[k] + sum;
  }
  for (double& share : below_) share /= below_[steps];
  for (std::size_t k = 0; k < steps; ++k) {
    const double share = below_[k + 1] - below_[k];
    per_share_[k] = share > 0 ? 1 / share : 0;
  }
  std::size_t k = 0;
  for (std::size_t g = 0; g < guide_size; ++g) {
    while (static_cast<double>(g) / double{guide_size} >= below_[k + 1]) ++k;
    guide_[g] = static_cast<std::uint8_t>(k);
  }
}

}  // namespace strikeoff
