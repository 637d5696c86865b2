// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "core/weather.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Speed> any_wind{metres_per_second(0), metres_per_second(50),
                                "0 m/s and 50 m/s (112 mph)"};
constexpr double usual_humidity = 0.5;  // assumption
constexpr std::size_t fewest_hours = 2, most_hours = 48;
constexpr auto hour_example =
    R"({"time": "14:00", "air": "24 C", "humidity": "40 %", "wind": "8 km/h"})";

/// What the job says of one time, or of the site.
struct Given {
  std::optional<Temperature> air;
  std::optional<double> humidity;
  std::optional<Speed> wind;
};

struct GivenHour {
  std::chrono::minutes time{};
  Given weather;
};

Given read_given(Object& o) {
  Given given;
  given.air = o.quantity("air", any_temperature);
  if (const auto percent = o.quantity("humidity", any_percent)) given.humidity = percent->fraction;
  given.wind = o.quantity("wind", any_wind);
  return given;
}

std::optional<std::chrono::minutes> read_clock(Reader& reader, const Node& node) {
  const auto text = read_text(reader, node);
  if (!text) return std::nullopt;
  const auto time = clock_time(*text);
  if (!time) {
    reader.error(node.pointer, {"not-a-time", in_quotes(*text) + " is not a time of day",
                                "write hours and minutes: \"14:00\""});
  }
  return time;
}

/// An hour without air needs the site's.
std::optional<GivenHour> read_hour(Context& c, const Node& node, bool site_has_air) {
  Object o(c.reader, node, "an hour");
  const auto time = read_clock(c.reader, o.need("time", hour_example));
  if (!site_has_air) (void)o.need("air", hour_example);
  const GivenHour hour{time.value_or(std::chrono::minutes{}), read_given(o)};
  o.finish();
  if (!time) return std::nullopt;
  return hour;
}

std::vector<GivenHour> read_hours(Context& c, const Node& node, bool site_has_air) {
  std::vector<GivenHour> hours;
  const auto nodes = read_list(c.reader, node, "hours");
  if (!nodes) return hours;
  if (nodes->size() < fewest_hours || nodes->size() > most_hours) {
    c.reader.error(node.pointer,
                   {nodes->size() < fewest_hours ? "too-few-hours" : "too-many-hours",
                    fmt::format("the weather by the hour takes {} to {} times, not {}",
                                fewest_hours, most_hours, nodes->size()),
                    "one for each hour of the day of the pour, as a forecast has them"});
    return hours;
  }
  for (const Node& one : *nodes) {
    const auto hour = read_hour(c, one, site_has_air);
    if (!hour) continue;
    if (!hours.empty() && hour->time <= hours.back().time) {
      c.reader.error(one.pointer + "/time",
                     {"not-rising",
                      fmt::format("the hours must rise, but {} does not come after {}",
                                  show_time(hour->time), show_time(hours.back().time)),
                      "write them in the order of the day, each time once"});
      return hours;
    }
    hours.push_back(*hour);
  }
  return hours;
}

/// The hours, what one does not say taken from the site.
std::vector<HourWeather> filled(const std::vector<GivenHour>& hours, const Site& site) {
  std::vector<HourWeather> result;
  for (const GivenHour& hour : hours) {
    result.push_back({hour.time, hour.weather.air.value_or(site.air),
                      hour.weather.humidity.value_or(site.humidity),
                      hour.weather.wind.value_or(site.wind)});
  }
  return result;
}

/// The weather the plan counts with where only the hours give it: at the start, else at the warmest
/// hour.
HourWeather weather_to_plan(const std::vector<HourWeather>& hours,
                            const std::optional<StartDate>& date) {
  if (date && date->time) {
    return weather_at(hours, minutes(static_cast<double>(date->time->count())));
  }
  return *std::max_element(
      hours.begin(), hours.end(),
      [](const HourWeather& a, const HourWeather& b) { return a.air < b.air; });
}

