// SPDX-License-Identifier: MIT
#include "mix/mix.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

/// The water the label's yield holds at; `fallback` when the label gives no range either.
Volume yield_water(const Mix& mix, Volume fallback) {
  if (mix.yield_water) return *mix.yield_water;
  if (mix.water_least && mix.water_most) return (*mix.water_least + *mix.water_most) / 2;
  return fallback;
}

}  // namespace

int whole_up(double value) {
  return static_cast<int>(std::ceil(value - 1e-9 * std::abs(value)));
}

Volume water_per_bag(const Job& job) {
  const Mix& mix = job.mix;
  if (mix.water_use) return *mix.water_use;
  // A plasticizer is bought to make the mix flow on less water.
  const bool plasticized =
      std::any_of(job.additives.begin(), job.additives.end(), [](const Additive& additive) {
        return additive.kind == AdditiveKind::plasticizer && additive.per_bag.value_or(0) > 0;
      });
  if (plasticized) return mix.water_least.value();
  return (mix.water_least.value() + mix.water_most.value()) / 2;
}

Volume yield_of_bag(const Mix& mix, Volume water) {
  // Without a range the label has one water only: `use`.
  const Volume reference = yield_water(mix, mix.water_use.value_or(water));
  return mix.yield + (water - reference);
}

MixPlan plan_mix(const Job& job, Volume concrete) {
  MixPlan plan;
  plan.name = job.mix.name;
  plan.concrete = concrete;
  plan.waste = concrete * job.waste;
  plan.water_per_bag = water_per_bag(job);
  plan.ice_per_bag = job.site.ice;
  if (!job.site.water_as_it_comes) plan.water_temperature = job.site.water_temperature;
  plan.yield = yield_of_bag(job.mix, plan.water_per_bag);
  plan.bags_exact = (plan.concrete + plan.waste) / plan.yield;
  const double mixed = batch_count(plan, job.crew.bags_per_batch) * job.crew.bags_per_batch;
  plan.bags = whole_up(mixed);
  plan.spare_bags = job.spare_bags;
  plan.surplus = plan.yield * plan.bags - plan.concrete - plan.waste;
  plan.water_total = plan.water_per_bag * mixed;
  const Mass fresh = job.mix.bag + plan.water_per_bag * water_density;
  plan.fresh_density = job.mix.density.value_or(fresh / plan.yield);
  return plan;
}

int batch_count(const MixPlan& mix, double bags_per_batch) {
  // From the exact need and not from `bags`: with part bags those may cover another batch.
  return whole_up(whole_up(mix.bags_exact) / bags_per_batch);
}

}  // namespace strikeoff
