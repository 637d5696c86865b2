// SPDX-License-Identifier: MIT
#include "pour/pour_model.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "mix/fresh_mix.h"
#include "mix/mix.h"
#include "pour/sentences.h"
#include "pour/working_time.h"

namespace strikeoff {

Setup setup_of(const Job& job) {
  return {job.crew, job.site.water_temperature, job.site.ice};
}

std::vector<Touch> touches_of(const std::vector<Joint>& joints) {
  std::vector<Touch> touches;
  for (const Joint& joint : joints) touches.push_back({joint.first, joint.second});
  return touches;
}

Reach PourModel::reach(int batches, const Setup& setup) const {
  constexpr double comfort = 0.1;  // of the usable time, to spare (assumption)
  const Pace beat = pace(setup.crew);
  Outlook next_to_each_other;
  next_to_each_other.pace = beat;
  next_to_each_other.batches = batches;
  next_to_each_other.demand = {edge_wait(1, beat), beat.lead, job_.limits.margin};
  const double mix = factor(setup);
  const auto usable = judged(std::move(next_to_each_other), mix).usable;
  // Without a known time nothing is comfortable but what touches its neighbour.
  if (!usable || !beat.missing.empty() || beat.takt <= Duration{}) return {batches, 1};
  const auto within = [&](Duration time) {
    const double apart = std::floor((time - job_.limits.margin - beat.lead) / beat.takt + 1e-9);
    return static_cast<int>(std::clamp(apart, 0.0, static_cast<double>(batches)));
  };
  const Additive* retarder = auto_retarder(job_);
  const Duration most =
      retarded_by_all(job_, *job_.mix.working_time, retarder ? most_doses(*retarder) : 0) *
      (mix * job_.crew.usable);
  return {within(std::max(*usable, most)), within(*usable * (1 - comfort))};
}

const ZonePlan& PourModel::zones(int batches, const Setup& setup) const {
  const std::pair key{batches, reach(batches, setup)};
  const auto known = zones_.find(key);
  if (known != zones_.end()) return known->second;
  ZoneWish wish;
  wish.shares.assign(static_cast<std::size_t>(batches), 1.0);
  wish.room = mix_.surplus / mix_.concrete;
  wish.more_room = (mix_.surplus + mix_.waste) / mix_.concrete;
  wish.reach = key.second;
  return zones_.emplace(key, cutter_.cut(wish)).first->second;
}

Temperature PourModel::mix_temperature(Temperature water, Mass ice) const {
  return fresh_mix_temperature(job_.mix.bag, job_.site.bag_temperature,
                               mix_.water_per_bag * water_density - ice, water, ice);
}

double PourModel::factor(const Setup& setup) const {
  return temperature_factor(mix_temperature(setup.water, setup.ice), job_.mix.at,
                            job_.mix.activation_energy);
}

Outlook PourModel::judged(Outlook outlook, double factor) const {
  outlook.dose = 0;
  outlook.usable.reset();
  Duration usable;
  if (const auto plain = job_.mix.working_time) {
    if (auto_retarder(job_)) outlook.dose = least_dose(job_, *plain, factor, outlook.demand);
    usable = retarded_by_all(job_, *plain, outlook.dose) * (factor * job_.crew.usable);
    outlook.usable = usable;
  }
  outlook.slack = usable - outlook.demand.usable();
  if (job_.crew.pour_within) {
    outlook.slack = std::min(outlook.slack, *job_.crew.pour_within - outlook.end);
  }
  // As for the demand: timetables add and multiply minutes.
  outlook.works = outlook.usable && outlook.pace.missing.empty() && outlook.slack >= minutes(-1e-9);
  return outlook;
}

Outlook PourModel::quick(const Setup& setup) const {
  Outlook outlook;
  outlook.pace = pace(setup.crew);
  outlook.batches = batch_count(mix_, setup.crew.bags_per_batch);
  const Duration lead = outlook.pace.lead;
  outlook.demand = {edge_wait(zones(outlook.batches, setup).gap, outlook.pace), lead, job_.limits.margin};
  outlook.end = outlook.pace.takt * (outlook.batches - 1) + lead;
  return judged(std::move(outlook), factor(setup));
}

Outlook PourModel::exact(const Setup& setup) const {
  Outlook outlook = quick(setup);
  if (!outlook.pace.missing.empty()) return outlook;
  const Timetable table =
      least_wait_timetable(setup.crew, outlook.batches, touches_of(zones(outlook.batches, setup).joints));
  outlook.demand.wait = table.worst_wait;
  outlook.demand.age = table.own_age;
  outlook.end = {};
  for (const BatchTimes& batch : table.batches) {
    outlook.end = std::max(outlook.end, batch.place_end);
  }
  return judged(std::move(outlook), factor(setup));
}

}  // namespace strikeoff
