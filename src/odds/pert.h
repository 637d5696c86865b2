// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

namespace strikeoff {

/// A beta-PERT value: a beta distribution between `least` and `most` whose mean is
/// (least + 4 usual + most)/6, with shape 1 + 4 (usual - least)/(most - least) and its mirror
/// (Malcolm, Roseboom, Clark, Fazar: Application of a technique for research and development
/// program evaluation, Oper. Res. 7 (1959) 646; the usual 4, from memory).
/// It is drawn from its inverse, tabulated: exact at 128 equal steps of the range and straight
/// between, so no value is off by more than a step, 1/128 of the range, nor in the wrong order.
class Pert {
 public:
  /// Precondition: least <= usual <= most. All equal: always that value.
  Pert(double least, double usual, double most);

  /// The value with this share of all values below it; u in (0, 1).
  [[nodiscard]] double at(double u) const {
    if (scale_ == 0) return least_;
    std::size_t k = guide_[static_cast<std::size_t>(u * guide_size)];
    while (u >= below_[k + 1]) ++k;
    return least_ + (static_cast<double>(k) + (u - below_[k]) * per_share_[k]) * scale_;
  }

 private:
  static constexpr std::size_t steps = 128, guide_size = 512;

  double least_ = 0, scale_ = 0;                  // the smallest value, and one step
  std::array<double, steps + 1> below_{};         // share of the values below step k
  std::array<double, steps> per_share_{};         // 1 / (share within step k)
  std::array<std::uint8_t, guide_size> guide_{};  // the step of the smallest u of each part
};

}  // namespace strikeoff
