// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"
#include "pour/hardening.h"

namespace strikeoff {
namespace {

std::string batch_team(const Crew& crew) {
  return fmt::format("mix: {}; carry: {}; place: {}", who_has(crew, Role::mix),
                     who_has(crew, Role::carry), who_has(crew, Role::place));
}

/// The top may wait for one strike-off at the end only while its oldest batch is still usable.
bool strikes_off_at_end(const PourPlan& pour) {
  return pour.batches == 1 || (pour.usable && pour.end <= *pour.usable);
}

void add_strike_off(const Job& job, const Plan& plan, TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::place);
  if (strikes_off_at_end(plan.pour)) {
    const Duration done = std::max(plan.pour.end, plan.pour.usable.value_or(plan.pour.end));
    tasks.add("Strike off the whole top at once", who, plan.pour.end, done);
    return;
  }
  const bool rows = plan.pour.gap > 1;
  const std::size_t behind =
      std::min(static_cast<std::size_t>(std::max(1, plan.pour.gap)), plan.batches.size() - 1);
  tasks.add_after({tasks.last().task},
                  fmt::format("Strike off while pouring, one {} behind the front; the last one "
                              "right after the last batch",
                              rows ? "row" : "zone"),
                  who, plan.batches[behind].place_end, plan.pour.end);
}

std::string trowel_rule(const Hardening& times) {
  if (!times.stiff) {
    return "two passes, when a finger leaves only a light mark, not before the time on the bag's "
           "data sheet";
  }
  if (!times.final_set) {
    return "two passes, from when a finger leaves only a light mark; done before the final set "
           "on the bag's data sheet";
  }
  return "two passes, from when a finger leaves only a light mark";
}

/// One window for every zone: from the last one's opening to the first one's closing.
void add_trowel_whole(const Job& job, Duration open, Duration close, TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::finish);
  tasks.add("Trowel the whole top, first pass, when a finger leaves only a light mark", who, open,
            close);
  tasks.add("Trowel the whole top, second pass, harder; done when this window closes", who, open,
            close);
}

void add_trowel_zones(const Job& job, const Plan& plan, const Hardening& times, TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::finish);
  for (const Batch& batch : plan.batches) {
    const Duration open =
        std::max(batch.place_end, batch.contact + times.stiff.value_or(Duration{}));
    Duration close = open;
    if (times.final_set) close = std::max(open, batch.contact + *times.final_set);
    tasks.add(fmt::format("Trowel zone {}: {}", batch.number, trowel_rule(times)), who, open,
              close);
  }
}

}  // namespace

void add_pour(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("pour");
  const std::string team = batch_team(job.crew);
  for (const Batch& batch : plan.batches) {
    tasks.add(fmt::format("Batch {}: water in, mix, carry; place from {}", batch.number,
                          show_clock(batch.place_start)),
              team, batch.contact, batch.place_end);
  }
  add_strike_off(job, plan, tasks);
}

void add_finishing(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("finish");
  const Hardening times = hardening(job, plan.pour);
  if (times.stiff && times.final_set) {
    const Duration open = std::max(plan.pour.end, plan.batches.back().contact + *times.stiff);
    const Duration close = plan.batches.front().contact + *times.final_set;
    if (open <= close) {
      add_trowel_whole(job, open, close, tasks);
      return;
    }
  }
  add_trowel_zones(job, plan, times, tasks);
}

}  // namespace strikeoff
