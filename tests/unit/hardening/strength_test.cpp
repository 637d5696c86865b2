// SPDX-License-Identifier: MIT
#include "hardening/strength.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace strikeoff;

namespace {

using Law = StrengthCurve::Law;

double mpa(const StrengthCurve& curve, Duration age) {
  return in_megapascals(strength_at(curve, age));
}

StrengthAt point(Duration age, double strength) {
  return {age, megapascals(strength)};
}

}  // namespace

// With x = t - 3 h: 1/S = 1/Su + 1/(Su k x). Slope (1/14 - 1/38) / (1/21 - 1/669) = 0.978071, level
// 1/14 - 0.978071/21 = 0.0248538: Su = 40.235 MPa, k = 0.0254110 per h; 20 MPa at
// 3 + 20 / (0.0254110 x 20.235) = 41.9 h.
TEST_CASE("two points and the set make one hyperbola", "[strength]") {
  const StrengthCurve curve =
      fit_strength({point(hours(24), 14), point(days(28), 38)}, hours(3)).value();
  CHECK(curve.law == Law::hyperbolic);
  CHECK(in_megapascals(curve.ultimate) == Approx(40.235).epsilon(0.0001));
  CHECK(curve.rate * 3600 == Approx(0.025411).epsilon(0.0001));
  CHECK(mpa(curve, hours(24)) == Approx(14));
  CHECK(mpa(curve, days(28)) == Approx(38));
  CHECK(mpa(curve, hours(3)) == 0);
  CHECK(mpa(curve, hours(1)) == 0);
  CHECK(in_hours(*age_of(curve, megapascals(20))) == Approx(41.9).epsilon(0.001));
}

TEST_CASE("a curve ends at the last age of the bag", "[strength]") {
  const StrengthCurve curve =
      fit_strength({point(hours(24), 14), point(days(28), 38)}, hours(3)).value();
  CHECK(mpa(curve, days(90)) == Approx(38));
  CHECK(age_of(curve, megapascals(37.9)));
  CHECK_FALSE(age_of(curve, megapascals(38.1)));
  CHECK(*age_of(curve, megapascals(0)) == Duration{});
}

TEST_CASE("points of a hyperbola are found again", "[strength]") {
  std::vector<StrengthAt> points;
  for (const double age : {12.0, 24.0, 72.0, 168.0, 672.0}) {
    const double grown = 0.03 * (age - 4);
    points.push_back(point(hours(age), 42 * grown / (1 + grown)));
  }
  for (const std::optional<Duration> set : {std::optional(hours(4)), std::optional<Duration>()}) {
    const StrengthCurve curve = fit_strength(points, set).value();
    CHECK(curve.law == Law::hyperbolic);
    CHECK(in_megapascals(curve.ultimate) == Approx(42).epsilon(0.001));
    CHECK(in_hours(curve.set) == Approx(4).epsilon(0.01));
    CHECK(curve.rate * 3600 == Approx(0.03).epsilon(0.005));
  }
}

TEST_CASE("points of the exponential law are found again", "[strength]") {
  std::vector<StrengthAt> points;
  for (const double age : {12.0, 24.0, 72.0, 168.0, 672.0}) {
    points.push_back(point(hours(age), 45 * std::exp(-std::pow(20 / age, 0.8))));
  }
  const StrengthCurve curve = fit_strength(points, hours(4)).value();
  CHECK(curve.law == Law::exponential);
  CHECK(in_megapascals(curve.ultimate) == Approx(45).epsilon(0.001));
  CHECK(in_hours(curve.theta) == Approx(20).epsilon(0.01));
  CHECK(curve.shape == Approx(0.8).epsilon(0.01));
  CHECK(in_hours(*age_of(curve, megapascals(45 * std::exp(-1.0)))) == Approx(20).epsilon(0.01));
}

TEST_CASE("points that no curve rises through are steps", "[strength]") {
  const auto law = [](const std::vector<StrengthAt>& points, std::optional<Duration> set) {
    return fit_strength(points, set).value().law;
  };
  const auto first = point(hours(24), 14);
  CHECK(law({first}, hours(3)) == Law::steps);
  CHECK(law({first, point(days(7), 14)}, hours(3)) == Law::steps);
  CHECK(law({first, point(days(7), 10)}, hours(3)) == Law::steps);
  CHECK(law({first, point(hours(48), 40)}, hours(3)) == Law::steps);  // faster than a line
  CHECK(law({first, point(days(7), 30)}, hours(24)) == Law::steps);   // set only then
  CHECK(law({first, point(days(7), 30)}, std::nullopt) == Law::steps);
  CHECK(law({first, point(days(7), 30)}, hours(23)) == Law::hyperbolic);
  CHECK(law({first, point(days(3), 13), point(days(7), 30)}, hours(3)) == Law::steps);
  // 1, 2 and 40 MPa: the best curve is far off.
  CHECK(law({point(hours(24), 1), point(days(27), 2), point(days(28), 40)}, hours(3)) ==
        Law::steps);
  CHECK_FALSE(fit_strength({}, hours(3)));
}

TEST_CASE("steps are as strong as the last point passed", "[strength]") {
  const StrengthCurve steps =
      fit_strength({point(hours(24), 14), point(days(7), 12), point(days(28), 30)}, {}).value();
  CHECK(mpa(steps, hours(23.9)) == 0);
  CHECK(mpa(steps, hours(24)) == 14);
  CHECK(mpa(steps, days(8)) == 14);
  CHECK(mpa(steps, days(400)) == 30);
  CHECK(in_days(*age_of(steps, megapascals(14))) == Approx(1));
  CHECK(in_days(*age_of(steps, megapascals(14.1))) == Approx(28));
  CHECK_FALSE(age_of(steps, megapascals(30.1)));
}
