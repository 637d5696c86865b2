// SPDX-License-Identifier: MIT
#include "hardening/strength.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

/// The law itself, whatever the last age.
Pressure by_law(const StrengthCurve& curve, Duration age) {
  if (curve.law == StrengthCurve::Law::hyperbolic) {
    const double grown = curve.rate * std::max(0.0, (age - curve.set).si());
    return curve.ultimate * (grown / (1 + grown));
  }
  return curve.ultimate * std::exp(-std::pow(curve.theta / age, curve.shape));
}

Duration inverse(const StrengthCurve& curve, Pressure strength) {
  if (curve.law == StrengthCurve::Law::hyperbolic) {
    return curve.set + seconds(strength / (curve.ultimate - strength) / curve.rate);
  }
  return curve.theta / std::pow(std::log(curve.ultimate / strength), 1 / curve.shape);
}

}  // namespace

Pressure strength_at(const StrengthCurve& curve, Duration equivalent) {
  if (equivalent <= Duration{}) return {};
  if (curve.law != StrengthCurve::Law::steps) {
    return by_law(curve, std::min(equivalent, curve.points.back().age));
  }
  Pressure strength;
  for (const StrengthAt& point : curve.points) {
    if (point.age <= equivalent) strength = std::max(strength, point.strength);
  }
  return strength;
}

std::optional<Duration> age_of(const StrengthCurve& curve, Pressure strength) {
  if (strength <= Pressure{}) return Duration{};
  if (curve.law == StrengthCurve::Law::steps) {
    const auto point =
        std::find_if(curve.points.begin(), curve.points.end(),
                     [&](const StrengthAt& given) { return given.strength >= strength; });
    if (point == curve.points.end()) return std::nullopt;
    return point->age;
  }
  const Duration last = curve.points.back().age;
  if (strength > strength_at(curve, last)) return std::nullopt;
  return std::min(inverse(curve, strength), last);
}

}  // namespace strikeoff
