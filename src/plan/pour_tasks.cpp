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

std::string batch_name(const Batch& batch) {
  return fmt::format("Batch {}: water in, mix, carry; place from {}", batch.number,
                     show_clock(batch.place_start));
}

/// What must be done before water goes into batch `i`: the last batch placed by then, else what
/// was made ready.
std::string before_batch(const std::vector<Batch>& batches, std::size_t i,
                         const std::string& ready) {
  for (std::size_t j = i; j-- > 0;) {
    if (batches[j].place_end <= batches[i].contact) return batch_name(batches[j]);
  }
  return ready;
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
  tasks.add_after({batch_name(plan.batches[behind])},
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

void add_trowel_zones(const Job& job, const Plan& plan, const Hardening& times, TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::finish);
  for (const Batch& batch : plan.batches) {
    const Duration open =
        std::max(batch.place_end, batch.contact + times.stiff.value_or(Duration{}));
    Duration close = open;
    if (times.final_set) close = std::max(open, batch.contact + *times.final_set);
    tasks.add_after({batch_name(batch)},
                    fmt::format("Trowel zone {}: {}", batch.number, trowel_rule(times)), who, open,
                    close);
  }
}

}  // namespace

void add_pour(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("pour");
  const std::string ready = tasks.last().task;
  const std::string team = batch_team(job.crew);
  for (std::size_t i = 0; i < plan.batches.size(); ++i) {
    const Batch& batch = plan.batches[i];
    tasks.add_after({before_batch(plan.batches, i, ready)}, batch_name(batch), team, batch.contact,
                    batch.place_end);
  }
  add_strike_off(job, plan, tasks);
}

void add_finishing(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("finish");
  const Hardening times = hardening(job, plan.pour);
  const auto window = trowel_window(times, plan);
  if (window && window->open <= window->close) {
    tasks.add("Trowel the whole top: " + trowel_rule(times), who_has(job.crew, Role::finish),
              window->open, window->close);
    return;
  }
  add_trowel_zones(job, plan, times, tasks);
}

}  // namespace strikeoff
