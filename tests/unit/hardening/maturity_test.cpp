// SPDX-License-Identifier: MIT
#include "hardening/maturity.h"

#include <catch2/catch.hpp>
#include <stdexcept>

using namespace strikeoff;

namespace {

constexpr Temperature c(double value) {
  return Temperature::celsius(value);
}

/// Ea / R = 5000 K.
constexpr MolarEnergy q5000 = MolarEnergy::from_si(5000 * 8.314);

AirCycle steady(Temperature air) {
  AirCycle cycle;
  cycle.at.fill(air);
  return cycle;
}

/// 20 C by day, 10 C from 18:00 until 06:00.
AirCycle day_and_night() {
  AirCycle cycle = steady(c(20));
  for (std::size_t hour = 0; hour < 24; ++hour) {
    if (hour < 6 || hour >= 18) cycle.at[hour] = c(10);
  }
  return cycle;
}

}  // namespace

// ASTM C1074 age factors for Q = 5000 K and 20 C, from memory.
TEST_CASE("equivalent age has the age factors of ASTM C1074", "[maturity]") {
  const std::pair<double, double> factors[] = {{5, 0.3986},  {10, 0.5475}, {15, 0.7438},
                                               {20, 1.0},    {23, 1.1886}, {30, 1.7553},
                                               {35, 2.2939}, {40, 2.9723}};
  for (const auto& [air, factor] : factors) {
    CAPTURE(air);
    CHECK(arrhenius_rate(c(air), c(20), q5000) == Approx(factor).epsilon(0.0002));
    const std::vector<AirSpell> day = {{hours(10), c(air)}, {hours(14), c(air)}};
    CHECK(in_hours(equivalent_age(day, c(20), q5000)) == Approx(24 * factor).epsilon(0.0002));
  }
}

// Freiesleben Hansen and Pedersen 1977 (from memory): 33.5 kJ/mol from 20 C up, 1.47 more for each
// degree below; pastes of 38.2 kJ/mol have 0.585 and 1.65 at 15 and 35 C against 25 C (NIST, read).
TEST_CASE("the Arrhenius rate has the published values for other energies", "[maturity]") {
  CHECK(arrhenius_rate(c(10), c(20), kilojoules_per_mole(33.5 + 14.7)) ==
        Approx(0.4974).epsilon(0.0002));
  CHECK(arrhenius_rate(c(30), c(20), kilojoules_per_mole(33.5)) == Approx(1.5737).epsilon(0.0002));
  CHECK(arrhenius_rate(c(15), c(25), kilojoules_per_mole(38.2)) == Approx(0.585).epsilon(0.002));
  CHECK(arrhenius_rate(c(35), c(25), kilojoules_per_mole(38.2)) == Approx(1.65).epsilon(0.002));
}

// A setting-time table, h at F, read in a page that quotes it.
TEST_CASE("the usual energy lets nothing set sooner than the setting table", "[maturity]") {
  const std::pair<double, double> table[] = {
      {100, 1 + 2.0 / 3}, {90, 2 + 2.0 / 3}, {80, 4.0}, {70, 6.0}, {60, 8.0}};
  const Temperature at = Temperature::fahrenheit(70);
  for (const auto& [air, set] : table) {
    CAPTURE(air);
    const double rate = arrhenius_rate(Temperature::fahrenheit(air), at, usual_activation_energy);
    CHECK(6 / rate >= set - 1e-9);
    CHECK(6 / rate <= 1.5 * set);
  }
}

