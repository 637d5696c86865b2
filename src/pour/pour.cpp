// SPDX-License-Identifier: MIT
#include "pour/pour.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "mix/mix.h"
#include "pour/crew.h"
#include "pour/retarder.h"
#include "pour/sentences.h"
#include "pour/working_time.h"
#include "pour/zones.h"

namespace strikeoff {
namespace {

Temperature mix_temperature(const Job& job, const MixPlan& mix) {
  return fresh_mix_temperature(job.mix.bag, job.site.bag_temperature,
                               mix.water_per_bag * water_density, job.site.water_temperature);
}

/// What is the same in every batch of the pour.
Batch one_batch(const Job& job, const MixPlan& mix, double retarder, int batches) {
  Batch batch;
  batch.bags = job.crew.bags_per_batch;
  batch.dry = job.mix.bag * batch.bags;
  batch.water = mix.water_per_bag * batch.bags;
  batch.water_mass = batch.water * water_density;
  batch.volume = mix.yield * batch.bags;
  batch.zone = mix.concrete / batches;
  if (job.crew.bucket) {
    const BucketMark mark = bucket_mark(*job.crew.bucket, batch.water);
    batch.bucket_mark = mark.depth;
    batch.bucket_fills = mark.fills;
  }
  const std::vector<double> doses = doses_per_bag(job, retarder);
  for (std::size_t i = 0; i < doses.size(); ++i) {
    const Additive& additive = job.additives[i];
    const double in_batch = doses[i] * batch.bags;
    batch.doses.push_back(
        {additive.name, in_batch, amount_of(in_batch, dose_size(additive, job.mix))});
  }
  return batch;
}

/// The timetable: contact_i = (i - 1) x takt, so one batch is placed every takt, a lead after its
/// contact. Among identical batches placed in this order no timetable has a shorter worst wait.
std::vector<Batch> timetable(const Batch& same, const Pace& pace, int units, const Times& times,
                             ZonePlan& zones) {
  std::vector<Batch> batches(zones.zones.size(), same);
  for (std::size_t i = 0; i < batches.size(); ++i) {
    Batch& batch = batches[i];
    batch.number = static_cast<int>(i) + 1;
    batch.mixer = static_cast<int>(i) % units + 1;
    batch.contact = pace.takt * static_cast<double>(i);
    batch.place_start = batch.contact + times.mix.usual + times.discharge.usual + times.carry.usual;
    batch.place_end = batch.contact + pace.lead;
    batch.neighbours = std::move(zones.neighbours[i]);
    batch.zones = std::move(zones.zones[i]);
    batch.front = zones.fronts[i];
    batch.advance = zones.advances[i];
    if (!batch.neighbours.empty() && batch.neighbours.back() > batch.number) {
      batch.edge_wait = edge_wait(batch.neighbours.back() - batch.number, pace);
    }
  }
  return batches;
}

/// Mixers that can run at once: each takes a person who mixes.
int mixing_units(const Crew& crew) {
  return std::max(1, std::min(crew.mixers, holders(crew.people, Role::mix)));
}

/// Working time, usable time, margin and whether the pour works with this dose.
void judge(const Job& job, const Pace& pace, const Demand& demand, double dose, PourPlan& plan) {
  if (!job.mix.working_time) return;
  plan.working_time = retarded_by_all(job, *job.mix.working_time, dose) * plan.temperature_factor;
  plan.usable = *plan.working_time * job.crew.usable;
  // Without a beat nothing waits a known time.
  if (!pace.missing.empty()) return;
  plan.margin = *plan.usable - demand.wait;
  plan.feasible = covers(*plan.usable, demand);
}

}  // namespace

Pour plan_pour(const Job& job, const std::vector<SlabPlan>& slabs, const MixPlan& mix) {
  Pour pour;
  PourPlan& plan = pour.plan;
  const Pace beat = pace(job.crew);
  plan.batches = batch_count(mix, job.crew.bags_per_batch);
  plan.takt = beat.takt;
  plan.bottleneck = beat.bottleneck;
  plan.takt_is_bound = beat.takt_is_bound;
  plan.lead = beat.lead;

  const Length strip =
      job.forms.strip_stock.empty() ? Length{} : job.forms.strip_stock.front().thickness;
  ZonePlan zones = cut_zones(job.slabs, slabs, plan.batches, strip);
  plan.gap = zones.gap;
  plan.wet_edge_max = zones.wet_edge_max;
  plan.joint_length = zones.joint_length;
  plan.sweeps = std::move(zones.sweeps);
  plan.joints = std::move(zones.joints);
  for (Joint& joint : plan.joints) joint.wait = edge_wait(joint.second - joint.first, beat);
  plan.edge_wait_max = edge_wait(plan.gap, beat);
  plan.end = beat.takt * (plan.batches - 1) + beat.lead;

  plan.mix_temperature = mix_temperature(job, mix);
  plan.temperature_factor =
      temperature_factor(plan.mix_temperature, job.mix.at, job.mix.activation_energy);
  const Demand demand{plan.edge_wait_max, beat.lead, job.limits.margin};
  if (auto_retarder(job) && job.mix.working_time && beat.missing.empty()) {
    pour.retarder = least_dose(job, *job.mix.working_time, plan.temperature_factor, demand);
  }
  plan.retarder_per_bag = retarder_doses(job, pour.retarder);
  judge(job, beat, demand, pour.retarder, plan);

  plan.retarder_reason = retarder_reason(job, beat, job.mix.working_time, plan.temperature_factor,
                                         demand, pour.retarder);
  plan.water_rule = water_rule(beat, job.crew.times, plan.batches);
  plan.smallest_crew = smallest_crew(job, plan.gap, plan.usable);
  pour.batches = timetable(one_batch(job, mix, pour.retarder, plan.batches), beat,
                           mixing_units(job.crew), job.crew.times, zones);
  return pour;
}

}  // namespace strikeoff
