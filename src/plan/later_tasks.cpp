// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"
#include "pour/hardening.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

/// What a step hangs on: the step it follows, and the label's time after the end of the pour.
struct Wait {
  std::vector<std::string> after;
  Moment follows;                 // when those are done
  std::optional<Duration> label;  // nothing: the bag does not say
};

/// The beginning is known only when all it hangs on is.
Cue cue_of(const Wait& wait, const Plan& plan) {
  if (!wait.label) return {wait.after, {}, "; not before the time on the bag's data sheet: ____"};
  const Moment start = later(wait.follows, plan.pour.end + *wait.label);
  if (start) return {wait.after, start, ""};
  return {wait.after, {}, fmt::format("; not before {} after the pour", show(*wait.label))};
}

std::string add_step(const Wait& wait, const std::string& task, const std::string& who,
                     const Plan& plan, TaskList& tasks) {
  const Cue cue = cue_of(wait, plan);
  return tasks.add_after(cue.after, task + cue.words, who, cue.at, cue.at);
}

std::string first_use(const Job& job) {
  const bool on_base = std::any_of(job.slabs.begin(), job.slabs.end(),
                                   [](const Slab& slab) { return slab.support == Support::base; });
  return on_base ? "First full use: loads, hot pans, people leaning on the edge"
                 : "First full use: wheels and heavy loads";
}

bool has_props(const Plan& plan) {
  return std::any_of(plan.slabs.begin(), plan.slabs.end(),
                     [](const SlabPlan& slab) { return slab.forms.props > 0; });
}

/// Soffits stay carried longer than edges are held: 7 days for ordinary cement (ACI 347's times
/// for soffits, from memory), longer in the cold, else until the label's first full use.
std::string add_props_out(const Job& job, const Wait& stripped, const Hardening& times,
                          const Plan& plan, TaskList& tasks) {
  const std::optional<Duration> wait =
      is_ordinary(job.mix) ? std::optional(days(7) * times.cold_factor) : times.full_service;
  return add_step({stripped.after, stripped.follows, wait},
                  "Take out the props, left until now, and let the soffit panels down",
                  "one or two people", plan, tasks);
}

}  // namespace

void add_later(const Job& job, const Plan& plan, TaskList& tasks) {
  const Hardening times = hardening(job, plan.pour);
  const std::string trowelled = tasks.last().task;
  const Moment trowelled_at = tasks.last().end;
  const std::string cured = add_wet_cure(job, plan, trowelled, trowelled_at, tasks);
  const Moment cured_at = tasks.last().end;

  tasks.begin_phase("later");
  // Trowelling is over at the final set, well before the label lets the forms go.
  const Moment set = trowelled_at ? trowelled_at : plan.pour.end;
  const std::string stripped =
      add_step({{trowelled}, set, times.strip},
               has_props(plan) ? "Strip the edges: screws out, ease the strips off, "
                                 "do not pry; soffit panels and props stay"
                               : "Strip the forms: screws out, ease the strips off, "
                                 "do not pry",
               "one or two people", plan, tasks);
  // Ordinary cement stays under its wet cloth for the week; a rapid mix is sanded early.
  const Moment stripped_at = tasks.last().end;
  Wait sanding{{stripped}, stripped_at, times.sand};
  if (is_ordinary(job.mix)) {
    sanding.after.push_back(cured);
    sanding.follows = later(sanding.follows, cured_at);
  }
  const Cue sanded = add_sanding(job, plan, cue_of(sanding, plan), times.sand, tasks);
  Cue ready{sanded.after, later(sanded.at, cured_at), ""};
  if (std::find(ready.after.begin(), ready.after.end(), cured) == ready.after.end()) {
    ready.after.push_back(cured);
  }
  const Cue finished =
      add_sealing(job, plan, ready, cue_of({{}, ready.at, times.seal}, plan), tasks);
  Wait use{finished.after, finished.at, times.full_service};
  if (has_props(plan)) {
    use.after.push_back(add_props_out(job, {{stripped}, stripped_at, {}}, times, plan, tasks));
    use.follows = later(use.follows, tasks.last().end);
  }
  add_step(use, first_use(job), "everyone", plan, tasks);
}

}  // namespace strikeoff
