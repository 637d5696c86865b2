// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Percent> any_percent{{0}, {1}, "0 % and 100 %"};
constexpr Range<Speed> any_wind{metres_per_second(0), metres_per_second(50),
                                "0 m/s and 50 m/s (112 mph)"};
constexpr Range<Pressure> base_load{kilopascals(0.01), megapascals(10),
                                    "0.01 kPa (0.2 psf) and 10 MPa"};
constexpr Range<Mass> support_load{kilograms(1), kilograms(1e5),
                                   "1 kg (2.2 lb) and 100 t (220000 lb)"};
constexpr Range<Mass> lift{kilograms(0.1), kilograms(1000), "0.1 kg and 1000 kg (2200 lb)"};
constexpr Temperature tap_water = Temperature::celsius(15);  // assumption

/// A number of `digits` digits at the start of `text`, which it shortens.
std::optional<int> take_digits(std::string_view& text, std::size_t digits) {
  if (text.size() < digits) return std::nullopt;
  int value = 0;
  for (const char c : text.substr(0, digits)) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  text.remove_prefix(digits);
  return value;
}

bool take(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  return true;
}

/// "08:30" or "08:30:00", to the end.
std::optional<std::chrono::minutes> clock_time(std::string_view text) {
  const auto h = take_digits(text, 2);
  const bool colon = take(text, ":");
  const auto m = take_digits(text, 2);
  (void)take(text, ":00");
  if (!h || !colon || !m || *h > 23 || *m > 59 || !text.empty()) return std::nullopt;
  return std::chrono::minutes(*h * 60 + *m);
}

/// ISO 8601: "2026-05-09", "2026-05-09T08:30"; local, so no zone.
std::optional<StartDate> start_date(std::string_view text) {
  const auto y = take_digits(text, 4);
  const bool first = take(text, "-");
  const auto m = take_digits(text, 2);
  const bool second = take(text, "-");
  const auto d = take_digits(text, 2);
  if (!y || !first || !m || !second || !d) return std::nullopt;
  StartDate date{std::chrono::year{*y} / *m / *d, std::nullopt};
  if (!date.day.ok()) return std::nullopt;
  if (text.empty()) return date;
  if (!take(text, "T") && !take(text, " ")) return std::nullopt;
  date.time = clock_time(text);
  if (!date.time) return std::nullopt;
  return date;
}

void read_hours(Context& c, const Node& node) {
  const auto hours = read_list(c.reader, node, "hours");
  if (!hours) return;
  for (const Node& hour : *hours) {
    Object o(c.reader, hour, "an hour");
    const Node time = o.need("time", R"({"time": "14:00", "air": "24 C"})");
    const auto text = read_text(c.reader, time);
    if (text && !clock_time(*text)) {
      c.reader.error(time.pointer, {"not-a-time", in_quotes(*text) + " is not a time of day",
                                    "write hours and minutes: \"14:00\""});
    }
    (void)o.quantity("air", any_temperature);
    (void)o.quantity("humidity", any_percent);
    (void)o.quantity("wind", any_wind);
    o.finish();
  }
  c.reader.not_planned(node, "weather by the hour is not planned yet: one air temperature counts");
}

void read_weather(Context& c, Object& o, Site& site) {
  const Node humidity = o.find("humidity"), wind = o.find("wind"), sun = o.find("sun");
  if (const auto given = read_quantity(c.reader, humidity, any_percent)) {
    site.humidity = given->fraction;
  }
  site.wind = read_quantity(c.reader, wind, any_wind).value_or(Speed{});
  site.sun = read_choice<bool>(c.reader, sun, {{"sun", true}, {"shade", false}}).value_or(false);
  if (humidity) c.reader.not_planned(humidity, "drying in dry air is not planned yet");
  if (wind) c.reader.not_planned(wind, "drying in the wind is not planned yet");
  if (sun) c.reader.not_planned(sun, "the sun on the slab is not planned yet");
}

bool is_auto(const Node& node) {
  return node && *node.json == "auto";
}

/// Of one bag's water, which it is a part of.
Mass read_ice(Context& c, const Node& node, const Mix& mix) {
  constexpr Range<Mass> any_ice{kilograms(0), kilograms(100), "0 kg and 100 kg (220 lb)"};
  const Mass ice = read_quantity(c.reader, node, any_ice).value_or(Mass{});
  // The water in use is chosen later, and never less than this.
  const auto water = mix.water_use ? mix.water_use : mix.water_least;
  if (water && ice.si() > in_litres(*water)) {
    c.reader.error(node.pointer, {"too-much-ice",
                                  fmt::format("the ice of one bag, {}, is more than its water, {}",
                                              show(ice, c.units), show_water(*water, c.units)),
                                  "give the ice for one bag; it is a part of the bag's water"});
  }
  return ice;
}

void read_unplanned(Context& c, Object& o) {
  const Node protection = o.find("protection");
  if (const auto kinds = read_list(c.reader, protection, "texts")) {
    for (const Node& kind : *kinds) (void)read_text(c.reader, kind);
    c.reader.not_planned(protection, "protection from the weather is not planned yet");
  }
  read_hours(c, o.find("hours"));
}

}  // namespace

Site read_site(Context& c, const Node& node, const Mix& mix, Open& open) {
  Object o(c.reader, node, "the site");
  const auto temperature = [&](const char* key, Temperature usual, int weight, const char* reason) {
    const Node value = o.find(key);
    if (!value) {
      c.reader.assume(weight, std::string("/site/") + key, show(usual, c.units), reason);
    }
    return read_quantity(c.reader, value, any_temperature).value_or(usual);
  };
  Site site;
  site.air = temperature("air", mix.at, weight_air,
                         "the temperature at which the label's times hold; look at the forecast "
                         "(assumption)");
  site.bag_temperature = temperature("bag_temperature", site.air, weight_bag_temperature,
                                     "as the air, when the bags lie there overnight (assumption)");
  open.water_temperature = is_auto(o.find("water_temperature"));
  site.water_temperature =
      open.water_temperature ? tap_water
                             : temperature("water_temperature", tap_water, weight_water_temperature,
                                           "cold water from the mains (assumption)");
  const Node ice = o.find("ice");
  open.ice = is_auto(ice);
  if (ice && !open.ice) site.ice = read_ice(c, ice, mix);
  read_weather(c, o, site);
  read_unplanned(c, o);
  o.finish();
  return site;
}

Limits read_limits(Context& c, const Node& node) {
  Object o(c.reader, node, "the limits");
  Limits limits;
  limits.base_load = o.quantity("base_load", base_load);
  limits.support_load = o.quantity("support_load", support_load);
  limits.lift = o.quantity("lift", lift);
  const Node margin = o.find("margin");
  if (!margin) {
    c.reader.assume(weight_margin, "/limits/margin", show(Duration{}),
                    "time to spare at every fresh edge, beyond the usable share (assumption)");
  }
  limits.margin = read_quantity(c.reader, margin, short_time).value_or(Duration{});
  o.finish();
  return limits;
}

std::optional<StartDate> read_date(Reader& reader, const Node& node) {
  const auto text = read_text(reader, node);
  if (!text) return std::nullopt;
  const auto date = start_date(*text);
  if (!date) {
    reader.error(node.pointer,
                 {"not-a-date", in_quotes(*text) + " is not a date, with or without a time",
                  "write year-month-day, and if you like the start time: "
                  "\"2026-05-09\" or \"2026-05-09T08:30\""});
  }
  return date;
}

}  // namespace strikeoff
