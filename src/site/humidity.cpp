// SPDX-License-Identifier: MIT
#include "site/humidity.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

// Tetens, Z. Geophys. 6 (1930), in the rounding of FAO Irrigation and Drainage Paper 56, eq. 11
// (from memory); held against the table of the CRC Handbook by a test.
constexpr double at_zero = 0.6108;  // kPa
constexpr double slope = 17.27;
constexpr double pole = 237.3;  // C below zero

}  // namespace

Pressure saturation_pressure(Temperature temperature) {
  const double t = temperature.in_c();
  if (t <= -pole) return Pressure{};
  return kilopascals(at_zero * std::exp(slope * t / (pole + t)));
}

Temperature dew_point(Temperature air, double humidity) {
  if (humidity <= 0) return Temperature::celsius(-pole);
  // The same formula solved for the temperature whose saturation pressure the air has.
  const double t = air.in_c();
  const double b = std::log(std::min(humidity, 1.0)) / slope + t / (pole + t);
  return Temperature::celsius(pole * b / (1 - b));
}

}  // namespace strikeoff
