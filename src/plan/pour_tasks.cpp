// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"
#include "pour/finishing.h"
#include "pour/setting.h"

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
  const std::string who = who_has(job.crew, strike_off_role(job.crew));
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

const char* const light_mark = "two passes, from when a finger leaves only a light mark";

/// Zone by zone, in the order of the batches, at the usual pace.
void add_trowel_zones(const Job& job, const Plan& plan, const std::vector<Stint>& spans,
                      const std::string& until, TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::finish);
  std::string before;
  for (std::size_t i = 0; i < spans.size(); ++i) {
    std::vector<std::string> after{batch_name(plan.batches[i])};
    if (!before.empty()) after.push_back(before);
    before = tasks.add_after(
        std::move(after),
        fmt::format("Trowel zone {}: {}{}", plan.batches[i].number, light_mark, until), who,
        spans[i].start, spans[i].end);
    tasks.about(plan.batches[i]);
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
    tasks.about(batch);
  }
  add_strike_off(job, plan, tasks);
}

void add_finishing(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("finish");
  const Setting times = setting(job, plan.pour);
  if (!times.stiff) {
    // Nobody knows when it begins; only that the last zone comes last.
    tasks.add_after({batch_name(plan.batches.front())},
                    fmt::format("Trowel zone by zone, in the order of the batches: {}, not before "
                                "the time on the bag's data sheet; done before its final set",
                                light_mark),
                    who_has(job.crew, Role::finish), std::nullopt, std::nullopt);
    return;
  }
  const Finishers who = finishers(job.crew, plan.pour);
  if (times.final_set) {
    if (const auto whole = trowel_at_once(plan, *times.stiff, *times.final_set, who)) {
      tasks.add(fmt::format("Trowel the whole top: {}; done before {}", light_mark,
                            show_deadline(plan.batches.front().contact + *times.final_set)),
                who_has(job.crew, Role::finish), whole->start, whole->end);
      return;
    }
  }
  add_trowel_zones(job, plan, trowel_in_order(plan.batches, *times.stiff, who, usual_trowel),
                   times.final_set ? "" : "; done before the final set on the bag's data sheet",
                   tasks);
}

}  // namespace strikeoff
