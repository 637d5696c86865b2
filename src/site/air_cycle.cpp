// SPDX-License-Identifier: MIT
#include "site/air_cycle.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace strikeoff {
namespace {

constexpr double an_hour = 60, a_day = 24 * an_hour;  // minutes
constexpr double coldest_at = 5 * an_hour;            // about sunrise (assumption)
constexpr double warmest_at = 15 * an_hour;           // assumption
constexpr double usual_start = 12 * an_hour;          // assumption

struct AirAt {
  double minute = 0;  // after midnight of the list's first day
  double celsius = 0;
};

double between(const AirAt& a, const AirAt& b, double minute) {
  if (b.minute <= a.minute) return std::min(a.celsius, b.celsius);
  return a.celsius + (b.celsius - a.celsius) * (minute - a.minute) / (b.minute - a.minute);
}

/// What rising hours say of that minute; nothing outside them.
std::optional<double> listed(const std::vector<AirAt>& hours, double minute) {
  const auto next = std::find_if(hours.begin(), hours.end(),
                                 [&](const AirAt& hour) { return hour.minute >= minute; });
  if (next == hours.end()) return std::nullopt;
  if (next->minute == minute) return next->celsius;
  if (next == hours.begin()) return std::nullopt;
  return between(*(next - 1), *next, minute);
}

/// Of the days that the list reaches into, the coldest.
std::optional<double> coldest_listed(const std::vector<AirAt>& hours, double minute) {
  std::optional<double> coldest;
  for (; minute <= hours.back().minute; minute += a_day) {
    const auto air = listed(hours, minute);
    if (air) coldest = std::min(*air, coldest.value_or(*air));
  }
  return coldest;
}

/// From the last hour of the list around to its first one.
std::vector<AirAt> across_the_gap(const std::vector<AirAt>& hours,
                                  const std::optional<Temperature>& night) {
  const AirAt from = hours.back();
  const AirAt to = {hours.front().minute + a_day, hours.front().celsius};
  if (to.minute - from.minute <= an_hour) return {from, to};
  if (night) {
    double at = coldest_at;
    while (at < from.minute) at += a_day;
    if (at > to.minute) at = (from.minute + to.minute) / 2;
    return {from, {at, night->in_c()}, to};
  }
  const auto coldest =
      std::min_element(hours.begin(), hours.end(),
                       [](const AirAt& a, const AirAt& b) { return a.celsius < b.celsius; });
  return {{from.minute, coldest->celsius}, {to.minute, coldest->celsius}};
}

AirCycle from_hours(const Site& site) {
  std::vector<AirAt> hours;
  for (const HourWeather& hour : site.hours) {
    hours.push_back({static_cast<double>(hour.time.count()), hour.air.in_c()});
  }
  const std::vector<AirAt> gap = across_the_gap(hours, site.night);
  AirCycle cycle;
  double minute = 0;
  for (Temperature& at : cycle.at) {
    std::optional<double> air = coldest_listed(hours, minute);
    if (!air) air = coldest_listed(gap, minute);
    at = Temperature::celsius(*air);
    minute += an_hour;
  }
  return cycle;
}

AirCycle from_night(Temperature day, Temperature night) {
  const double middle = (day.in_c() + night.in_c()) / 2, half = (day.in_c() - night.in_c()) / 2;
  AirCycle cycle;
  for (std::size_t hour = 0; hour < cycle.at.size(); ++hour) {
    const double minute = static_cast<double>(hour) * an_hour;
    const double after = std::fmod(minute - coldest_at + a_day, a_day);  // the coldest
    const double rise = warmest_at - coldest_at;
    const double turn = after < rise ? after / rise - 1 : (after - rise) / (a_day - rise);
    cycle.at[hour] = Temperature::celsius(middle + half * std::cos(std::numbers::pi * turn));
  }
  return cycle;
}

}  // namespace

Temperature AirCycle::coldest() const {
  return *std::min_element(at.begin(), at.end());
}

Temperature AirCycle::warmest() const {
  return *std::max_element(at.begin(), at.end());
}

Temperature AirCycle::mean() const {
  double sum = 0;
  for (const Temperature air : at) sum += air.in_c();
  return Temperature::celsius(sum / static_cast<double>(at.size()));
}

AirCycle air_cycle(const Site& site) {
  if (site.hours.size() > 1) return from_hours(site);
  if (site.night) return from_night(site.air, *site.night);
  AirCycle cycle;
  cycle.at.fill(site.air);
  return cycle;
}

Duration start_of_pour(const Job& job) {
  if (!job.date || !job.date->time) return minutes(usual_start);
  return minutes(static_cast<double>(job.date->time->count()));
}

}  // namespace strikeoff
