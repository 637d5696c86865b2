// SPDX-License-Identifier: MIT
#include "why/fact_units.h"
#include "why/facts.h"

namespace strikeoff {
namespace {

/// kg or L, as the job has it.
double dose_of(const Job& job, std::size_t additive) {
  const auto& size = job.additives[additive].dose_size;
  if (const Mass* mass = std::get_if<Mass>(&size)) return plain(*mass);
  if (const Volume* volume = std::get_if<Volume>(&size)) return plain(*volume);
  return not_given;
}

}  // namespace

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
      {"/additives/*/dose_size", "kg or L",
       [](const Job& job, Indices at) { return dose_of(job, at[0]); }},
      {"/additives/*/kind", "",
       [](const Job& job, Indices at) { return static_cast<double>(job.additives[at[0]].kind); }},
  };
  return facts;
}

}  // namespace strikeoff
