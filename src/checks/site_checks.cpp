// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <initializer_list>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "core/weather.h"
#include "site/site.h"

namespace strikeoff {
namespace {

bool is_protected(const Job& job, std::initializer_list<Protection> by) {
  const auto& named = job.site.protection;
  return std::find_first_of(named.begin(), named.end(), by.begin(), by.end()) != named.end();
}

// --- drying

/// "about 0.31 kg/m2/h, 0.19 to 0.43 as estimates go, in air of 30 %".
std::string rate_words(const SitePlan& site, Units units) {
  if (site.evaporation <= EvaporationRate{}) return "the air takes no water from it";
  std::string text =
      fmt::format("about {}, {} to {} as such estimates go", show(site.evaporation, units),
                  show(site.evaporation_least, units), show(site.evaporation_most, units));
  if (site.humidity_assumed) {
    text += fmt::format(", if the air is as dry as {}", show_percent(site.humidity));
  }
  if (site.evaporation_warmed > site.evaporation) {
    text +=
        fmt::format("; {} once it is as warm as the air", show(*site.evaporation_warmed, units));
  }
  return text;
}

/// Colder water, ice, or nothing that the mixing could do.
std::string colder_mix(const SitePlan& site, EvaporationRate limit, Units units) {
  if (!site.water_at_most) {
    return fmt::format("No water and ice bring it under {}.", show(limit, units));
  }
  const std::string ice =
      site.ice > Mass{} ? fmt::format(" and {} of crushed ice in each bag's", show(site.ice, units))
                        : "";
  return fmt::format("Mixing water at {}{} brings it under {}.",
                     show_at_most(*site.water_at_most, units), ice, show(limit, units));
}

std::string better_hour(const SitePlan& site, Units units) {
  if (!site.best_start) return "";
  const auto best = std::find_if(site.hours.begin(), site.hours.end(), [&](const HourPlan& hour) {
    return hour.weather.time == *site.best_start;
  });
  const EvaporationRate now = site.evaporation_warmed.value_or(site.evaporation);
  if (best == site.hours.end() || !best->worst || *best->worst >= now) return "";
  return fmt::format(" Begun at {} it is {} at worst.", show_time(*site.best_start),
                     show(*best->worst, units));
}

std::string drying_advice(const SitePlan& site, EvaporationRate limit, bool covered, Units units) {
  std::string text;
  if (site.skin) {
    text = fmt::format(
        "A bare edge skins over in about {}: lay a sheet on each zone as soon as "
        "it is struck off, and never sprinkle it to trowel it. ",
        show_at_most(*site.skin));
  }
  text += covered ? "Have the protection that the job names up before the first batch. "
                  : "Put up a windbreak, shade, fog or a tent, and name them in site.protection. ";
  text += colder_mix(site, limit, units) + better_hour(site, units);
  if (site.humidity_assumed) text += " Measure the humidity and give it as site.humidity.";
  return text;
}

Check evaporation(const Job& job, const Plan& plan) {
  const SitePlan& site = plan.site;
  const bool covered = is_protected(job, {Protection::windbreak, Protection::shade, Protection::fog,
                                          Protection::sheet, Protection::film, Protection::tent});
  const bool much = site.evaporation >= evaporation_stop;
  const EvaporationRate limit = much ? evaporation_stop : evaporation_caution;
  Check check;
  check.code = "evaporation";
  check.value = in_kilograms_per_m2_h(site.evaporation);
  check.limit = in_kilograms_per_m2_h(limit);
  check.unit = "kg/m2/h";
  check.basis = basis("evaporation-limit");
  const std::string rate = rate_words(site, job.units);
  if (site.evaporation < evaporation_caution) {
    check.title = "The fresh top dries slowly enough: " + rate;
    if (!site.evaporation_warmed || *site.evaporation_warmed < evaporation_caution) return check;
    check.level = Level::caution;
    check.title = "The fresh top dries fast once it warms: " + rate;
    check.advice =
        "Lay a sheet on each zone as soon as it is struck off, and again after trowelling."
        " Shade and a windbreak help.";
    return check;
  }
  check.level = much && !covered ? Level::stop : Level::caution;
  check.title = (much ? "The fresh top dries so fast that it cracks: "
                      : "The fresh top dries fast and may craze: ") +
                rate;
  check.advice = drying_advice(site, limit, covered, job.units);
  return check;
}

/// Of air whose humidity nobody gave only what would happen in usual air is said, never that it
/// does not.
std::optional<Check> condensation(const Job& job, const Plan& plan) {
  const SitePlan& site = plan.site;
  const bool wet = site.concrete < site.dew_point;
  if (site.humidity_assumed && !wet) return std::nullopt;
  Check check;
  check.code = "condensation";
  check.title = "No water from the air gathers on the fresh top";
  check.value = site.concrete.in_c();
  check.limit = site.dew_point.in_c();
  check.unit = "C";
  check.basis = basis("condensation-limit");
  if (!wet) return check;
  check.level = Level::caution;
  check.title = "Water from the air gathers on the fresh top";
  check.advice = fmt::format(
      "The mix is {} and air of this humidity leaves water on what is under {}: wait or wipe it "
      "off, do not trowel it in; warmer mixing water helps. Do not seal a slab that is so cold.",
      show(site.concrete, job.units), show(site.dew_point, job.units));
  return check;
}

// --- cold

/// 40 F: UFGS 03 30 00 and ACI 306R.
constexpr Temperature cold_air = Temperature::fahrenheit(40);
constexpr Temperature freezing = Temperature::celsius(0);
/// A night may be so much colder than the day (assumption).
constexpr double night_drop = 15;  // K

/// The coldest air that the job gives.
Temperature coldest_air(const Site& site) {
  Temperature coldest = site.night ? std::min(*site.night, site.air) : site.air;
  for (const HourWeather& hour : site.hours) coldest = std::min(coldest, hour.air);
  return coldest;
}

/// UFGS 03 30 00: at most 5 F (3 C) an hour and 50 F (28 C) a day.
const char* const keep_warm =
    "Cover it with blankets, or warm the room or a tent, until it is strong; keep the concrete at "
    "50 F (10 C) or warmer for the cure, then let it cool by no more than 5 F (3 C) an hour. No "
    "open flame: its fumes harm people and a fresh top.";

Check frost(const Job& job) {
  const Temperature coldest = coldest_air(job.site);
  const bool may_be_cold = coldest.in_c() - night_drop <= cold_air.in_c();
  Check check;
  check.code = "frost";
  check.title = "No cold night threatens the fresh slab";
  check.value = coldest.in_c();
  check.limit = (coldest <= freezing ? freezing : cold_air).in_c();
  check.unit = "C";
  check.basis = basis("frost-limit");
  if (coldest <= freezing) {
    const bool warmed =
        is_protected(job, {Protection::blanket, Protection::heater, Protection::tent});
    check.level = warmed ? Level::caution : Level::stop;
    check.title = fmt::format("Frost: air of {} ruins a fresh slab", show(coldest, job.units));
    check.advice = keep_warm;
    if (!warmed) check.advice += " Name what you will do in site.protection, or wait.";
  } else if (coldest < cold_air) {
    check.level = Level::caution;
    check.title =
        fmt::format("Cold: air of {} keeps a fresh slab from hardening", show(coldest, job.units));
    check.advice = keep_warm;
  } else if (!job.site.night && may_be_cold) {
    check.level = Level::caution;
    check.title = "How cold the night after gets is not known";
    check.advice = fmt::format(
        "Give the coldest air of that night as site.night; under {} the slab needs blankets or a "
        "warm room.",
        show(cold_air, job.units));
  } else if (!job.site.night) {
    check.title = "No cold night threatens the fresh slab, for the air is warm";
  }
  return check;
}

std::optional<Check> frozen_ground(const Job& job) {
  const bool on_ground = std::any_of(job.slabs.begin(), job.slabs.end(), [](const Slab& slab) {
    return slab.support == Support::ground;
  });
  if (!on_ground) return std::nullopt;
  const Temperature coldest = coldest_air(job.site);
  Check check;
  check.code = "frozen-ground";
  check.title = "The air does not freeze the ground under the slab";
  check.value = coldest.in_c();
  check.limit = freezing.in_c();
  check.unit = "C";
  check.basis = basis("frozen-ground-limit");
  if (coldest > freezing) return check;
  check.level = Level::caution;
  check.title = "The ground may be frozen";
  check.advice =
      "Never place on frozen ground, ice or snow: it sinks when they thaw. Thaw the ground and "
      "keep it covered until the pour.";
  return check;
}

// --- heat, sun and rain

/// In the sun a top gets hotter than the air and the mix (assumption).
constexpr Temperature hot_in_sun = Temperature::celsius(25);

Check hot_air(const Job& job, const Plan& plan) {
  const bool sun =
      job.site.sun && !is_protected(job, {Protection::shade, Protection::tent, Protection::sheet});
  const Temperature limit = sun ? hot_in_sun : hottest_start;
  Check check;
  check.code = "hot-air";
  check.title =
      sun ? "The sun is not too hot for the fresh top" : "The air is not too hot for the fresh top";
  check.value = plan.site.warmest.in_c();
  check.limit = limit.in_c();
  check.unit = "C";
  check.basis = basis("hot-air-limit");
  if (plan.site.warmest <= limit) return check;
  check.level = Level::caution;
  check.title =
      fmt::format("The air is {} while the top lies bare{}", show(plan.site.warmest, job.units),
                  sun ? ", and the sun is on it" : "");
  check.advice =
      sun ? "The sun makes the top hotter than the mix: it sets sooner and dries faster "
            "than the plan says. Put up shade and name it in site.protection."
          : "What lies in it gets as hot: keep bags, water, tools and base in the shade, "
            "damp the base, and pour in the early morning.";
  return check;
}

/// Chances of rain that call for a cover, and for another day without one: assumptions.
constexpr double some_rain = 0.20, much_rain = 0.50;

std::optional<Check> rain(const Job& job) {
  if (!job.site.rain) return std::nullopt;
  const double chance = *job.site.rain;
  const bool covered = is_protected(job, {Protection::sheet, Protection::film, Protection::tent});
  Check check;
  check.code = "rain";
  check.title = "Rain before the set is not likely";
  check.value = 100 * chance;
  check.limit = 100 * (chance < much_rain ? some_rain : much_rain);
  check.unit = "%";
  check.basis = basis("rain-limit");
  if (chance < some_rain) return check;
  check.level = chance >= much_rain && !covered ? Level::stop : Level::caution;
  check.title = "Rain may fall on the fresh top";
  check.advice =
      covered
          ? "Have the cover ready beside the slab, held clear of the fresh top; rain that "
            "falls on it is pulled off, never worked in."
          : "Rain washes out the top and makes it dust. Wait for a dry day, or have a tent or a "
            "sheet ready, held clear of the fresh top, and name it in site.protection.";
  return check;
}

}  // namespace

std::vector<Check> site_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks{evaporation(job, plan)};
  add(condensation(job, plan), checks);
  checks.push_back(frost(job));
  add(frozen_ground(job), checks);
  checks.push_back(hot_air(job, plan));
  add(rain(job), checks);
  return checks;
}

}  // namespace strikeoff
