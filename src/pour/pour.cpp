// SPDX-License-Identifier: MIT
#include "pour/pour.h"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "mix/mix.h"
#include "pour/crew.h"
#include "pour/joint_ends.h"
#include "pour/retarder.h"
#include "pour/sentences.h"
#include "pour/taper.h"
#include "pour/timetable.h"
#include "pour/zones.h"

namespace strikeoff {
namespace {

std::vector<BatchDose> doses_of_batch(const Job& job, double retarder) {
  std::vector<BatchDose> list;
  const std::vector<double> doses = doses_per_bag(job, retarder);
  for (std::size_t i = 0; i < doses.size(); ++i) {
    const Additive& additive = job.additives[i];
    const double in_batch = doses[i] * job.crew.bags_per_batch;
    list.push_back({additive.name, in_batch, amount_of(in_batch, dose_size(additive, job.mix))});
  }
  return list;
}

/// What is the same in every batch of the pour.
Batch one_batch(const Job& job, const MixPlan& mix, double retarder) {
  Batch batch;
  batch.bags = job.crew.bags_per_batch;
  batch.dry = job.mix.bag * batch.bags;
  batch.ice = mix.ice_per_bag * batch.bags;
  batch.water =
      mix.water_per_bag * batch.bags - Volume::from_si(batch.ice.si() / water_density.si());
  batch.water_mass = batch.water * water_density;
  batch.volume = mix.yield * batch.bags;
  if (job.crew.bucket) {
    const BucketMark mark = bucket_mark(*job.crew.bucket, batch.water);
    batch.bucket_mark = mark.depth;
    batch.bucket_fills = mark.fills;
  }
  batch.doses = doses_of_batch(job, retarder);
  return batch;
}

/// When each batch is where; without a complete crew there are no times, and all begin at 0.
Timetable times_of(const Crew& crew, const Pace& pace, int batches,
                   const std::vector<Touch>& touches) {
  if (pace.missing.empty()) return least_wait_timetable(crew, batches, touches);
  Timetable none;
  none.own_age = pace.lead;
  BatchTimes same;
  same.place_start = pace.lead - crew.times.place.usual;
  same.place_end = pace.lead;
  none.batches.assign(static_cast<std::size_t>(batches), same);
  return none;
}

/// Waits of the joints and what they make of the pour.
void use_times(const Timetable& table, PourPlan& plan) {
  for (Joint& joint : plan.joints) {
    joint.wait = table.batches[static_cast<std::size_t>(joint.second - 1)].place_end -
                 table.batches[static_cast<std::size_t>(joint.first - 1)].contact;
  }
  plan.edge_wait_max = table.worst_wait;
  plan.wait_is_least = table.is_exact;
  plan.chain = table.chain;
  if (plan.batches > 1) plan.takt = table.takt;
  for (const BatchTimes& batch : table.batches) plan.end = std::max(plan.end, batch.place_end);
}

/// What each batch fills of the concrete.
std::vector<Volume> zones_of(const ZonePlan& zones, Volume concrete) {
  Volume all;
  for (const Volume& volume : zones.volumes) all += volume;
  std::vector<Volume> filled;
  for (const Volume& volume : zones.volumes) filled.push_back(concrete * (volume / all));
  return filled;
}

std::vector<Batch> timed(const Batch& same, const Timetable& table,
                         const std::vector<Joint>& joints, const ZonePlan& zones,
                         Volume concrete) {
  std::vector<Batch> batches(zones.zones.size(), same);
  const std::vector<Volume> filled = zones_of(zones, concrete);
  for (std::size_t i = 0; i < batches.size(); ++i) {
    Batch& batch = batches[i];
    const BatchTimes& times = table.batches[i];
    batch.number = static_cast<int>(i) + 1;
    batch.mixer = times.mixer;
    batch.loading = times.load;
    batch.emptied = times.emptied;
    batch.contact = times.contact;
    batch.place_start = times.place_start;
    batch.place_end = times.place_end;
    batch.neighbours = zones.neighbours[i];
    batch.zones = zones.zones[i];
    batch.zone = filled[i];
    batch.front = zones.fronts[i];
    batch.advance = zones.advances[i];
  }
  for (const Joint& joint : joints) {
    Batch& first = batches[static_cast<std::size_t>(joint.first - 1)];
    first.edge_wait = std::max(first.edge_wait, joint.wait);
  }
  return batches;
}

/// Who has each batch in hand, and when.
std::vector<PersonWork> work_of_people(const Timetable& table) {
  std::vector<PersonWork> work;
  for (std::size_t i = 0; i < table.batches.size(); ++i) {
    const BatchTimes& times = table.batches[i];
    const auto add = [&](std::size_t person, Role role, Duration start, Duration end) {
      work.push_back({static_cast<int>(person) + 1, role, static_cast<int>(i) + 1, start, end});
    };
    const bool tips_out_himself = times.mixed_by == times.carried_by;
    add(times.mixed_by, Role::mix, times.load, tips_out_himself ? times.discharge : times.emptied);
    add(times.carried_by, Role::carry, times.discharge, times.carried);
    add(times.placed_by, Role::place, times.place_start, times.place_end);
  }
  return work;
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

/// Gives earlier batches the more retarder that lets the whole top set together.
void taper(const Job& job, Pour& pour) {
  const Duration plain = *job.mix.working_time;
  std::vector<Duration> contacts;
  for (const Batch& batch : pour.batches) contacts.push_back(batch.contact);
  const double factor = pour.plan.temperature_factor;
  const auto doses = tapered_doses(job, plain, factor, contacts, pour.retarder);
  for (std::size_t i = 0; i < doses.size(); ++i) {
    Batch& batch = pour.batches[i];
    batch.doses = doses_of_batch(job, doses[i]);
    batch.longer = retarded_by_all(job, plain, doses[i]) * factor - *pour.plan.working_time;
  }
  pour.plan.retarder_per_bag = retarder_doses(job, doses.front());
  pour.plan.retarder_reason +=
      taper_reason(contacts.front() + *pour.plan.working_time + pour.batches.front().longer,
                   contacts.back() + *pour.plan.working_time, doses.front(), doses.back());
}

void use_zones(const ZonePlan& zones, PourPlan& plan) {
  plan.gap = zones.gap;
  plan.wet_edge_max = zones.wet_edge_max;
  plan.joint_length = zones.joint_length;
  plan.sweeps = zones.sweeps;
  plan.joints = zones.joints;
  plan.too_short = zones.too_short;
  plan.in_cells = zones.in_cells;
  if (plan.batches > 1) plan.narrowest = zones.narrowest;
}

}  // namespace

Pour plan_pour(const Job& job, const MixPlan& mix, const PourModel& model) {
  Pour pour;
  PourPlan& plan = pour.plan;
  const Pace beat = pace(job.crew);
  plan.batches = batch_count(mix, job.crew.bags_per_batch);
  plan.takt = beat.takt;
  plan.bottleneck = beat.bottleneck;
  plan.lead = beat.lead;

  const ZonePlan& zones = model.zones(plan.batches, setup_of(job));
  use_zones(zones, plan);
  const std::vector<Touch> touches = touches_of(plan.joints);
  const Timetable table = times_of(job.crew, beat, plan.batches, touches);
  use_times(table, plan);

  const Setup setup = setup_of(job);
  plan.mix_temperature = model.mix_temperature(setup.water, setup.ice);
  plan.temperature_factor = model.factor(setup);
  const Demand demand{plan.edge_wait_max, table.own_age, job.limits.margin};
  if (auto_retarder(job) && job.mix.working_time && beat.missing.empty()) {
    pour.retarder = least_dose(job, *job.mix.working_time, plan.temperature_factor, demand);
  }
  plan.retarder_per_bag = retarder_doses(job, pour.retarder);
  judge(job, beat, demand, pour.retarder, plan);

  plan.retarder_reason = retarder_reason(job, beat, job.mix.working_time, plan.temperature_factor,
                                         demand, pour.retarder);
  plan.water_rule = beat.missing.empty()
                        ? water_rule(table, unpaced_wait(job.crew, plan.batches, touches))
                        : no_timetable(beat);
  plan.smallest_crew = smallest_crew(job, plan.gap, plan.usable);
  pour.batches = timed(one_batch(job, mix, pour.retarder), table, plan.joints, zones,
                      mix.concrete);
  if (beat.missing.empty()) plan.work = work_of_people(table);
  const Additive* searched = auto_retarder(job);
  if (searched && searched->taper && plan.margin && plan.batches > 1) taper(job, pour);
  return pour;
}

ZoneCutter zone_cutter(const Job& job, const std::vector<SlabPlan>& slabs) {
  const bool has_strips = !job.forms.strip_stock.empty();
  return {job.slabs, slabs, has_strips ? job.forms.strip_stock.front().thickness : Length{}};
}

Pour plan_pour(const Job& job, const std::vector<SlabPlan>& slabs, const MixPlan& mix) {
  const ZoneCutter cutter = zone_cutter(job, slabs);
  Pour pour = plan_pour(job, mix, PourModel(job, mix, cutter));
  name_ends(job.slabs, slabs, pour.plan.joints);
  name_ends(job.slabs, slabs, pour.plan.too_short);
  return pour;
}

}  // namespace strikeoff
