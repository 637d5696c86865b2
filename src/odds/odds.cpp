// SPDX-License-Identifier: MIT
#include "strikeoff/odds.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>

#include "odds/advice.h"
#include "odds/runs.h"
#include "odds/statistics.h"
#include "pour/crew.h"
#include "pour/retarder.h"

namespace strikeoff {
namespace {

void require(bool in_range, const char* what) {
  if (!in_range) throw std::invalid_argument(fmt::format("odds: {} is out of range", what));
}

bool is_share(double value) {
  return value >= 0 && value <= 1;
}

void require_valid(const OddsOptions& options) {
  require(options.runs >= 1 && options.runs <= most_runs, "runs");
  require(options.threads >= 1 && options.threads <= most_threads, "threads");
  require(options.risk > 0 && options.risk < 1, "risk");
  const Spreads& s = options.spreads;
  for (const double spread : {s.working_time, s.crew_pace, s.batch_working_time, s.drill_stop,
                              s.yield, s.volume, s.loss_usual, s.loss_bad}) {
    require(is_share(spread), "a spread");
  }
  require(s.loss_bad >= s.loss_usual, "the loss");
  require(s.least_time > 0 && s.least_time <= 1, "the least time");
  // Far beyond any weather, and so far from absolute zero that no draw comes near it.
  require(s.mix_temperature_c >= 0 && s.mix_temperature_c <= 10, "the temperature's spread");
  require(s.drill_swap >= Duration{} && s.drill_swap <= days(1), "the drill's swap");
}

Quantiles quantiles_of(std::vector<double>& values) {
  return {seconds(quantile(values, 0.05)), seconds(quantile(values, 0.5)),
          seconds(quantile(values, 0.95))};
}

/// Counted from the pours in which each joint was the worst.
std::vector<JointShare> joints_of(const std::vector<std::uint32_t>& worst,
                                  const std::vector<BatchPair>& pairs) {
  std::vector<std::int64_t> times(pairs.size());
  for (const std::uint32_t pair : worst) ++times[pair];
  std::vector<std::size_t> order(pairs.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return times[a] > times[b]; });
  std::vector<JointShare> joints;
  for (const std::size_t pair : order) {
    if (times[pair] == 0 || joints.size() == most_joints) break;
    joints.push_back({static_cast<int>(pairs[pair].first) + 1,
                      static_cast<int>(pairs[pair].second) + 1,
                      chance_of(times[pair], static_cast<std::int64_t>(worst.size()))});
  }
  return joints;
}

/// Sorted, the largest first; those that do not vary are left out. Returns the largest.
Input name_drivers(const Correlations& correlations, Odds& odds) {
  const std::array<double, input_count> shares = correlations.shares();
  std::array<Input, input_count> order{};
  for (std::size_t i = 0; i < input_count; ++i) order[i] = static_cast<Input>(i);
  std::stable_sort(order.begin(), order.end(),
                   [&](Input a, Input b) { return shares[a] > shares[b]; });
  double explained = 0;
  for (const Input input : order) {
    if (shares[input] == 0) continue;
    odds.drivers.push_back({name_of(input), shares[input]});
    explained += shares[input];
  }
  odds.unexplained = odds.drivers.empty() ? 0 : std::max(0.0, 1 - explained);
  return order.front();
}

/// With the working time longer by `factor` no more than the risk asked for goes wrong, for the
/// timetable does not depend on the dose.
SaferMix remedy_of(const Job& job, const Plan& plan, double factor) {
  SaferMix remedy;
  remedy.working_time = *plan.pour.working_time * factor;
  Job with = job;
  if (!auto_retarder(with)) {  // let the first one's fixed dose loose
    const auto fixed = std::find_if(
        with.additives.begin(), with.additives.end(),
        [](const Additive& additive) { return additive.kind == AdditiveKind::retarder; });
    if (fixed == with.additives.end()) return remedy;
    fixed->per_bag.reset();
    fixed->binder_percent.reset();
  }
  const Additive* searched = auto_retarder(with);
  for (const DoseTotal& dose : plan.mix.doses) {
    if (dose.name == searched->name) remedy.planned = dose.per_bag;
  }
  remedy.retarder = searched->name;
  remedy.most_doses = most_doses(*searched);
  const double temperature = plan.pour.temperature_factor;
  const Demand demand{remedy.working_time * job.crew.usable, {}, {}};
  const double doses = least_dose(with, *job.mix.working_time, temperature, demand);
  remedy.doses = doses;
  remedy.enough = covers(
      retarded_by_all(with, *job.mix.working_time, doses) * temperature * job.crew.usable, demand);
  return remedy;
}

void name_unknowns(const Job& job, const TrialModel& model, Odds& odds) {
  std::vector<std::string>& unknown = odds.unknown;
  if (!model.course) {
    unknown.push_back(
        fmt::format("In this crew {}, so there is no timetable and only the mix can be judged.",
                    pace(job.crew).bottleneck));
    return;
  }
  if (odds.batches == 1) {
    unknown.emplace_back("There is one batch, so no joint can go cold.");
  } else if (model.pairs.empty()) {
    unknown.emplace_back("No two batches touch, so no joint can go cold.");
  }
  if (model.working_time == 0) {
    unknown.emplace_back(
        "The bag gives no working time, so nobody can say how often a joint goes cold: time a "
        "test bucket, and write it into the job as \"working_time\".");
  } else if (model.final_set == 0) {
    unknown.emplace_back(
        "The bag gives no \"final_set\", so it is not known how often trowelling comes too late.");
  }
  if (!job.crew.pour_within) {
    unknown.emplace_back(
        "The job sets no time for the pour (\"pour_within\" in its crew), so none is overrun.");
  }
}

void judge_timetable(const Job& job, const Plan& plan, const TrialModel& model,
                     const OddsOptions& options, Runs& runs, Odds& odds) {
  const Counts& counts = runs.counts;
  odds.end = quantiles_of(runs.end);
  if (job.crew.pour_within) odds.overrun = chance_of(counts.overrun, odds.runs);
  if (!model.pairs.empty()) {
    odds.worst_wait = quantiles_of(runs.wait);
    odds.joints = joints_of(runs.worst, model.pairs);
  }
  if (model.working_time == 0) return;
  odds.stiff_batch = chance_of(counts.stiff, odds.runs);
  if (!model.pairs.empty()) {
    odds.cold_joint = chance_of(counts.cold, odds.runs);
    odds.margin = quantiles_of(runs.margin);
  }
  if (model.final_set > 0) odds.late_trowel = chance_of(counts.late, odds.runs);
  odds.remedy = remedy_of(job, plan, quantile(runs.severity, 1 - options.risk));
}

}  // namespace