// ASTM C1074 (from memory): 6 h at 18 C, 6 at 24, 12 at 30, 24 at 26, 24 at 22 are 1764 C h over a
// datum of 0 C and 2484 over -10 C. Plowman 1956: 28 d at 15 C over -11 C are 728 C d (read).
TEST_CASE("Nurse-Saul sums degrees over the datum", "[maturity]") {
  const std::pair<double, double> spells[] = {{6, 18}, {6, 24}, {12, 30}, {24, 26}, {24, 22}};
  double zero = 0, ten = 0;
  for (const auto& [time, air] : spells) {
    zero += time * 20 * nurse_saul_rate(c(air), c(20), c(0));
    ten += time * 30 * nurse_saul_rate(c(air), c(20), c(-10));
  }
  CHECK(zero == Approx(1764));
  CHECK(ten == Approx(2484));
  CHECK(28 * 31 * nurse_saul_rate(c(15), c(20), c(-11)) == Approx(728));
  CHECK(24 * nurse_saul_rate(c(10), c(20), c(-10)) == Approx(16));  // C1074, from memory
  CHECK(nurse_saul_rate(c(-10), c(20), c(-10)) == 0);
  CHECK(nurse_saul_rate(c(-30), c(20), c(-10)) == 0);
  CHECK_THROWS_AS(nurse_saul_rate(c(10), c(0), c(0)), std::invalid_argument);
}

TEST_CASE("the slower of the two laws counts and never over the label", "[maturity]") {
  const MolarEnergy usual = usual_activation_energy;
  CHECK(hardening_rate(c(20), c(20), usual) == 1);
  CHECK(hardening_rate(c(40), c(20), usual) == 1);
  CHECK(hardening_rate(c(10), c(20), usual) == Approx(0.5));  // Nurse-Saul; Arrhenius says 0.56
  CHECK(hardening_rate(c(10), c(20), kilojoules_per_mole(60)) ==
        Approx(arrhenius_rate(c(10), c(20), kilojoules_per_mole(60))));  // 0.42
  CHECK(hardening_rate(c(0), c(20), usual) == 0);
  CHECK(hardening_rate(c(-20), c(20), usual) == 0);
  CHECK(hardening_rate(c(0.01), c(20), usual) > 0);
  // A label that holds in frost has no datum to count from; below 0 C still nothing counts.
  CHECK(hardening_rate(c(1), c(-5), usual) == 1);
  CHECK(hardening_rate(c(-1), c(-5), usual) == 0);
}

TEST_CASE("an age clock runs with the air around the clock", "[maturity]") {
  // The slots of 18:00 to 05:00, from 17:30 to 05:30, run at half the rate.
  const AgeClock noon(day_and_night(), hours(12), c(20), usual_activation_energy);
  CHECK(in_hours(noon.equivalent(hours(5.5))) == Approx(5.5));
  CHECK(in_hours(noon.equivalent(hours(9.5))) == Approx(5.5 + 2));
  CHECK(in_hours(noon.equivalent(days(1))) == Approx(18));
  CHECK(in_hours(noon.equivalent(days(10) + hours(1))) == Approx(181));
  CHECK(in_hours(*noon.reached(hours(7.5))) == Approx(9.5));
  CHECK(in_hours(*noon.reached(hours(18))) == Approx(24));
  CHECK(in_hours(*noon.reached(hours(181))) == Approx(241));
  CHECK(noon.slowing().value() == Approx(24.0 / 18));
  const AgeClock evening(day_and_night(), hours(17.5), c(20), usual_activation_energy);
  CHECK(in_hours(*evening.reached(hours(6))) == Approx(12));
  const AgeClock next_day(day_and_night(), hours(24 + 17.5), c(20), usual_activation_energy);
  CHECK(in_hours(*next_day.reached(hours(6))) == Approx(12));
}

TEST_CASE("what takes more than a year or freezes is never reached", "[maturity]") {
  const AgeClock even(steady(c(20)), Duration{}, c(20), usual_activation_energy);
  CHECK(*even.reached(days(365)) == days(365));
  CHECK_FALSE(even.reached(days(365) + hours(1)));
  CHECK(*even.reached(Duration{}) == Duration{});
  const AgeClock frozen(steady(c(0)), Duration{}, c(20), usual_activation_energy);
  CHECK_FALSE(frozen.reached(minutes(1)));
  CHECK_FALSE(frozen.slowing());
  CHECK(frozen.equivalent(days(3)) == Duration{});
  const AgeClock cold(steady(c(1)), Duration{}, c(20), usual_activation_energy);  // 20 times
  CHECK(in_days(*cold.reached(days(18))) == Approx(360));
  CHECK_FALSE(cold.reached(days(19)));
}
