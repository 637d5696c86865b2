// SPDX-License-Identifier: MIT
#include "site/air_cycle.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

namespace {

Site site_at(double air) {
  Site site;
  site.air = Temperature::celsius(air);
  return site;
}

HourWeather hour(int clock, double air) {
  HourWeather weather;
  weather.time = std::chrono::minutes(clock * 60);
  weather.air = Temperature::celsius(air);
  return weather;
}

double at(const Site& site, std::size_t clock) {
  return air_cycle(site).at[clock].in_c();
}

}  // namespace

TEST_CASE("without a night the air stays as it is", "[air-cycle]") {
  const AirCycle cycle = air_cycle(site_at(18));
  CHECK(cycle.coldest().in_c() == 18);
  CHECK(cycle.warmest().in_c() == 18);
  CHECK(cycle.mean().in_c() == Approx(18));
}

TEST_CASE("a night is coldest at five and the day warmest at three", "[air-cycle]") {
  Site site = site_at(20);
  site.night = Temperature::celsius(4);
  CHECK(at(site, 5) == Approx(4));
  CHECK(at(site, 15) == Approx(20));
  CHECK(at(site, 10) == Approx(12));  // half way up
  CHECK(at(site, 22) == Approx(12));  // half way down
  CHECK(air_cycle(site).coldest().in_c() == Approx(4));
  CHECK(air_cycle(site).warmest().in_c() == Approx(20));
}

TEST_CASE("the hours of a whole day are the cycle", "[air-cycle]") {
  Site site = site_at(99);
  site.night = Temperature::celsius(-40);  // the list says it all
  for (int clock = 0; clock < 24; ++clock) site.hours.push_back(hour(clock, clock));
  for (std::size_t clock = 0; clock < 24; ++clock) {
    CHECK(at(site, clock) == static_cast<double>(clock));
  }
}

TEST_CASE("between two hours of the list the air changes evenly", "[air-cycle]") {
  Site site = site_at(99);
  site.hours = {hour(6, 5), hour(10, 13), hour(18, 21)};
  CHECK(at(site, 6) == 5);
  CHECK(at(site, 8) == Approx(9));
  CHECK(at(site, 14) == Approx(17));
}

TEST_CASE("hours the list leaves open lead through the night", "[air-cycle]") {
  Site site = site_at(99);
  site.hours = {hour(8, 12), hour(18, 22)};
  // Without a night: as cold as its coldest.
  CHECK(at(site, 19) == 12);
  CHECK(at(site, 5) == 12);
  // 18:00 to 05:00 falls by 18 in 11 h, 05:00 to 08:00 rises by 8 in 3 h.
  site.night = Temperature::celsius(4);
  CHECK(at(site, 5) == Approx(4));
  CHECK(at(site, 0) == Approx(22 - 18.0 * 6 / 11));
  CHECK(at(site, 7) == Approx(4 + 8.0 * 2 / 3));
  // Listed until 06:00 the next day: the night lies in the middle of what is left, at 07:00.
  site.hours = {hour(8, 12), hour(30, 6)};
  CHECK(at(site, 7) == Approx(4));
}

TEST_CASE("of two days the colder hour counts", "[air-cycle]") {
  Site site = site_at(99);
  for (int clock = 0; clock < 48; ++clock) site.hours.push_back(hour(clock, clock < 24 ? 15 : 9));
  site.hours[3].air = Temperature::celsius(2);
  CHECK(at(site, 3) == 2);
  CHECK(at(site, 12) == 9);
}

TEST_CASE("a pour without a time begins at noon", "[air-cycle]") {
  using namespace std::chrono;
  Job job;
  CHECK(in_hours(start_of_pour(job)) == 12);
  job.date = StartDate{year{2026} / May / 9, std::nullopt};
  CHECK(in_hours(start_of_pour(job)) == 12);
  job.date->time = 7h + 30min;
  CHECK(in_hours(start_of_pour(job)) == 7.5);
}
