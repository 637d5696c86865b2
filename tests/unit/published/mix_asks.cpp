// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cstddef>
#include <numeric>

#include "mix/mix.h"
#include "strikeoff/catalogue.h"
#include "strikeoff/geometry.h"
#include "support/pour_job.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

/// Absolute volume: what so much of a material of this density fills, by the program's product of
/// volume and density.
Volume volume_of(Mass mass, Density density) {
  return cubic_feet(1) * (mass / (cubic_feet(1) * density));
}

/// The manuals' water: 62.4 lb/ft3.
Density of_gravity(double gravity) {
  return written<Density>("62.4 lb/ft3") * gravity;
}

MixPlan mix_of(Volume concrete, double waste, Volume yield) {
  Job job = a_pour_job();
  job.waste = waste;
  job.mix.yield = yield;
  return plan_mix(job, concrete);
}

Volume with_waste(Volume concrete, double waste) {
  const MixPlan plan = mix_of(concrete, waste, litres(10));
  return plan.concrete + plan.waste;
}

Answers absolute_volume(const PublishedCase& one) {
  return {{"V", volume_of(one.get<Mass>("W"), of_gravity(one.number("G")))}};
}

Answers rest_is_sand(const PublishedCase& one) {
  const Volume sand = cubic_yards(1) - one.get<Volume>("cement") - one.get<Volume>("water") -
                      one.get<Volume>("coarse") - one.get<Volume>("air");
  return {{"V", sand}, {"W", sand * of_gravity(one.number("G"))}};
}

Answers ordered_with_waste(const PublishedCase& one) {
  const MixPlan plan =
      mix_of(one.get<Volume>("V"), one.fraction("waste"), cubic_yards(1 / 6.49));  // sacks, AV-06
  return {{"V_order", plan.concrete + plan.waste}, {"sacks_up", double(plan.bags)}};
}

Answers wall_and_footing(const PublishedCase& one) {
  const Length top = one.get<Length>("b1"), foot = one.get<Length>("b2");
  const Length height = one.get<Length>("h"), along = one.get<Length>("L");
  const Polygon section = {{}, {foot, {}}, {top, height}, {{}, height}};
  const Rectangle footing = {{}, written<Length>("8.5 ft"), along};
  const Volume all = signed_area(section) * along + area(footing) * written<Length>("1.25 ft");
  return {{"V", all}, {"V_yd", all}, {"V_order", with_waste(all, 0.10)}};
}

Answers sacks(const PublishedCase& one) {
  const MixPlan plan = mix_of(one.get<Volume>("V"), 0, cubic_yards(1 / one.number("cement")));
  return {{"sacks", plan.bags_exact}, {"sacks_up", double(plan.bags)}};
}

Answers by_absolute_volumes(const PublishedCase& one) {
  const Volume water = volume_of(one.get<Mass>("water"), of_gravity(1));
  const Volume cement = volume_of(one.get<Mass>("cement"), of_gravity(3.15));
  const Volume coarse = volume_of(one.get<Mass>("CA"), of_gravity(2.68));
  const Volume all = water + cement + coarse + one.get<Volume>("air");
  return {{"V_water", water},
          {"V_cement", cement},
          {"V_CA", coarse},
          {"V_sum", all},
          {"V_sand", cubic_yards(1) - all}};
}

Answers yield_of_batch(const PublishedCase& one) {
  const std::vector<double> parts = one.numbers("batch");
  const Mass batch = pounds(std::accumulate(parts.begin(), parts.end(), 0.0));
  return {{"yield", volume_of(batch, one.get<Density>("unit_weight"))}};
}

Answers relative_yield(const PublishedCase& one) {
  const Mass all = one.get<Mass>("cement") + one.get<Mass>("coarse") + one.get<Mass>("fine") +
                   one.get<Mass>("water");
  const Volume made = volume_of(all, one.get<Density>("D"));
  return {{"M", all}, {"Y", made}, {"Y_yd", made}, {"Ry", made / one.get<Volume>("Yd")}};
}

Answers gallon_of_water(const PublishedCase& one) {
  return {{"gal", gallons(1) * one.get<Density>("w")}};
}

Answers water_density_in_si(const PublishedCase& one) {
  return {{"rho", one.get<Density>("w")}};
}

