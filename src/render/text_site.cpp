// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "core/weather.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"
#include "site/wetting.h"

namespace strikeoff::text {
namespace {

std::string drying(const SitePlan& site, Units units) {
  const std::string air =
      fmt::format("air of {}, {}{} humidity, wind {}, a mix of {}{}", show(site.air, units),
                  site.humidity_assumed ? "perhaps only " : "", show_percent(site.humidity),
                  show(site.wind, units), show(site.concrete, units),
                  site.worst_at ? ", at " + show_time(*site.worst_at) : "");
  if (!site.skin) return "The air takes no water from the fresh top: " + air + ".";
  std::string text = fmt::format(
      "The fresh top loses up to about {} of water, in {}. That is an estimate: {} to {}. A bare "
      "edge skins over in about {}.",
      show(site.evaporation, units), air, show(site.evaporation_least, units),
      show(site.evaporation_most, units), show_at_most(*site.skin));
  if (site.evaporation_warmed) {
    text += fmt::format(" Once it is as warm as the air it is {}.",
                        show(*site.evaporation_warmed, units));
  }
  return text;
}

/// Only where the mix is near it, or colder.
std::string dew(const SitePlan& site, Units units) {
  constexpr double near = 3;  // K
  if (site.concrete.in_c() - site.dew_point.in_c() > near) return "";
  return fmt::format("Dew point: {}. On a mix or a slab colder than that water gathers.",
                     show(site.dew_point, units));
}

std::string wetting(const Wetting& wetting) {
  return fmt::format("{} every {}", wetting.cover, show_at_most(*wetting.every));
}

std::string cure(const SitePlan& site, Units units) {
  std::vector<std::string> parts;
  for (const Wetting& one : site.wettings) {
    if (one.every) parts.push_back(wetting(one));
  }
  const bool longer = std::any_of(site.wettings.begin(), site.wettings.end(), [](const auto& one) {
    return one.every && *one.every > looked_at_every;
  });
  if (longer) parts.push_back("but look at it once a day");
  const std::string how =
      parts.empty() ? "it stays wet by itself" : "wet it again: " + joined(parts, "; ");
  return fmt::format("While it cures, {}, {}. It takes about {} of water under a {}: {}.",
                     show(site.wet_cure), how, show_roughly(site.cure_water, units),
                     site.cure_cover, show_buckets(site.cure_buckets, site.bucket, units));
}

Text hours_table(const SitePlan& site, Units units) {
  Table table({{"Begun at", Align::right},
               {"Air", Align::right},
               {"Humidity", Align::right},
               {"Wind", Align::right},
               {"Dries at worst", Align::right},
               {"Remarks"}});
  for (const HourPlan& hour : site.hours) {
    const bool best = site.best_start == hour.weather.time;
    table.add({show_time(hour.weather.time), show(hour.weather.air, units),
               show_percent(hour.weather.humidity), show(hour.weather.wind, units),
               hour.worst ? show(*hour.worst, units) : "-", best ? "best" : hour.against});
  }
  return placed(table);
}

std::string start(const SitePlan& site) {
  if (!site.best_start) return "None of these hours is good to begin.";
  return fmt::format("Best begun at {}: the fresh top dries least then.",
                     show_time(*site.best_start));
}

}  // namespace

Text air_and_water(const Plan& plan) {
  const SitePlan& site = plan.site;
  if (plan.batches.empty()) return "";
  Text result = heading("AIR AND WATER") + paragraph("  ", drying(site, plan.units));
  if (const std::string text = dew(site, plan.units); !text.empty()) {
    result += paragraph("  ", text);
  }
  result += paragraph("  ", cure(site, plan.units));
  if (site.hours.empty()) return result;
  return result + "\n" + paragraph("  ", start(site)) + hours_table(site, plan.units);
}

}  // namespace strikeoff::text
