// SPDX-License-Identifier: MIT
#include "pour/working_time.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

TEST_CASE("the temperature factor is the inverse of the equivalent-age factor", "[working-time]") {
  // ASTM C1074 (from memory), Q = 5000 K so Ea = 41570 J/mol, reference 20 C.
  const auto [celsius, rate] = GENERATE(table<double, double>({{5, 0.3986},
                                                               {10, 0.5475},
                                                               {15, 0.7438},
                                                               {20, 1},
                                                               {23, 1.1886},
                                                               {30, 1.7553},
                                                               {35, 2.2939},
                                                               {40, 2.9723}}));
  const double factor = temperature_factor(Temperature::celsius(celsius), Temperature::celsius(20),
                                           MolarEnergy::from_si(41570));
  CHECK(1 / factor == Approx(rate).epsilon(0.0002));
}

TEST_CASE("other activation energies give the published rates", "[working-time]") {
  // Freiesleben Hansen and Pedersen (from memory): 33.5 kJ/mol from 20 C, + 1.47 per degree below.
  CHECK(1 / temperature_factor(Temperature::celsius(30), Temperature::celsius(20),
                               kilojoules_per_mole(33.5)) ==
        Approx(1.5737).epsilon(0.0002));
  CHECK(1 / temperature_factor(Temperature::celsius(10), Temperature::celsius(20),
                               kilojoules_per_mole(48.2)) ==
        Approx(0.4974).epsilon(0.0002));
}

TEST_CASE("without an activation energy the time is cautious both ways", "[working-time]") {
  // A table of setting times (read second-hand): 6 h at 70 F, 2 2/3 h at 90 F, 8 h at 60 F. The
  // factor may not promise more time than it shows, within its 10 %.
  const Temperature at = Temperature::fahrenheit(70);
  const auto factor = [&](double f) {
    return temperature_factor(Temperature::fahrenheit(f), at, std::nullopt);
  };
  CHECK(6 * factor(60) < 8 * 1.1);
  CHECK(6 * factor(90) < 2.667 * 1.2);
  CHECK(factor(70) == 1);
  CHECK(factor(90) == temperature_factor(Temperature::fahrenheit(90), at, kilojoules_per_mole(50)));
  CHECK(factor(60) == temperature_factor(Temperature::fahrenheit(60), at, kilojoules_per_mole(30)));
}

TEST_CASE("a retarder adds its minutes for each dose", "[working-time]") {
  // One dose gives 15 to 20 min (common practice, no source).
  Additive retarder;
  retarder.extends = minutes(15);
  CHECK(in_minutes(retarded(minutes(20), retarder, 1.5)) == Approx(42.5));
}

TEST_CASE("a retarder with factors is read between its points and held beyond them",
          "[working-time]") {
  Additive retarder;
  retarder.extends = minutes(99);
  retarder.factors = {{1, 1.5}, {2, 2.5}};
  const auto at = [&](double doses) { return in_minutes(retarded(minutes(20), retarder, doses)); };
  CHECK(at(0) == Approx(20));
  CHECK(at(0.5) == Approx(25));
  CHECK(at(1) == Approx(30));
  CHECK(at(1.5) == Approx(40));
  CHECK(at(3) == Approx(50));
  retarder.factors = {{0, 1.1}, {1, 2}};
  CHECK(at(0) == Approx(22));
}