Answers dose_in_si(const PublishedCase& one) {
  const Volume dose = written<Volume>("1 fl oz") * one.number("dose");
  const double per_100_kg = written<Mass>("100 kg") / written<Mass>("100 lb");
  return {{"dose_SI", in_litres(dose) * 1000 * per_100_kg}};
}

/// Bags of a cubic yard at the published yield.
Answers bags_of_yard(const PublishedCase& one) {
  const double yield = one.expected("yield");
  return {{"bags_per_yd3", mix_of(cubic_yards(1), 0, cubic_feet(yield)).bags_exact}};
}

/// The mix's mass balance, asked the other way round: fresh density x yield is the mass of a bag
/// with its water, whatever the yield.
Answers yield_by_density(const PublishedCase& one) {
  Job job = a_pour_job();
  job.mix.bag = one.get<Mass>("bag");
  job.mix.water_use = one.get<Volume>("water");
  const MixPlan plan = plan_mix(job, cubic_feet(1));
  return {{"yield", volume_of(plan.yield * plan.fresh_density, one.get<Density>("density"))}};
}

Answers bags_of_slab(const PublishedCase& one) {
  const std::vector<double> sides = one.numbers("slab");
  const Rectangle top = {{}, Length::inches(sides.at(0)), Length::inches(sides.at(1))};
  const Volume concrete = area(top) * Length::inches(sides.at(2));
  const auto bags = [&](double yield) {
    return double(mix_of(concrete, one.fraction("waste"), cubic_feet(yield)).bags);
  };
  return {{"V", concrete},
          {"V_order", with_waste(concrete, one.fraction("waste"))},
          {"bags80", bags(0.60)},    // BG-01
          {"bags60", bags(0.45)},    // BG-02
          {"bags50", bags(0.375)}};  // BG-04
}

Answers unit_weight(const PublishedCase&) {
  return {{"yd3", (cubic_yards(1) * written<Density>("150 pcf")) / pounds(1)}};
}

/// Coarse mixes of the catalogue say that they must not be laid thinner.
Answers least_thickness(const PublishedCase&) {
  Length us, metric;
  for (const CatalogueEntry<Mix>& mix : shipped_catalogue().mixes) {
    if (mix.item.id == "coarse-75lb") us = mix.item.least_thickness.value();
    if (mix.item.id == "coarse-30kg") metric = mix.item.least_thickness.value();
  }
  return {{"t", us}, {"t_mm", metric}};
}

Answers take_off(const PublishedCase& one) {
  Volume sum;
  const std::string items = one.text("items");
  for (std::size_t at = 0; at < items.size();) {
    const std::size_t end = std::min(items.find(';', at), items.size());
    Volume item = cubic_feet(1);
    for (std::size_t side = at; side < end;) {
      const std::size_t next = std::min(items.find('x', side), end);
      item = item * std::stod(items.substr(side, next - side));
      side = next + 1;
    }
    sum += item;
    at = end + 1;
  }
  return {{"sum", sum}, {"with_waste", with_waste(sum, 0.10)}, {"yd3", with_waste(sum, 0.10)}};
}

Answers usual_waste(const PublishedCase&) {
  return {{"small", Job{}.waste * 100}};
}

}  // namespace

Asks mix_asks() {
  return {{"AV-01", absolute_volume},
          {"AV-02", absolute_volume},
          {"AV-03", absolute_volume},
          {"AV-04", rest_is_sand},
          {"AV-07", ordered_with_waste},
          {"AV-08", wall_and_footing},
          {"AV-09", sacks},
          {"AV-12", by_absolute_volumes},
          {"AV-14", yield_of_batch},
          {"YD-01", relative_yield},
          {"WT-01", gallon_of_water},
          {"WT-02", absolute_volume},
          {"WT-03", water_density_in_si},
          {"AD-01", dose_in_si},
          {"BG-01", bags_of_yard},
          {"BG-02", bags_of_yard},
          {"BG-03", bags_of_yard},
          {"BG-04", bags_of_yard},
          {"BG-05", bags_of_yard},
          {"BG-06", yield_by_density},
          {"BG-07", yield_by_density},
          {"BG-08", yield_by_density},
          {"BG-09", bags_of_slab},
          {"BG-R1", unit_weight},
          {"BG-R2", least_thickness},
          {"WS-01", take_off},
          {"WS-R1", usual_waste}};
}

}  // namespace strikeoff::test
