// SPDX-License-Identifier: MIT
#include "odds/correlations.h"

#include <cstddef>

namespace strikeoff {

void Correlations::add(const std::array<double, input_count>& inputs, double outcome) {
  count_ += 1;
  sum_ += outcome;
  squares_ += outcome * outcome;
  for (std::size_t i = 0; i < input_count; ++i) {
    sums_[i] += inputs[i];
    input_squares_[i] += inputs[i] * inputs[i];
    products_[i] += inputs[i] * outcome;
  }
}

void Correlations::add(const Correlations& other) {
  count_ += other.count_;
  sum_ += other.sum_;
  squares_ += other.squares_;
  for (std::size_t i = 0; i < input_count; ++i) {
    sums_[i] += other.sums_[i];
    input_squares_[i] += other.input_squares_[i];
    products_[i] += other.products_[i];
  }
}

std::array<double, input_count> Correlations::shares() const {
  std::array<double, input_count> shares{};
  if (count_ < 2) return shares;
  const double outcome = squares_ - sum_ * sum_ / count_;
  for (std::size_t i = 0; i < input_count; ++i) {
    const double input = input_squares_[i] - sums_[i] * sums_[i] / count_;
    const double both = products_[i] - sums_[i] * sum_ / count_;
    // Below this a sum of squares is what rounding left of a constant.
    if (input > 1e-12 * input_squares_[i] && outcome > 1e-12 * squares_) {
      shares[i] = both * both / (input * outcome);
    }
  }
  return shares;
}

}  // namespace strikeoff
