// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "plan/tasks.h"
#include "pour/crew.h"

namespace strikeoff {
namespace {

/// An estimate, so to 5 min: "about 25 min".
std::string about(Duration work) {
  return "about " + show(minutes(std::max(5.0, 5 * std::round(in_minutes(work) / 5))));
}

/// Work of all who finish; what follows it may begin at once.
Cue add_work(const Job& job, const Cue& begin, const std::string& task, Duration one_person,
             TaskList& tasks) {
  Moment end;
  if (begin.at) end = *begin.at + one_person / std::max(1, holders(job.crew.people, Role::finish));
  const std::string name = tasks.add_after(begin.after, task + begin.words,
                                           who_has(job.crew, Role::finish), begin.at, end);
  return {{name}, end, ""};
}

/// The same, once a label's wait is over; `on` is where to read a wait that nobody has given.
Cue after_wait(const Cue& done, const std::optional<Duration>& wait, const std::string& on) {
  Cue next = done;
  next.at = done.at && wait ? Moment(*done.at + *wait) : std::nullopt;
  if (next.at) return next;
  next.words = wait ? fmt::format("; wait {} first", show(*wait))
                    : fmt::format("; not before the time on {}: ____", on);
  return next;
}

Cue add_pits(const Job& job, const Cue& begin, const std::optional<Duration>& hardens,
             TaskList& tasks) {
  const Cue filled = add_work(
      job, begin,
      "Fill pits: rub in a stiff paste of sieved dry mix and water, scrape it flush, keep it "
      "damp; keep a cup of dry mix back for it",
      Duration{}, tasks);
  return after_wait(filled, hardens, "the bag's data sheet");
}

/// ASTM D4263: 18 in (457 mm) square of clear sheet, 16 h or more.
Cue add_drying(const Job& job, const Cue& begin, TaskList& tasks) {
  Moment end;
  if (begin.at) end = *begin.at + hours(16);
  const std::string name = tasks.add_after(
      begin.after,
      "Let it dry: tape down a clear sheet 18 in (457 mm) square for 16 h; do not seal while damp "
      "gathers under it (a dry sheet does not prove a dry slab)",
      who_has(job.crew, Role::finish), begin.at, end);
  return {{name}, end, ""};
}

}  // namespace

Cue add_sanding(const Job& job, const Plan& plan, const Cue& begin,
                const std::optional<Duration>& hardens, TaskList& tasks) {
  const std::vector<SandingPass>& passes = plan.finish.sanding;
  // Pits show once the skin is off; a single grit must also take the paste down.
  const std::size_t fill_before = passes.size() > 1 ? 1 : 0;
  Cue next = begin;
  for (std::size_t i = 0; i < passes.size(); ++i) {
    if (plan.finish.fill_pits && i == fill_before) next = add_pits(job, next, hardens, tasks);
    next = add_work(job, next,
                    fmt::format("Sand top and edges with grit {}, wet or with extraction, mask on "
                                "({} for one person)",
                                passes[i].grit, about(passes[i].work)),
                    passes[i].work, tasks);
  }
  if (plan.finish.fill_pits && passes.empty()) next = add_pits(job, next, hardens, tasks);
  return next;
}

Cue add_sealing(const Job& job, const Plan& plan, const Cue& begin, const Cue& label,
                TaskList& tasks) {
  if (plan.finish.coats == 0) return begin;
  const Cue dry = add_drying(job, begin, tasks);
  Cue next{dry.after, later(dry.at, label.at), label.words};
  for (int coat = 1; coat <= plan.finish.coats; ++coat) {
    if (coat > 1) next = after_wait(next, plan.finish.recoat, "the can");
    next = add_work(
        job, next,
        fmt::format("Seal, coat {} of {}: {}, thin, windows open ({} for one person)", coat,
                    plan.finish.coats, plan.finish.sealer, about(plan.finish.coating)),
        plan.finish.coating, tasks);
  }
  return next;
}

}  // namespace strikeoff
