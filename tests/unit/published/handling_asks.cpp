// SPDX-License-Identifier: MIT
#include "loads/lifting.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

/// The program has the manual's metric form: 23 kg for 51 lb (0.6 % less) and 25 cm for 10 in
/// (1.6 % less), and multipliers that are not rounded to two decimals (up to 2 %: HM at 23 in is
/// printed as 0.44 and is 0.4348).
constexpr double metric_form = 0.045;
constexpr double metric_constant = 0.007;

Answers with_index(const PublishedCase& one, const Lifting& lift) {
  const Mass limit = recommended_weight(lift);
  return {{"RWL", {limit, metric_form}}, {"LI", {one.get<Mass>("L") / limit, metric_form}}};
}

/// One lift now and then.
Lifting rare_lift(const PublishedCase& one) {
  Lifting lift;
  lift.out = one.get<Length>("H");
  lift.from = one.get<Length>("V");
  lift.by = one.get<Length>("D");
  lift.turn_deg = one.number("A");
  lift.per_minute = 0.2;
  lift.lasting = hours(1);
  lift.coupling = Coupling::fair;
  return lift;
}

Answers of_multipliers(const PublishedCase& one) {
  LiftMultipliers part;
  part.horizontal = one.number("HM");
  part.vertical = one.number("VM");
  part.distance = one.number("DM");
  part.asymmetry = one.number("AM");
  part.frequency = one.number("FM");
  part.coupling = one.number("CM");
  const Mass limit = lift_constant * part.product();
  // The index is printed from the limit rounded to 1.97 kg.
  return {{"RWL", limit}, {"LI_10kg", {kilograms(10) / limit, 0.002}}};
}

Answers fair_lift(const PublishedCase& one) {
  return with_index(one, rare_lift(one));
}

/// With every multiplier at 1.
Answers best_case(const PublishedCase& one) {
  return {{"LI", {one.get<Mass>("L") / lift_constant, metric_constant}}};
}

}  // namespace

Asks handling_asks() {
  return {{"SA-05", of_multipliers}, {"SA-06", fair_lift}, {"SA-07", fair_lift},
          {"SA-08", fair_lift},      {"SA-13", fair_lift}, {"SA-09", best_case},
          {"SA-10", best_case},      {"SA-11", best_case}, {"SA-12", best_case}};
}

}  // namespace strikeoff::test
