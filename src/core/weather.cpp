// SPDX-License-Identifier: MIT
#include "core/weather.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

Duration clock(const HourWeather& hour) {
  return minutes(static_cast<double>(hour.time.count()));
}

double between(double a, double b, double share) {
  return a + (b - a) * share;
}

}  // namespace

HourWeather weather_at(const std::vector<HourWeather>& hours, Duration after_midnight) {
  const auto after = std::find_if(hours.begin(), hours.end(), [&](const HourWeather& hour) {
    return clock(hour) >= after_midnight;
  });
  if (after == hours.begin()) return hours.front();
  if (after == hours.end()) return hours.back();
  const HourWeather &a = *(after - 1), &b = *after;
  const double share = (after_midnight - clock(a)) / (clock(b) - clock(a));
  HourWeather found;
  found.time = std::chrono::minutes(std::lround(in_minutes(after_midnight)));
  found.air = Temperature::celsius(between(a.air.in_c(), b.air.in_c(), share));
  found.humidity = between(a.humidity, b.humidity, share);
  found.wind = Speed::from_si(between(a.wind.si(), b.wind.si(), share));
  return found;
}

std::string show_time(std::chrono::minutes after_midnight) {
  const auto of_day = after_midnight.count() % (24 * 60);
  return fmt::format("{:02}:{:02}", of_day / 60, of_day % 60);
}

}  // namespace strikeoff
