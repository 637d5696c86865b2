// SPDX-License-Identifier: MIT
#pragma once

#include <array>

#include "odds/trial.h"

namespace strikeoff {

/// Sums from which come the correlations of the inputs with one outcome.
class Correlations {
 public:
  void add(const std::array<double, input_count>& inputs, double outcome);
  /// As if the other's values had been added after these.
  void add(const Correlations& other);
  /// Squares of the correlations; 0 for what does not vary. The inputs being independent, each is
  /// the share of the outcome's variance that goes with its input on a straight line, and they add
  /// up to at most 1, but for chance (elementary).
  [[nodiscard]] std::array<double, input_count> shares() const;

 private:
  double count_ = 0, sum_ = 0, squares_ = 0;
  std::array<double, input_count> sums_{}, input_squares_{}, products_{};
};

}  // namespace strikeoff
