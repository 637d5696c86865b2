// SPDX-License-Identifier: MIT
#include "site/wetting.h"

#include <catch2/catch.hpp>

#include "site/evaporation.h"

using namespace strikeoff;

TEST_CASE("a film lasts as long as the upper end of the rate lets it", "[site]") {
  // 0.2 mm at 0.5 kg/m2/h and 40 % more: 0.2 / 0.7 h = 17.14 min; cloth three times as long.
  CHECK(in_minutes(*drying_time(bare_film, kilograms_per_m2_h(0.5))) == Approx(60 * 0.2 / 0.7));
  CHECK(in_minutes(*drying_time(cloth_film, kilograms_per_m2_h(0.5))) == Approx(60 * 0.6 / 0.7));
  CHECK_FALSE(drying_time(bare_film, {}));
}

// Worked by hand for four kinds of air: concrete, air, humidity, wind, minutes bare, hours cloth.
TEST_CASE("how often to wet follows from the air", "[site]") {
  struct Row {
    double concrete, air, humidity, km_h, rate, bare_min, cloth_h;
  };
  for (const Row& row :
       {Row{22, 20, 0.50, 0, 0.113, 76, 3.8}, Row{30, 22, 0.45, 5, 0.513, 17, 0.83},
        Row{30, 22, 0.45, 15, 1.084, 8, 0.4}, Row{40, 22, 0.45, 0, 0.421, 20, 1.02}}) {
    const EvaporationRate rate =
        evaporation_uno(Temperature::celsius(row.concrete), Temperature::celsius(row.air),
                        row.humidity, kilometres_per_hour(row.km_h));
    CHECK(in_kilograms_per_m2_h(rate) == Approx(row.rate).margin(0.0006));
    const auto all = wettings(rate);
    REQUIRE(all.size() == 4);
    CHECK(in_minutes(*all[0].every) == Approx(row.bare_min).margin(0.5));
    CHECK(in_hours(*all[1].every) == Approx(row.cloth_h).margin(0.05));
    CHECK(*all[2].every / *all[0].every == Approx(10));
    CHECK(*all[3].every / *all[1].every == Approx(10));
  }
}

TEST_CASE("a cover's water is its first film and what goes through it", "[site]") {
  // 1.5 m2 for 24 h at 0.113 kg/m2/h: 0.113 x 1.4 x 24 = 3.797 mm, and 0.2 mm at first: 5.995 L.
  const auto all = wettings(kilograms_per_m2_h(0.113));
  const Area area = Area::from_si(1.5);
  CHECK(in_litres(cure_water(all[0], area, hours(24))) == Approx(1.5 * (0.2 + 3.7968)));
  CHECK(in_litres(cure_water(all[3], area, hours(24))) == Approx(1.5 * (0.6 + 0.37968)));
  CHECK(in_litres(cure_water(wettings({})[3], area, hours(24))) == Approx(0.9));
}

TEST_CASE("in saturated air nothing has to be wetted again", "[site]") {
  for (const Wetting& wetting : wettings({})) CHECK_FALSE(wetting.every);
}
