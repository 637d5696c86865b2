// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "render/text_sections.h"
#include "support/render_sample.h"

using namespace strikeoff;
using Catch::Matchers::Contains;

TEST_CASE("the section on the air says what the top loses and what the cure takes", "[render]") {
  CHECK(text::air_and_water(test::printed_bench_plan()).str() == R"(AIR AND WATER
-------------
  The fresh top loses up to about 0.06 lb/ft2/h of water, in air of 77 F, 40 % humidity, wind 5 mph,
  a mix of 68 F. That is an estimate: 0.04 lb/ft2/h to 0.09 lb/ft2/h. A bare edge skins over in
  about 10 min.
  While it cures, 1 h, wet it again: bare every 20 min; sheet over the wet top every 3 h 30 min. It
  takes about 0.5 gal of water under a sheet over the wet top: less than a bucket of 2.5 gal.
)");
}

TEST_CASE("the hours stand in a table with the best one named", "[render]") {
  Plan plan = test::printed_bench_plan();
  HourPlan seven;
  seven.weather = {std::chrono::hours(7), Temperature::fahrenheit(60), 0.7, miles_per_hour(2)};
  seven.worst = kilograms_per_m2_h(0.1);
  HourPlan eight = seven;
  eight.weather.time = std::chrono::hours(8);
  eight.worst.reset();
  eight.against = "the hours end before the top is covered";
  plan.site.hours = {seven, eight};
  CHECK_THAT(text::air_and_water(plan).str(), Contains("None of these hours is good to begin."));
  plan.site.best_start = seven.weather.time;
  CHECK_THAT(text::air_and_water(plan).str(), Contains("Best begun at 07:00"));
  CHECK_THAT(text::air_and_water(plan).str(), Contains("0.02 lb/ft2/h  best"));
  CHECK_THAT(text::air_and_water(plan).str(), Contains("the hours end before the top is covered"));
}

TEST_CASE("what could wait for days is still looked at once a day", "[render]") {
  Plan plan = test::printed_bench_plan();
  plan.site.wettings.back().every = hours(24);
  const TextPage wide{400};
  CHECK_THAT(text::air_and_water(plan).str(wide), !Contains("once a day"));
  plan.site.wettings.back().every = hours(25);
  CHECK_THAT(text::air_and_water(plan).str(wide), Contains("but look at it once a day"));
}

TEST_CASE("the dew point is said where the mix is near it and saturated air dries nothing",
          "[render]") {
  Plan plan = test::printed_bench_plan();
  CHECK_THAT(text::air_and_water(plan).str(), !Contains("Dew point"));
  plan.site.dew_point = Temperature::fahrenheit(64);
  CHECK_THAT(text::air_and_water(plan).str(), Contains("Dew point: 64 F."));
  plan.site.skin.reset();
  CHECK_THAT(text::air_and_water(plan).str(),
             Contains("The air takes no water from the fresh top"));
  plan.batches.clear();
  CHECK(text::air_and_water(plan).empty());
}
