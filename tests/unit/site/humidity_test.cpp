// SPDX-License-Identifier: MIT
#include "site/humidity.h"

#include <catch2/catch.hpp>
#include <utility>

using namespace strikeoff;

namespace {

double kpa_at(double c) {
  return in_kilopascals(saturation_pressure(Temperature::celsius(c)));
}

double dew(double c, double humidity) {
  return dew_point(Temperature::celsius(c), humidity).in_c();
}

}  // namespace

// CRC Handbook of Chemistry and Physics, 73rd ed. (1992-93), vapour pressure of water (read).
TEST_CASE("saturation pressure lies within 0.2 percent of the CRC table", "[site]") {
  const auto [c, kpa] =
      GENERATE(std::pair{0.0, 0.61129}, std::pair{5.0, 0.8726}, std::pair{10.0, 1.2281},
               std::pair{15.0, 1.7056}, std::pair{20.0, 2.3388}, std::pair{25.0, 3.1690},
               std::pair{30.0, 4.2455}, std::pair{35.0, 5.6267}, std::pair{40.0, 7.3814});
  CHECK(kpa_at(c) == Approx(kpa).epsilon(0.002));
}

// Steam-table extract, psia against Fahrenheit (read).
TEST_CASE("saturation pressure lies within 0.2 percent of a steam table", "[site]") {
  const auto [f, table] =
      GENERATE(std::pair{40.0, 0.1217}, std::pair{50.0, 0.1781}, std::pair{60.0, 0.2563},
               std::pair{70.0, 0.3631}, std::pair{80.0, 0.5069}, std::pair{90.0, 0.6979},
               std::pair{100.0, 0.9493});
  CHECK(in_psi(saturation_pressure(Temperature::fahrenheit(f))) == Approx(table).epsilon(0.002));
}

TEST_CASE("saturation pressure goes to nothing in any cold", "[site]") {
  CHECK(kpa_at(-30) > 0);
  CHECK(kpa_at(-30) < kpa_at(-29));
  CHECK(kpa_at(-237.3) == 0);
  CHECK(kpa_at(-270) == 0);
}

// University of Arizona AZMET, dew-point formulas (read).
TEST_CASE("dew points are those of the published formulas", "[site]") {
  CHECK(dew(20, 0.5) == Approx(9.27).margin(0.06));
  CHECK(dew(25, 0.6) == Approx(16.7).margin(0.06));
  CHECK(dew(30, 0.7) == Approx(23.92).margin(0.06));
  CHECK(dew(21, 0.7) == Approx(15.32).margin(0.06));
  CHECK(dew(35, 0.4) == Approx(19.37).margin(0.06));
}

TEST_CASE("the dew point is the air's own when it is saturated and lower when drier", "[site]") {
  for (const double air : {-20.0, 0.0, 20.0, 40.0}) {
    CHECK(dew(air, 1) == Approx(air).margin(1e-9));
    CHECK(dew(air, 0.99) < air);
    CHECK(dew(air, 0.01) < dew(air, 0.02));
    // At its dew point the air is saturated with what it holds.
    CHECK(kpa_at(dew(air, 0.4)) == Approx(0.4 * kpa_at(air)));
  }
}

TEST_CASE("air without any water has no dew point above the pole of the formula", "[site]") {
  CHECK(dew(20, 0) == -237.3);
}
