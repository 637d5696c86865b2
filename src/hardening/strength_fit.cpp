// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

#include "hardening/strength.h"

namespace strikeoff {
namespace {

using Law = StrengthCurve::Law;

/// A fit whose root mean square error is over this share of the greatest strength is none
/// (assumption).
constexpr double worst_fit = 0.10;

bool all_rise(const std::vector<StrengthAt>& points) {
  return std::adjacent_find(points.begin(), points.end(),
                            [](const StrengthAt& a, const StrengthAt& b) {
                              return b.strength <= a.strength || b.age <= a.age;
                            }) == points.end();
}

/// 1/S is a straight line in 1/(t - t0): two points settle it.
std::optional<StrengthCurve> through_two(const std::vector<StrengthAt>& points, Duration set) {
  const Duration first = points[0].age - set, second = points[1].age - set;
  if (first <= Duration{}) return std::nullopt;
  const double slope = (1 / points[0].strength.si() - 1 / points[1].strength.si()) /
                       (1 / first.si() - 1 / second.si());
  const double level = 1 / points[0].strength.si() - slope / first.si();
  if (!(slope > 0) || !(level > 0)) return std::nullopt;
  StrengthCurve curve;
  curve.law = Law::hyperbolic;
  curve.set = set;
  curve.ultimate = Pressure::from_si(1 / level);
  curve.rate = level / slope;
  curve.points = points;
  return curve;
}

/// Su is a factor of both laws: for given other parameters least squares give it at once. Returns
/// the mean square error.
double set_ultimate(StrengthCurve& curve) {
  curve.ultimate = Pressure::from_si(1);
  double products = 0, squares = 0;
  std::vector<double> shares;
  for (const StrengthAt& point : curve.points) {
    shares.push_back(strength_at(curve, point.age).si());
    products += shares.back() * point.strength.si();
    squares += shares.back() * shares.back();
  }
  if (!(squares > 0)) return HUGE_VAL;
  curve.ultimate = Pressure::from_si(products / squares);
  double error = 0;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    const double off = curve.points[i].strength.si() - curve.ultimate.si() * shares[i];
    error += off * off;
  }
  return error / static_cast<double>(shares.size());
}

struct Fit {
  StrengthCurve curve;
  double error = HUGE_VAL;
};

/// A parameter and the range it is looked for in.
struct Sought {
  double least = 0, most = 1;
};

/// The best of a grid of both parameters that is drawn closer around its best place, a fixed number
/// of times.
Fit best_of(const std::function<StrengthCurve(double, double)>& with, Sought first, Sought second) {
  constexpr int cells = 16, rounds = 16;
  constexpr double closer = 0.5;
  Fit best;
  double at_first = 0, at_second = 0;
  const std::array<Sought, 2> outer = {first, second};
  for (int round = 0; round < rounds; ++round) {
    for (int i = 0; i <= cells; ++i) {
      for (int k = 0; k <= cells; ++k) {
        const double a = first.least + (first.most - first.least) * i / cells;
        const double b = second.least + (second.most - second.least) * k / cells;
        StrengthCurve curve = with(a, b);
        const double error = set_ultimate(curve);
        if (error >= best.error) continue;
        best = {std::move(curve), error};
        at_first = a;
        at_second = b;
      }
    }
    const auto around = [&](Sought range, double at, const Sought& limit) {
      const double half = (range.most - range.least) * closer / 2;
      return Sought{std::max(limit.least, at - half), std::min(limit.most, at + half)};
    };
    first = around(first, at_first, outer[0]);
    second = around(second, at_second, outer[1]);
  }
  return best;
}

/// k from a curve that is still near a straight line at the last point to one that is flat after
/// the first; t0 as given, else from 0 to just before the first point.
Fit hyperbola(const std::vector<StrengthAt>& points, std::optional<Duration> set) {
  const Duration first = points.front().age, last = points.back().age;
  if (set && *set >= first) return {};
  const Sought rate = {std::log(0.3 / last.si()),
                       std::log(100 / (first - set.value_or(Duration{})).si())};
  const Sought sets = set ? Sought{set->si(), set->si()} : Sought{0, 0.95 * first.si()};
  return best_of(
      [&](double log_rate, double t0) {
        StrengthCurve curve;
        curve.law = Law::hyperbolic;
        curve.rate = std::exp(log_rate);
        curve.set = seconds(t0);
        curve.points = points;
        return curve;
      },
      rate, sets);
}

/// theta from well before the first point to past the last; a is near 1 for cements, 0.2 to 3 here.
Fit exponential(const std::vector<StrengthAt>& points) {
  const Sought theta = {std::log(points.front().age.si() / 100),
                        std::log(points.back().age.si() * 2)};
  const Sought shape = {std::log(0.2), std::log(3.0)};
  return best_of(
      [&](double log_theta, double log_shape) {
        StrengthCurve curve;
        curve.law = Law::exponential;
        curve.theta = seconds(std::exp(log_theta));
        curve.shape = std::exp(log_shape);
        curve.points = points;
        return curve;
      },
      theta, shape);
}

}  // namespace

std::optional<StrengthCurve> fit_strength(const std::vector<StrengthAt>& points,
                                          std::optional<Duration> set) {
  if (points.empty()) return std::nullopt;
  StrengthCurve steps;
  steps.points = points;
  if (points.size() == 1 || !all_rise(points)) return steps;
  if (points.size() == 2) {
    if (!set) return steps;
    return through_two(points, *set).value_or(steps);
  }
  Fit best = hyperbola(points, set);
  if (Fit other = exponential(points); other.error < best.error) best = std::move(other);
  if (!(std::sqrt(best.error) <= worst_fit * points.back().strength.si())) return steps;
  return best.curve;
}

}  // namespace strikeoff
