// SPDX-License-Identifier: MIT
#include "core/weather.h"
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

double km_h(Speed speed) {
  return number(speed / kilometres_per_hour(1));
}

double rate(EvaporationRate evaporation) {
  return number(in_kilograms_per_m2_h(evaporation));
}

Json wetting(const Wetting& wetting) {
  Json result = {{"name", wetting.cover},
                 {"film_mm", number(wetting.film.in_mm())},
                 {"evaporation_kg_m2_h", rate(wetting.evaporation)}};
  if (wetting.every) result["every_min"] = number(in_minutes(*wetting.every));
  return result;
}

Json hour(const HourPlan& hour) {
  Json result = {{"time", show_time(hour.weather.time)},
                 {"air_c", number(hour.weather.air.in_c())},
                 {"humidity", number(hour.weather.humidity)},
                 {"wind_km_h", km_h(hour.weather.wind)},
                 {"concrete_c", number(hour.concrete.in_c())},
                 {"evaporation_kg_m2_h", rate(hour.evaporation)}};
  if (hour.worst) result["worst_kg_m2_h"] = rate(*hour.worst);
  if (!hour.against.empty()) result["against"] = hour.against;
  return result;
}

void add_fresh_top(const SitePlan& site, Json& result) {
  result["concrete_c"] = number(site.concrete.in_c());
  result["air_c"] = number(site.air.in_c());
  result["humidity"] = number(site.humidity);
  result["humidity_assumed"] = site.humidity_assumed;
  result["wind_km_h"] = km_h(site.wind);
  if (site.worst_at) result["worst_at"] = show_time(*site.worst_at);
  if (site.covered) result["covered_min"] = number(in_minutes(*site.covered));
  result["dew_point_c"] = number(site.dew_point.in_c());
  result["warmest_c"] = number(site.warmest.in_c());
  result["evaporation_kg_m2_h"] = rate(site.evaporation);
  result["evaporation_least_kg_m2_h"] = rate(site.evaporation_least);
  result["evaporation_most_kg_m2_h"] = rate(site.evaporation_most);
  result["evaporation_menzel_kg_m2_h"] = rate(site.evaporation_menzel);
  if (site.evaporation_warmed) {
    result["evaporation_warmed_kg_m2_h"] = rate(*site.evaporation_warmed);
  }
  if (site.skin) result["skin_min"] = number(in_minutes(*site.skin));
  if (site.water_at_most) {
    result["water_at_most_c"] = number(site.water_at_most->in_c());
    if (site.ice > Mass{}) result["ice_kg"] = number(site.ice.si());
  }
}

void add_cure(const SitePlan& site, Json& result) {
  result["cure_concrete_c"] = number(site.cure_concrete.in_c());
  result["cure_evaporation_kg_m2_h"] = rate(site.cure_evaporation);
  result["wettings"] = array(site.wettings, wetting);
  result["cure_cover"] = site.cure_cover;
  result["wet_cure_h"] = number(in_hours(site.wet_cure));
  result["cure_water_l"] = number(in_litres(site.cure_water));
  result["bucket_l"] = number(in_litres(site.bucket));
  result["cure_buckets"] = number(site.cure_buckets);
}

}  // namespace

Json site(const SitePlan& site) {
  Json result = Json::Object{};
  add_fresh_top(site, result);
  add_cure(site, result);
  result["hours"] = array(site.hours, hour);
  if (site.best_start) result["best_start"] = show_time(*site.best_start);
  return result;
}

}  // namespace strikeoff::json
