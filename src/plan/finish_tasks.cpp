// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "plan/tasks.h"
#include "pour/crew.h"

namespace strikeoff {
namespace {

/// An estimate, so to 5 min: "about 25 min for one person".
std::string about(Duration work) {
  return fmt::format("about {} for one person",
                     show(minutes(std::max(5.0, 5 * std::round(in_minutes(work) / 5)))));
}

/// All who finish work on it.
Duration shared(const Job& job, Duration one_person) {
  return one_person / std::max(1, holders(job.crew.people, Role::finish));
}

/// A step that follows another once a label's wait is over, which may not be known; `on` is where
/// to read it then.
Done add_after_wait(const Job& job, const Done& before, const std::optional<Duration>& wait,
                    const std::string& on, std::string task, Duration one_person, TaskList& tasks) {
  Moment start;
  if (before.at && wait) {
    start = *before.at + *wait;
  } else if (!wait) {
    task += fmt::format("; not before the time on {}: ____", on);
  } else if (*wait > Duration{}) {
    task += fmt::format("; wait {} first", show(*wait));
  }
  Moment end;
  if (start) end = *start + shared(job, one_person);
  return {
      tasks.add_after({before.task}, std::move(task), who_has(job.crew, Role::finish), start, end),
      end};
}

/// The paste is to be as hard as the slab was when it was first sanded.
std::optional<Duration> paste_hardens(const Job& job, const Plan& plan) {
  if (!job.mix.sand_after || !plan.hardening.slowing) return std::nullopt;
  return *job.mix.sand_after * *plan.hardening.slowing;
}

constexpr const char* fill_pits =
    "Fill pits: rub in a stiff paste of sieved dry mix, kept back from the pour, and water; scrape "
    "it flush, keep it damp";

std::string sanding_task(const SandingPass& pass) {
  return fmt::format("Sand top and edges with grit {}, wet or with extraction, mask on ({})",
                     pass.grit, about(pass.work));
}

/// ASTM D4263: 18 in (457 mm) square of clear sheet, 16 h or more.
Done add_drying(const Job& job, const std::vector<Done>& follows, TaskList& tasks) {
  const Moment start = all_done(follows);
  Moment end;
  if (start) end = *start + hours(16);
  std::vector<std::string> after;
  for (const Done& step : follows) after.push_back(step.task);
  return {tasks.add_after(std::move(after),
                          "Let it dry: tape down a clear sheet 18 in (457 mm) square for 16 h; do "
                          "not seal while damp gathers under it (a dry sheet does not prove a dry "
                          "slab)",
                          who_has(job.crew, Role::finish), start, end),
          end};
}

}  // namespace

std::vector<Done> add_sanding(const Job& job, const Plan& plan, std::vector<Done> follows,
                              TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::finish);
  std::vector<SandingPass> passes = plan.finish.sanding;
  bool hard = true;  // no wet paste in a pit
  // Pits show once the skin is off, so they are filled after the first of several grits.
  if (passes.size() > 1 || (passes.size() == 1 && !plan.finish.fill_pits)) {
    const SandingPass& first = passes.front();
    follows = {
        add_step(follows, "sand", sanding_task(first), who, plan, tasks, shared(job, first.work))};
    passes.erase(passes.begin());
    if (plan.finish.fill_pits) {
      follows = {add_after_wait(job, follows.front(), Duration{}, "", fill_pits, {}, tasks)};
      hard = false;
    }
  } else if (plan.finish.fill_pits) {
    follows = {add_step(follows, "sand", fill_pits, who, plan, tasks)};
    hard = false;
  }
  for (const SandingPass& pass : passes) {
    follows = {add_after_wait(job, follows.front(), hard ? Duration{} : paste_hardens(job, plan),
                              "the bag's data sheet", sanding_task(pass), pass.work, tasks)};
    hard = true;
  }
  return follows;
}

std::vector<Done> add_sealing(const Job& job, const Plan& plan, std::vector<Done> follows,
                              TaskList& tasks) {
  const FinishPlan& finish = plan.finish;
  for (int coat = 1; coat <= finish.coats; ++coat) {
    std::string task = fmt::format("Seal, coat {} of {}: {}, thin, windows open ({})", coat,
                                   finish.coats, finish.sealer, about(finish.coating));
    if (coat == 1) {
      follows = {add_step({add_drying(job, follows, tasks)}, "seal", std::move(task),
                          who_has(job.crew, Role::finish), plan, tasks,
                          shared(job, finish.coating))};
    } else {
      follows = {add_after_wait(job, follows.front(), finish.recoat, "the can", std::move(task),
                                finish.coating, tasks)};
    }
  }
  return follows;
}

}  // namespace strikeoff
