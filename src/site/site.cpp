// SPDX-License-Identifier: MIT
#include "site/site.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "site/day.h"
#include "site/evaporation.h"
#include "site/humidity.h"
#include "site/wet_cure.h"
#include "site/wetting.h"

namespace strikeoff {
namespace {

/// The heat of setting keeps a rapid mix so much warmer than the air while it is kept wet: an
/// estimate for a thin slab (assumption); about as much doubles the rate.
constexpr double rapid_warmth = 10;  // K

/// Below this the mix should not be brought: UFGS 03 30 00.
constexpr Temperature coldest_mix = Temperature::celsius(10);

/// When the top lies bare, after midnight: from the job's start until it is covered, else until the
/// hours end; without a start, all hours.
BareSpell spell_of(const Job& job, Temperature top, const std::optional<Duration>& covered) {
  const auto& hours = job.site.hours;
  if (hours.empty()) return bare_spell(job.site, top, {}, {});
  const auto clock = [](std::chrono::minutes time) {
    return minutes(static_cast<double>(time.count()));
  };
  const Duration last = clock(hours.back().time);
  if (!job.date || !job.date->time) {
    return bare_spell(job.site, top, clock(hours.front().time), last);
  }
  const Duration start = clock(*job.date->time);
  return bare_spell(job.site, top, start, std::max(start, covered ? start + *covered : last));
}

/// A top so cold dries this slowly in that weather: Uno's formula solved for the concrete.
Temperature top_that_dries(EvaporationRate rate, const SitePlan& site) {
  const double air = std::pow(std::max(site.air.in_c() + 18, 0.0), 2.5);
  const double wind = site.wind / kilometres_per_hour(1) + 4;
  const double vapour = in_kilograms_per_m2_h(rate) / (5e-6 * wind) + site.humidity * air;
  return Temperature::celsius(std::pow(vapour, 0.4) - 18);
}

void cool_the_water(const Job& job, const MixPlan& mix, SitePlan& site) {
  if (site.evaporation < evaporation_caution) return;
  const EvaporationRate limit =
      site.evaporation < evaporation_stop ? evaporation_caution : evaporation_stop;
  // A hair under the limit, which itself is too much.
  const Temperature top = top_that_dries(limit * (1 - 1e-6), site);
  if (top < coldest_mix) return;
  const Mass water = mix.water_per_bag * water_density;
  if (mix.ice_per_bag >= water) return;
  const auto chill = chill_to(top, job.mix.bag, job.site.bag_temperature, water, mix.ice_per_bag);
  if (!chill) return;
  site.water_at_most = chill->water;
  site.ice = chill->ice;
}

/// The crew's bucket to its brim, a cone's frustum; else one of the usual size (assumption).
Volume bucket_of(const Job& job) {
  if (!job.crew.bucket) return job.units == Units::us ? gallons(2.5) : litres(10);
  const double a = job.crew.bucket->bottom.in_m() / 2, b = job.crew.bucket->top.in_m() / 2;
  return Volume::from_si(std::numbers::pi / 3 * job.crew.bucket->height.in_m() *
                         (a * a + a * b + b * b));
}

void plan_cure(const Job& job, const std::vector<SlabPlan>& slabs, SitePlan& site) {
  const bool ordinary = is_ordinary(job.mix);
  site.cure_concrete = Temperature::celsius(site.air.in_c() + (ordinary ? 0 : rapid_warmth));
  site.cure_evaporation = evaporation_uno(site.cure_concrete, site.air, site.humidity, site.wind);
  site.wettings = wettings(site.cure_evaporation);
  // A week under cloth; an hour with the sheet alone, for it is sprinkled.
  const Wetting& cover = site.wettings[ordinary ? 3 : 2];
  site.cure_cover = cover.cover;
  site.wet_cure = wet_cure(job.mix);
  // Sprinkled where it lies bare.
  const Wetting& wetted = ordinary ? cover : site.wettings.front();
  site.wet_every = std::min(wetted.every.value_or(looked_at_every), looked_at_every);
  Area top;
  for (const SlabPlan& slab : slabs) top += slab.top_area;
  site.cure_water = cure_water(cover, top, site.wet_cure);
  site.bucket = bucket_of(job);
  site.cure_buckets = site.cure_water / site.bucket;
}

}  // namespace

SitePlan plan_site(const Job& job, const Plan& plan, const std::optional<Duration>& covered) {
  SitePlan site;
  site.concrete = plan.pour.mix_temperature;
  const BareSpell spell = spell_of(job, site.concrete, covered);
  site.air = spell.worst.air;
  site.humidity = judged_humidity(job.site, spell.worst.humidity);
  site.wind = spell.worst.wind;
  site.humidity_assumed = job.site.humidity_assumed;
  if (!job.site.hours.empty()) site.worst_at = spell.worst.time;
  site.covered = covered;
  site.dew_point = spell.dew_point;
  site.warmest = spell.warmest;
  site.evaporation = spell.evaporation;
  site.evaporation_least = spell.evaporation * (1 - evaporation_band);
  site.evaporation_most = spell.evaporation * (1 + evaporation_band);
  site.evaporation_menzel =
      evaporation_menzel(site.concrete, dew_point(site.air, site.humidity), site.wind);
  if (spell.warmest > site.concrete) site.evaporation_warmed = spell.warmed;
  site.skin = drying_time(edge_skin, spell.evaporation);
  cool_the_water(job, plan.mix, site);
  plan_cure(job, plan.slabs, site);
  site.hours = full_hours(job, plan.mix, covered);
  site.best_start = best_hour(site.hours);
  return site;
}

}  // namespace strikeoff