bool any(const std::vector<GivenHour>& hours, bool (*has)(const Given&)) {
  return std::any_of(hours.begin(), hours.end(),
                     [&](const GivenHour& hour) { return has(hour.weather); });
}

/// What the site does not say: the hours' at the start, else the usual.
void assume_weather(Context& c, const Given& given, const std::vector<GivenHour>& hours,
                    Temperature usual_air, const std::optional<StartDate>& date, Site& site) {
  const auto assume = [&](int weight, const char* key, std::string value, std::string reason) {
    c.reader.assume(weight, std::string("/site/") + key, std::move(value), std::move(reason));
  };
  site.air = given.air.value_or(usual_air);
  site.humidity = given.humidity.value_or(usual_humidity);
  site.wind = given.wind.value_or(Speed{});
  site.hours = filled(hours, site);
  std::string from;
  if (!hours.empty()) {
    const HourWeather now = weather_to_plan(site.hours, date);
    from = fmt::format("from site.hours at {}{}", show_time(now.time),
                       date && date->time ? "" : ", the warmest, for the job names no start");
    site.air = given.air.value_or(now.air);
    site.humidity = given.humidity.value_or(now.humidity);
    site.wind = given.wind.value_or(now.wind);
  }
  const bool humid = any(hours, [](const Given& hour) { return hour.humidity.has_value(); });
  const bool windy = any(hours, [](const Given& hour) { return hour.wind.has_value(); });
  site.humidity_assumed =
      !given.humidity &&
      (hours.empty() || any(hours, [](const Given& hour) { return !hour.humidity; }));
  if (!given.air) {
    assume(weight_air, "air", show(site.air, c.units),
           !from.empty() ? from
                         : "the temperature at which the label's times hold; look at the forecast "
                           "(assumption)");
  }
  if (!given.humidity) {
    assume(
        weight_humidity, "humidity", show_percent(site.humidity),
        (humid ? from : "usual air (assumption)") +
            (site.humidity_assumed ? "; the top's drying is judged by drier air, for nobody knows"
                                   : ""));
  }
  if (!given.wind) {
    assume(weight_wind, "wind", show(site.wind, c.units),
           windy ? from : "still air, as indoors (assumption)");
  }
}

std::vector<Protection> read_protection(Context& c, const Node& node) {
  std::vector<Protection> found;
  const auto kinds = read_list(c.reader, node, "words");
  if (!kinds) return found;
  for (const Node& one : *kinds) {
    const auto kind = read_choice<Protection>(c.reader, one,
                                              {{"windbreak", Protection::windbreak},
                                               {"shade", Protection::shade},
                                               {"fog", Protection::fog},
                                               {"sheet", Protection::sheet},
                                               {"film", Protection::film},
                                               {"tent", Protection::tent},
                                               {"blanket", Protection::blanket},
                                               {"heater", Protection::heater}});
    if (kind && std::find(found.begin(), found.end(), *kind) == found.end()) {
      found.push_back(*kind);
    }
  }
  return found;
}

}  // namespace

void read_weather(Context& c, Object& o, Temperature usual_air,
                  const std::optional<StartDate>& date, Site& site) {
  const bool has_air = static_cast<bool>(o.find("air"));
  const Given given = read_given(o);
  const std::vector<GivenHour> hours = read_hours(c, o.find("hours"), has_air);
  assume_weather(c, given, hours, usual_air, date, site);
  const Node sun = o.find("sun");
  if (!sun) {
    c.reader.assume(weight_sun, "/site/sun", "shade", "on the fresh top (assumption)");
  }
  site.sun = read_choice<bool>(c.reader, sun, {{"sun", true}, {"shade", false}}).value_or(false);
  site.night = o.quantity("night", any_temperature);
  if (const auto chance = o.quantity("rain", any_percent)) site.rain = chance->fraction;
  site.protection = read_protection(c, o.find("protection"));
}

}  // namespace strikeoff
