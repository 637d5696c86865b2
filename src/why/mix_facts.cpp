// SPDX-License-Identifier: MIT
#include "why/fact_units.h"
#include "why/facts.h"

namespace strikeoff {
std::span<const JobFact> mix_facts() {
  static const JobFact facts[] = {
      {"/mix/bag", "kg", [](const Job& job, Indices) { return plain(job.mix.bag); }},
      {"/mix/yield", "L", [](const Job& job, Indices) { return plain(job.mix.yield); }},
      {"/mix/yield_water", "L", [](const Job& job, Indices) { return plain(job.mix.yield_water); }},
      {"/mix/water/least", "L", [](const Job& job, Indices) { return plain(job.mix.water_least); }},
      {"/mix/water/most", "L", [](const Job& job, Indices) { return plain(job.mix.water_most); }},
      {"/mix/water/use", "L", [](const Job& job, Indices) { return plain(job.mix.water_use); }},
      {"/mix/working_time", "min",
       [](const Job& job, Indices) { return plain(job.mix.working_time); }},
      {"/mix/at", "C", [](const Job& job, Indices) { return plain(job.mix.at); }},
      {"/mix/activation_energy", "kJ/mol",
       [](const Job& job, Indices) { return plain(job.mix.activation_energy); }},
      {"/mix/final_set", "min", [](const Job& job, Indices) { return plain(job.mix.final_set); }},
      {"/mix/strip_after", "min",
       [](const Job& job, Indices) { return plain(job.mix.strip_after); }},
      {"/mix/sand_after", "min", [](const Job& job, Indices) { return plain(job.mix.sand_after); }},
      {"/mix/seal_after", "min", [](const Job& job, Indices) { return plain(job.mix.seal_after); }},
      {"/mix/full_service", "min",
       [](const Job& job, Indices) { return plain(job.mix.full_service); }},
      {"/mix/density", "kg/m3", [](const Job& job, Indices) { return plain(job.mix.density); }},
      {"/mix/aggregate", "mm", [](const Job& job, Indices) { return plain(job.mix.aggregate); }},
      {"/mix/least_thickness", "mm",
       [](const Job& job, Indices) { return plain(job.mix.least_thickness); }},
      {"/mix/binder", "", [](const Job& job, Indices) { return plain(job.mix.binder); }},
      {"/mix/price", "money", [](const Job& job, Indices) { return plain(job.mix.price); }},
      {"/mix/strength/*/0", "min",
       [](const Job& job, Indices at) { return plain(job.mix.strength[at[0]].age); }},
      {"/mix/strength/*/1", "MPa",
       [](const Job& job, Indices at) { return in_megapascals(job.mix.strength[at[0]].strength); }},
      {"/mix/price_breaks/*/from", "",
       [](const Job& job, Indices at) { return plain(job.mix.price_breaks[at[0]].from); }},
      {"/mix/price_breaks/*/price", "money",
       [](const Job& job, Indices at) { return plain(job.mix.price_breaks[at[0]].price); }},
      {"/additives/*/per_bag", "",
       [](const Job& job, Indices at) { return plain(job.additives[at[0]].per_bag); }},
      {"/additives/*/step", "",
       [](const Job& job, Indices at) { return plain(job.additives[at[0]].step); }},
      {"/additives/*/most", "",
       [](const Job& job, Indices at) { return plain(job.additives[at[0]].most); }},
      {"/additives/*/extends", "min",
       [](const Job& job, Indices at) { return plain(job.additives[at[0]].extends); }},
      {"/additives/*/price", "money",
       [](const Job& job, Indices at) { return plain(job.additives[at[0]].price); }},
      {"/additives/*/per_bag/percent", "",
       [](const Job& job, Indices at) { return plain(job.additives[at[0]].binder_percent); }},
      {"/additives/*/dose_size/kg", "kg",
       [](const Job& job, Indices at) {
         const Mass* const mass = std::get_if<Mass>(&job.additives[at[0]].dose_size);
         return mass ? plain(*mass) : not_given;
       }},
      {"/additives/*/dose_size/l", "L",
       [](const Job& job, Indices at) {
         const Volume* const volume = std::get_if<Volume>(&job.additives[at[0]].dose_size);
         return volume ? plain(*volume) : not_given;
       }},
      {"/additives/*/kind/plasticizer", "",
       [](const Job& job, Indices at) {
         return job.additives[at[0]].kind == AdditiveKind::plasticizer ? 1.0 : 0.0;
       }},
      {"/additives/*/kind/retarder", "",
       [](const Job& job, Indices at) {
         return job.additives[at[0]].kind == AdditiveKind::retarder ? 1.0 : 0.0;
       }},
  };
  return facts;
}

}  // namespace strikeoff
