// SPDX-License-Identifier: MIT
#include "core/weather.h"

#include <catch2/catch.hpp>

using namespace strikeoff;
using Clock = std::chrono::minutes;

namespace {

const std::vector<HourWeather> two{
    {Clock(8 * 60), Temperature::celsius(10), 0.8, metres_per_second(0)},
    {Clock(12 * 60), Temperature::celsius(30), 0.4, metres_per_second(4)}};

}  // namespace

TEST_CASE("between two hours the weather lies on straight lines", "[weather]") {
  const HourWeather nine = weather_at(two, hours(9));
  CHECK(nine.time == Clock(9 * 60));
  CHECK(nine.air.in_c() == Approx(15));
  CHECK(nine.humidity == Approx(0.7));
  CHECK(nine.wind.si() == Approx(1));
  CHECK(weather_at(two, hours(8)) == two.front());
  CHECK(weather_at(two, hours(12)).air == two.back().air);
}

TEST_CASE("before the first hour and after the last the weather is theirs", "[weather]") {
  CHECK(weather_at(two, hours(0)) == two.front());
  CHECK(weather_at(two, hours(30)) == two.back());
}

TEST_CASE("times are shown with two digits and go round with the clock", "[weather]") {
  CHECK(show_time(Clock(0)) == "00:00");
  CHECK(show_time(Clock(9 * 60 + 5)) == "09:05");
  CHECK(show_time(Clock(25 * 60)) == "01:00");
}
