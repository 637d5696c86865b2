// SPDX-License-Identifier: MIT
#include "plan/ready_by.h"

#include <algorithm>
#include <cmath>

#include "hardening/hardening.h"
#include "plan/schedule.h"
#include "plan/tasks.h"

namespace strikeoff {
namespace {

/// The task with which the fresh top is done.
const Task* last_finishing(const Plan& plan) {
  const auto found = std::find_if(plan.schedule.rbegin(), plan.schedule.rend(),
                                  [](const Task& task) { return task.phase == "finish"; });
  return found == plan.schedule.rend() ? nullptr : &*found;
}

/// When the first full use begins, from the first water, for a pour that begins at this local
/// time; `plan` is scratch.
Moment use_begins(const Job& job, const Task& finished, Duration start, Plan& plan) {
  plan.hardening = plan_hardening(job, plan.slabs, plan.pour, start);
  TaskList tasks;
  tasks.add(finished.task, finished.who, finished.start, finished.end);
  add_later(job, plan, tasks);
  return tasks.last().start;
}

/// Local time of day, after midnight.
Duration clock_of(Duration local) {
  return local - days(std::floor(in_days(local)));
}

}  // namespace

std::optional<std::string> latest_start(const Job& job, const Plan& plan) {
  const Task* finished = last_finishing(plan);
  if (!job.ready_by || finished == nullptr) return std::nullopt;
  const StartDate midnight{job.ready_by->day, std::chrono::minutes{0}};
  const Duration by =
      minutes(static_cast<double>(job.ready_by->time.value_or(std::chrono::minutes{0}).count()));
  Plan scratch = plan;
  // So many minutes before it; whoever begins sooner is never done later, so halving finds the
  // fewest.
  const auto in_time = [&](long long before) {
    const Duration span = minutes(static_cast<double>(before));
    const Moment use = use_begins(job, *finished, clock_of(by - span), scratch);
    return use && *use <= span;
  };
  long long too_few = 0;
  long long enough = std::llround(in_minutes(days(3 * 365)));  // three waits of a year at most
  if (!in_time(enough)) return std::nullopt;
  while (enough - too_few > 1) {
    const long long middle = (enough + too_few) / 2;
    (in_time(middle) ? enough : too_few) = middle;
  }
  return local_time(midnight, by - minutes(static_cast<double>(enough)));
}

}  // namespace strikeoff
