// SPDX-License-Identifier: MIT
#include "odds/trial.h"

#include <algorithm>
#include <cmath>

#include "odds/philox.h"
#include "odds/statistics.h"
#include "pour/crew.h"
#include "pour/setting.h"
#include "pour/working_time.h"

namespace strikeoff {
namespace {

/// Between the least an operation takes and its bad time. A job that gives one time for both means
/// that it does not vary.
Pert varied(const UsualBad& time, const Spreads& spreads) {
  const double usual = time.usual.si();
  if (!(time.bad > time.usual)) return {usual, usual, usual};
  return {usual * spreads.least_time, usual, time.bad.si()};
}

Pert loss_of(const Spreads& spreads) {
  const double usual = spreads.loss_usual;
  return spreads.loss_bad > usual ? Pert(0, usual, spreads.loss_bad) : Pert(usual, usual, usual);
}

std::vector<BatchPair> pairs_of(const std::vector<Batch>& batches) {
  std::vector<BatchPair> pairs;
  for (std::size_t i = 0; i < batches.size(); ++i) {
    for (const int neighbour : batches[i].neighbours) {
      const auto j = static_cast<std::size_t>(neighbour - 1);
      if (j > i) pairs.push_back({i, j});
    }
  }
  return pairs;
}

/// Seconds one person needs for both passes over each batch's zone at the usual pace.
std::vector<double> trowel_work_of(const std::vector<Batch>& batches) {
  std::vector<double> work;
  for (const Stint& stint : trowel_in_order(batches, {}, {1, 1, {}}, usual_trowel)) {
    work.push_back((stint.end - stint.start).si());
  }
  return work;
}

double scaled(double log_spread, std::uint32_t bits) {
  return std::exp(log_spread * normal_quantile(unit_interval(bits)));
}

}  // namespace

TrialModel::TrialModel(const Job& job, const Plan& plan, const Spreads& how_far)
    : spreads(how_far),
      pairs(pairs_of(plan.batches)),
      load(varied(job.crew.times.load, spreads)),
      mix(varied(job.crew.times.mix, spreads)),
      discharge(varied(job.crew.times.discharge, spreads)),
      reset(varied(job.crew.times.reset, spreads)),
      carry(varied(job.crew.times.carry, spreads)),
      back(varied(job.crew.times.back, spreads)),
      place(varied(job.crew.times.place, spreads)),
      trowel(quick_trowel / usual_trowel, 1, slow_trowel / usual_trowel),
      loss(loss_of(spreads)),
      bags(plan.mix.concrete / plan.mix.yield),
      mix_temperature(plan.pour.mix_temperature),
      label_temperature(job.mix.at),
      activation_energy(job.mix.activation_energy),
      finishers(strikeoff::finishers(job.crew, plan.pour)),
      trowel_work(trowel_work_of(plan.batches)) {
  if (pace(job.crew).missing.empty()) course.emplace(job.crew, plan.batches);
  const Setting hard = setting(job, plan.pour);
  if (hard.stiff) working_time = hard.stiff->si();
  if (hard.stiff && hard.final_set) final_set = hard.final_set->si();
}

/// What is the same all day, as factors.
struct Pourer::Day {
  double workable = 1;  // of the working time and the final set
  double pace = 1;      // of every time the crew takes
  double trowel = 1;    // of the usual trowelling
};

Pourer::Pourer(const TrialModel& model, std::uint64_t seed)
    : model_(model),
      key_{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32U)},
      course_(model.course),
      stays_workable_(model.course ? model.course->batches() : 0) {}

std::array<std::uint32_t, 4> Pourer::bits(std::uint32_t batch, std::uint32_t call) const {
  return philox({static_cast<std::uint32_t>(number_), static_cast<std::uint32_t>(number_ >> 32U),
                 batch, call},
                key_);
}

Pourer::Day Pourer::day(Trial& trial) const {
  const Spreads& spreads = model_.spreads;
  const auto first = bits(0, 0), second = bits(0, 1);
  const auto normal = [](std::uint32_t value) { return normal_quantile(unit_interval(value)); };
  const double working_time = normal(first[0]), temperature = normal(first[1]);
  const double pace = normal(first[2]);
  trial.inputs[working_time_input] = spreads.working_time * working_time;
  trial.inputs[temperature_input] = spreads.mix_temperature_c * temperature;
  trial.inputs[pace_input] = spreads.crew_pace * pace;

  Day day;
  day.pace = std::exp(spreads.crew_pace * pace);
  day.trowel = model_.trowel.at(unit_interval(second[2])) * day.pace;
  const auto factor = [&](double warmer) {
    return temperature_factor(Temperature::celsius(model_.mix_temperature.in_c() + warmer),
                              model_.label_temperature, model_.activation_energy);
  };
  day.workable = std::exp(spreads.working_time * working_time);
  if (spreads.mix_temperature_c > 0) {
    day.workable *= factor(spreads.mix_temperature_c * temperature) / factor(0);
  }
  trial.bags = model_.bags * (1 + spreads.volume * normal(second[0])) *
               (1 + model_.loss.at(unit_interval(second[1]))) /
               std::exp(spreads.yield * normal(first[3]));
  return day;
}

