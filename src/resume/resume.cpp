// SPDX-License-Identifier: MIT
#include "strikeoff/resume.h"

#include <algorithm>
#include <numeric>
#include <cmath>
#include <utility>

#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "pour/crew.h"
#include "pour/joint_ends.h"
#include "pour/pour.h"
#include "pour/pour_model.h"
#include "pour/working_time.h"
#include "pour/zones.h"
#include "resume/filling.h"
#include "resume/findings.h"
#include "resume/rest_times.h"
#include "resume/stop_end.h"
#include "strikeoff/planner.h"

namespace strikeoff {
namespace {

constexpr Duration instant = seconds(1e-6);  // rounding

/// Working time and temperature of today's mix, where the log knows better than the plan.
void set_working_time(const Job& job, const PourLog& log, PourPlan& pour) {
  std::optional<Temperature> today = log.mix_temperature;
  if (!today && log.air) {
    const Volume water = water_per_bag(job);
    today = fresh_mix_temperature(job.mix.bag, *log.air, water * water_density,
                                  job.site.water_temperature);
  }
  if (today) {
    const double factor = temperature_factor(*today, job.mix.at, job.mix.activation_energy);
    if (pour.working_time) {
      pour.working_time = *pour.working_time * (factor / pour.temperature_factor);
    }
    pour.mix_temperature = *today;
    pour.temperature_factor = factor;
  }
  if (log.working_time) pour.working_time = log.working_time;
  pour.usable.reset();
  if (pour.working_time) pour.usable = *pour.working_time * job.crew.usable;
}

/// Without a crew that can pour: one batch alone, now.
std::vector<BatchTimes> times_alone(const PourLog& log, Duration lead, Duration place,
                                    int batches) {
  std::vector<BatchTimes> times;
  for (int i = 0; i < batches; ++i) {
    BatchTimes batch;
    const bool is_begun = i < static_cast<int>(log.batches.size());
    batch.contact = is_begun ? log.batches[static_cast<std::size_t>(i)].contact : log.now;
    batch.place_end = std::max(batch.contact + lead, log.now);
    if (is_begun && log.batches[static_cast<std::size_t>(i)].placed) {
      batch.place_end = *log.batches[static_cast<std::size_t>(i)].placed;
    }
    batch.place_start = batch.place_end - place;
    times.push_back(batch);
  }
  return times;
}

std::vector<BatchTimes> times_of(const Job& job, const PourLog& log, const PourPlan& pour,
                                 int batches, const std::vector<Joint>& joints) {
  if (!pace(job.crew).missing.empty()) {
    return times_alone(log, pour.lead, job.crew.times.place.usual, batches);
  }
  return rest_times(job.crew, {log.batches, log.now}, batches, touches_of(joints),
                    pour.edge_wait_max);
}

/// Of all batches that are not begun.
double share_left(const Filling& filling, const PourLog& log) {
  const auto from = filling.shares.begin() + static_cast<std::ptrdiff_t>(log.batches.size());
  return std::accumulate(from, filling.shares.end(), 0.0);
}

/// One batch of the pour as it was or will be mixed.
Batch batch_of(const Job& job, const Plan& plan, const PourLog& log, const Filling& filling,
               std::size_t i) {
  Batch batch = plan.batches[std::min(i, plan.batches.size() - 1)];
  batch.number = static_cast<int>(i) + 1;
  if (i >= log.batches.size()) {
    batch.zone = filling.left * (filling.shares[i] / share_left(filling, log));
    return batch;
  }
  const LoggedBatch& logged = log.batches[i];
  const double bags = bags_of(logged, plan);
  for (BatchDose& dose : batch.doses) {
    dose.doses *= bags / batch.bags;
    if (Mass* mass = std::get_if<Mass>(&dose.amount)) *mass = *mass * (bags / batch.bags);
    if (Volume* volume = std::get_if<Volume>(&dose.amount)) *volume = *volume * (bags / batch.bags);
  }
  batch.bags = bags;
  batch.dry = job.mix.bag * bags;
  batch.water = water_of(logged, plan);
  batch.water_mass = batch.water * water_density;
  batch.bucket_mark.reset();
  batch.volume = filling.volumes[i];
  batch.zone = Volume::from_si(filling.shares[i]);
  return batch;
}

std::vector<Batch> batches_of(const Job& job, const Plan& plan, const PourLog& log,
                              const Filling& filling, const std::vector<BatchTimes>& times,
                              ZonePlan& zones) {
  std::vector<Batch> batches;
  for (std::size_t i = 0; i < times.size(); ++i) {
    Batch batch = batch_of(job, plan, log, filling, i);
    batch.mixer = times[i].mixer;
    batch.contact = times[i].contact;
    batch.place_start = times[i].place_start;
    batch.place_end = times[i].place_end;
    batch.neighbours = std::move(zones.neighbours[i]);
    batch.zones = std::move(zones.zones[i]);
    batch.front = zones.fronts[i];
    batch.advance = zones.advances[i];
    batch.edge_wait = {};
    batch.meet_by.reset();
    batches.push_back(std::move(batch));
  }
  return batches;
}

void set_waits(std::vector<Joint>& joints, std::vector<Batch>& batches,
               const std::optional<Duration>& usable) {
  for (Joint& joint : joints) {
    Batch& first = batches[static_cast<std::size_t>(joint.first - 1)];
    joint.wait = batches[static_cast<std::size_t>(joint.second - 1)].place_end - first.contact;
    first.edge_wait = std::max(first.edge_wait, joint.wait);
    if (usable) first.meet_by = first.contact + *usable;
  }
}

/// The joints to batches that are not placed, and the present wet edge.
void open_joints(const std::vector<Joint>& joints, Resume& resume) {
  const std::optional<Duration>& usable = resume.rest.pour.usable;
  for (const Joint& joint : joints) {
    if (joint.second <= resume.placed) continue;
    OpenJoint open{joint, {}, {}};
    if (usable) {
      open.margin = *usable - joint.wait;
      open.meet_by =
          resume.rest.batches[static_cast<std::size_t>(joint.second - 1)].place_end + *open.margin;
      const bool is_edge = joint.first <= resume.begun;
      if (is_edge && (!resume.meet_by || *open.meet_by < *resume.meet_by)) {
        resume.meet_by = open.meet_by;
        resume.meet_with = joint.second;
      }
    }
    resume.joints.push_back(std::move(open));
  }
}

/// The first batch that cannot be placed while all it touches, and itself, still knits.
std::optional<int> first_too_late(const Resume& resume) {
  std::optional<int> first;
  const auto note = [&](int number) { first = std::min(first.value_or(number), number); };
  for (const OpenJoint& open : resume.joints) {
    if (open.margin && *open.margin < -instant) note(open.joint.second);
  }
  const std::optional<Duration>& usable = resume.rest.pour.usable;
  for (const Batch& batch : resume.rest.batches) {
    const bool is_open = batch.number > resume.placed;
    if (is_open && usable && batch.place_end - batch.contact > *usable + instant) {
      note(batch.number);
    }
  }
  return first;
}

void count_bags(const Plan& plan, const PourLog& log, const Filling& filling, Resume& resume) {
  for (const LoggedBatch& batch : log.batches) resume.bags_used += bags_of(batch, plan);
  resume.bags_needed = filling.batches_left * plan.batches.front().bags;
  resume.bags_left_is_known = log.bags_left.has_value();
  const double bought = plan.mix.bags + plan.mix.spare_bags;
  resume.bags_left = log.bags_left.value_or(std::max(0.0, bought - resume.bags_used));
  const double missing = resume.bags_needed - resume.bags_left;
  resume.bags_short = missing > 1e-9 ? missing : 0;
}

NextBatch next_batch(const Resume& resume) {
  const int number = resume.begun + 1;
  const Batch& batch = resume.rest.batches[static_cast<std::size_t>(resume.begun)];
  NextBatch next{number, batch.contact, {}};
  std::optional<Duration> spare;
  for (const OpenJoint& open : resume.joints) {
    if (open.joint.second != number || !open.margin) continue;
    if (!spare || *open.margin < *spare) spare = open.margin;
  }
  if (spare) next.latest_contact = batch.contact + std::max(*spare, Duration{});
  return next;
}

/// Keeps what is left of the plan: batches not placed, up to a stop-end for want of time.
void keep_the_rest(const Filling& filling, Resume& resume) {
  Plan& rest = resume.rest;
  const bool is_cut = resume.stop_end && !resume.stop_end->is_for_bags;
  const int last = is_cut ? std::max(resume.stop_end->after, resume.begun)
                          : static_cast<int>(rest.batches.size());
  rest.batches.resize(static_cast<std::size_t>(last));
  rest.batches.erase(rest.batches.begin(), rest.batches.begin() + resume.placed);
  PourPlan& pour = rest.pour;
  pour.joints.clear();
  pour.batches = static_cast<int>(rest.batches.size());
  pour.edge_wait_max = {};
  pour.margin.reset();
  pour.chain.clear();
  pour.gap = 0;
  pour.joint_length = {};
  for (const OpenJoint& open : resume.joints) {
    pour.edge_wait_max = std::max(pour.edge_wait_max, open.joint.wait);
    pour.gap = std::max(pour.gap, open.joint.second - open.joint.first);
    pour.joint_length += open.joint.length;
    if (open.margin) pour.margin = std::min(pour.margin.value_or(*open.margin), *open.margin);
    pour.joints.push_back(open.joint);
  }
  pour.end = {};
  for (const Batch& batch : rest.batches) pour.end = std::max(pour.end, batch.place_end);
  const double batches = filling.batches_left;
  MixPlan& mix = rest.mix;
  mix.bags_exact = resume.bags_needed;
  mix.bags = whole_up(resume.bags_needed);
  mix.concrete = filling.left;
  if (!rest.batches.empty()) mix.water_total = rest.batches.back().water * batches;
}

/// The plan without what was settled before the pour.
Plan plan_of_the_rest(const Plan& plan, const std::optional<std::chrono::minutes>& first) {
  Plan rest;
  rest.name = plan.name;
  rest.date = plan.date;
  if (first) {
    if (!rest.date) rest.date.emplace();
    rest.date->time = first;
  }
  rest.units = plan.units;
  rest.currency = plan.currency;
  rest.slabs = plan.slabs;
  rest.mix = plan.mix;
  rest.pour = plan.pour;
  return rest;
}

}  // namespace

Resume resume(const Job& given, const Catalogue& catalogue, const PourLog& log) {
  const Job job = settled_job(given);
  const Plan plan = make_plan(job, catalogue);
  const Filling filling = fill(job, plan, log);
  Resume resume;
  resume.now = log.now;
  resume.first_contact = log.first_contact;
  resume.begun = static_cast<int>(log.batches.size());
  resume.placed = static_cast<int>(
      std::count_if(log.batches.begin(), log.batches.end(),
                    [](const LoggedBatch& batch) { return batch.placed.has_value(); }));
  resume.filled = filling.filled;
  resume.left = filling.left;
  resume.rest = plan_of_the_rest(plan, log.first_contact);
  count_bags(plan, log, filling, resume);
  PourPlan& pour = resume.rest.pour;
  set_working_time(job, log, pour);

  ZonePlan zones =
      zone_cutter(job, plan.slabs).cut({filling.shares, -1, -1, {}, plan.pour.sweeps});
  pour.sweeps = std::move(zones.sweeps);
  pour.wet_edge_max = zones.wet_edge_max;
  name_ends(job.slabs, plan.slabs, zones.joints);
  const int batches = resume.begun + filling.batches_left;
  const std::vector<BatchTimes> times = times_of(job, log, plan.pour, batches, zones.joints);
  std::vector<Joint> joints = std::move(zones.joints);
  resume.rest.batches = batches_of(job, plan, log, filling, times, zones);
  set_waits(joints, resume.rest.batches, pour.usable);
  open_joints(joints, resume);

  const double bags_of_batch = plan.batches.front().bags;
  const int with_bags =
      resume.begun +
      static_cast<int>(std::floor(std::min(resume.bags_left / bags_of_batch + 1e-9, 1e6)));
  resume.stop_end = find_stop_end(
      {resume.begun, resume.placed, batches, with_bags, first_too_late(resume), &joints});
  const int last = resume.stop_end ? resume.stop_end->after : batches;
  if (last > resume.begun) resume.next = next_batch(resume);
  keep_the_rest(filling, resume);
  resume.in_hand = what_to_do_in_hand(resume);
  std::vector<Joint> made;
  for (const Joint& joint : joints) {
    if (joint.second <= resume.placed) made.push_back(joint);
  }
  resume.rest.checks = findings(job, plan, log, filling, resume, made);
  pour.feasible = !has_stop(resume);
  return resume;
}

bool has_stop(const Resume& resume) {
  return has_stop(resume.rest);
}

}  // namespace strikeoff
