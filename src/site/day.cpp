// SPDX-License-Identifier: MIT
#include "site/day.h"

#include <algorithm>

#include "core/format.h"
#include "core/weather.h"
#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "site/evaporation.h"
#include "site/humidity.h"
#include "site/site.h"

namespace strikeoff {
namespace {

Duration clock(std::chrono::minutes time) {
  return minutes(static_cast<double>(time.count()));
}

/// Every time to look at: the weather is a straight line between the hours, the rate is not.
std::vector<Duration> looks(const std::vector<HourWeather>& hours, Duration from, Duration to) {
  std::vector<Duration> times{from, to};
  for (Duration t = from; t < to; t += minutes(10)) times.push_back(t);
  for (const HourWeather& hour : hours) {
    if (clock(hour.time) > from && clock(hour.time) < to) times.push_back(clock(hour.time));
  }
  std::sort(times.begin(), times.end());
  return times;
}

HourWeather weather_of(const Site& site) {
  HourWeather weather;
  weather.air = site.air;
  weather.humidity = site.humidity;
  weather.wind = site.wind;
  return weather;
}

EvaporationRate rate_of(const Site& site, Temperature top, const HourWeather& weather) {
  return evaporation_uno(top, weather.air, judged_humidity(site, weather.humidity), weather.wind);
}

BareSpell spell_of(const Site& site, Temperature top, const HourWeather& weather) {
  return {weather,
          rate_of(site, top, weather),
          rate_of(site, std::max(top, weather.air), weather),
          dew_point(weather.air, weather.humidity),
          weather.air,
          weather.air};
}

/// Why a pour should not begin at an hour; empty: it may.
std::string against(const BareSpell& spell, Units units) {
  if (spell.coldest < coldest_start) return "air under " + show(coldest_start, units);
  if (spell.warmest > hottest_start) return "air over " + show(hottest_start, units);
  return "";
}

HourPlan pour_at(const Job& job, const MixPlan& mix, std::chrono::minutes time,
                 const std::optional<Duration>& covered) {
  const Site& site = job.site;
  HourPlan hour;
  hour.weather = weather_at(site.hours, clock(time));
  hour.weather.time = time;
  hour.weather.humidity = judged_humidity(site, hour.weather.humidity);
  hour.concrete = mix_in(job, mix, hour.weather.air);
  hour.evaporation = rate_of(site, hour.concrete, hour.weather);
  if (!covered) {
    hour.against = "how long the top lies bare is not known";
    return hour;
  }
  const Duration end = clock(time) + *covered;
  if (end > clock(site.hours.back().time)) {
    hour.against = "the hours end before the top is covered";
    return hour;
  }
  const BareSpell spell = bare_spell(site, hour.concrete, clock(time), end);
  hour.worst = spell.evaporation;
  hour.against = against(spell, job.units);
  return hour;
}

}  // namespace

double judged_humidity(const Site& site, double humidity) {
  return site.humidity_assumed ? std::min(humidity, driest_air) : humidity;
}

BareSpell bare_spell(const Site& site, Temperature top, Duration from, Duration to) {
  if (site.hours.empty()) return spell_of(site, top, weather_of(site));
  BareSpell found = spell_of(site, top, weather_at(site.hours, from));
  for (const Duration time : looks(site.hours, from, to)) {
    const BareSpell at = spell_of(site, top, weather_at(site.hours, time));
    if (at.evaporation > found.evaporation) {
      found.worst = at.worst;
      found.evaporation = at.evaporation;
    }
    found.warmed = std::max(found.warmed, at.warmed);
    found.dew_point = std::max(found.dew_point, at.dew_point);
    found.warmest = std::max(found.warmest, at.warmest);
    found.coldest = std::min(found.coldest, at.coldest);
  }
  return found;
}

Temperature mix_in(const Job& job, const MixPlan& mix, Temperature air) {
  const Temperature bags = job.site.bags_as_air ? air : job.site.bag_temperature;
  return fresh_mix_temperature(job.mix.bag, bags,
                               mix.water_per_bag * water_density - mix.ice_per_bag,
                               job.site.water_temperature, mix.ice_per_bag);
}

std::vector<HourPlan> full_hours(const Job& job, const MixPlan& mix,
                                 const std::optional<Duration>& covered) {
  std::vector<HourPlan> hours;
  if (job.site.hours.empty()) return hours;
  const std::chrono::minutes last = job.site.hours.back().time;
  for (auto hour = std::chrono::ceil<std::chrono::hours>(job.site.hours.front().time); hour <= last;
       ++hour) {
    hours.push_back(pour_at(job, mix, hour, covered));
  }
  return hours;
}

std::optional<std::chrono::minutes> best_hour(const std::vector<HourPlan>& hours) {
  constexpr EvaporationRate equal = kilograms_per_m2_h(1e-9);  // rounding
  const HourPlan* best = nullptr;
  for (const HourPlan& hour : hours) {
    if (!hour.worst || !hour.against.empty()) continue;
    if (best == nullptr || *hour.worst < *best->worst - equal) best = &hour;
  }
  if (best == nullptr) return std::nullopt;
  return best->weather.time;
}

}  // namespace strikeoff