Odds simulate(const Job& job, const Plan& plan, const OddsOptions& options) {
  require_valid(options);
  const TrialModel model(job, plan, options.spreads);
  Odds odds;
  odds.name = plan.name;
  odds.units = plan.units;
  odds.runs = options.runs;
  odds.seed = options.seed;
  odds.risk = options.risk;
  odds.batches = static_cast<int>(plan.batches.size());
  odds.plan_stops = has_stop(plan);
  odds.pour_within = job.crew.pour_within;
  odds.bags = plan.mix.bags;
  odds.spare_bags = plan.mix.spare_bags;

  PourBounds bounds;
  bounds.end =
      job.crew.pour_within ? job.crew.pour_within->si() : std::numeric_limits<double>::infinity();
  bounds.bags = plan.mix.bags;
  bounds.bags_with_spare = plan.mix.bags + plan.mix.spare_bags;
  Runs runs = pour_all(model, bounds, options);
  odds.short_of_mix = chance_of(runs.counts.empty, odds.runs);
  odds.short_with_spare = chance_of(runs.counts.empty_with_spare, odds.runs);
  odds.bags_needed = static_cast<int>(std::ceil(quantile(runs.bags, 1 - options.risk) - 1e-9));

  name_unknowns(job, model, odds);
  Input leading = working_time_input;
  if (model.course) {
    judge_timetable(job, plan, model, options, runs, odds);
    if (model.working_time > 0) leading = name_drivers(runs.correlations, odds);
  }
  odds.advice = advice_on(odds, leading);
  odds.assumptions = assumptions_of(options.spreads, !takes_turns(job.crew.people), plan.units);
  return odds;
}

}  // namespace strikeoff