void Pourer::run_course(const Day& day, Trial& trial) {
  const Spreads& spreads = model_.spreads;
  auto& inputs = trial.inputs;
  course_->pour([&](std::size_t i) {
    const auto batch = static_cast<std::uint32_t>(i + 1);
    const auto first = bits(batch, 0), second = bits(batch, 1);
    const auto draw = [&](const Pert& time, std::uint32_t value) {
      return time.at(unit_interval(value)) * day.pace;
    };
    OperationTimes t;
    t.load = draw(model_.load, first[0]);
    t.mix = draw(model_.mix, first[1]);
    t.discharge = draw(model_.discharge, first[2]);
    t.reset = draw(model_.reset, first[3]);
    t.carry = draw(model_.carry, second[0]);
    t.back = draw(model_.back, second[1]);
    t.place = draw(model_.place, second[2]);
    inputs[mixing_input] += (t.load + t.mix + t.reset) / day.pace;
    inputs[carrying_input] += (t.discharge + t.carry + t.back) / day.pace;
    inputs[placing_input] += t.place / day.pace;
    stays_workable_[i] =
        model_.working_time * day.workable * scaled(spreads.batch_working_time, second[3]);
    if (spreads.drill_stop > 0 && unit_interval(bits(batch, 2)[0]) < spreads.drill_stop) {
      t.mix += spreads.drill_swap.si();
      inputs[stops_input] += 1;
    }
    return t;
  });
}

void Pourer::judge_joints(Trial& trial) const {
  bool first = true;
  for (std::size_t p = 0; p < model_.pairs.size(); ++p) {
    const BatchPair& pair = model_.pairs[p];
    const double wait = course_->placed(pair.second) - course_->contact(pair.first);
    const double workable = stays_workable_[pair.first];
    trial.wait = std::max(trial.wait, wait);
    // Without a working time the joint that waits longest counts as the worst.
    const double severity = workable > 0 ? wait / workable : wait;
    if (first || severity > trial.joint) {
      trial.joint = severity;
      trial.worst = static_cast<std::uint32_t>(p);
    }
    trial.margin = first ? workable - wait : std::min(trial.margin, workable - wait);
    first = false;
  }
}

/// Both passes of each zone in the order of the batches, all who finish on one zone at a time. The
/// final set comes early or late as the working time does (assumption).
bool Pourer::trowelled_late(const Day& day, double end) const {
  const Finishers& who = model_.finishers;
  const bool all_from_start = who.people == who.free_at_once;
  const double others = all_from_start ? 0 : end;
  double free = who.free_at_once > 0 ? 0 : others;
  for (std::size_t i = 0; i < model_.trowel_work.size(); ++i) {
    const double stiff = course_->contact(i) + stays_workable_[i];
    const double start = std::max({free, stiff, course_->placed(i)});
    const double work = model_.trowel_work[i] * day.trowel;
    const double joined = std::max(start, others), before = (joined - start) * who.free_at_once;
    free = who.free_at_once > 0 && work <= before ? start + work / who.free_at_once
                                                  : joined + (work - before) / who.people;
    const double final_set = model_.final_set * stays_workable_[i] / model_.working_time;
    if (free > course_->contact(i) + final_set) return true;
  }
  return false;
}

Trial Pourer::pour(std::int64_t number) {
  number_ = static_cast<std::uint64_t>(number);
  Trial trial;
  const Day today = day(trial);
  if (!course_) return trial;
  run_course(today, trial);
  for (std::size_t i = 0; i < course_->batches(); ++i) {
    trial.end = std::max(trial.end, course_->placed(i));
    if (model_.working_time > 0) {
      const double age = (course_->placed(i) - course_->contact(i)) / stays_workable_[i];
      trial.age = std::max(trial.age, age);
    }
  }
  judge_joints(trial);
  trial.late = model_.final_set > 0 && trowelled_late(today, trial.end);
  return trial;
}

}  // namespace strikeoff
