// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/quantity.h"
#include "why/expression.h"

namespace strikeoff {

// Quantities as the bare numbers of formulas, in the units of the plan file.

[[nodiscard]] inline double plain(double value) {
  return value;
}
[[nodiscard]] inline double plain(int value) {
  return value;
}
[[nodiscard]] inline double plain(Length value) {
  return value.in_mm();
}
[[nodiscard]] inline double plain(Area value) {
  return value.si();
}
[[nodiscard]] inline double plain(Volume value) {
  return in_litres(value);
}
[[nodiscard]] inline double plain(Mass value) {
  return value.si();
}
[[nodiscard]] inline double plain(Duration value) {
  return in_minutes(value);
}
[[nodiscard]] inline double plain(Density value) {
  return value.si();
}
[[nodiscard]] inline double plain(Temperature value) {
  return value.in_c();
}
[[nodiscard]] inline double plain(MolarEnergy value) {
  return value.si() / 1000;
}
/// km/h, as forecasts have it.
[[nodiscard]] inline double plain(Speed value) {
  return value.si() * 3.6;
}
template <class Quantity>
[[nodiscard]] double plain(const std::optional<Quantity>& value) {
  return value ? plain(*value) : not_given;
}

}  // namespace strikeoff
