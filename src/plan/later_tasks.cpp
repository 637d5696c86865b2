// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

/// From a step's milestone; nothing when it is not known.
Moment from(const Plan& plan, std::string_view step) {
  const Milestone* found = milestone(plan.hardening, step);
  return found == nullptr ? std::nullopt : found->from;
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

Done add_stripping(const Plan& plan, const Done& trowelled, const Moment& cured, TaskList& tasks) {
  std::string task = has_props(plan)
                         ? "Strip the edges: screws out, ease the strips off, do not pry; soffit "
                           "panels and props stay"
                         : "Strip the forms: screws out, ease the strips off, do not pry";
  const Moment start = later(trowelled.at, from(plan, "strip"));
  if (start && cured && *start < *cured) {
    task += "; then cover top and edges again: the wet cure goes on";
  }
  return add_step({trowelled}, "strip", std::move(task), "one or two people", plan, tasks);
}

/// Only where a strength tells, and sooner than the full use.
void add_light_use(const Plan& plan, const std::vector<Done>& follows, TaskList& tasks) {
  const Moment light = later(all_done(follows), from(plan, "light use"));
  const Moment full = from(plan, "full use");
  if (!light || (full && *full <= *light)) return;
  add_step(follows, "light use", "Light use: what one hand carries; nobody leans on the edge",
           "everyone", plan, tasks);
}

}  // namespace

Moment all_done(const std::vector<Done>& steps) {
  Moment done = steps.front().at;
  for (const Done& step : steps) done = later(done, step.at);
  return done;
}

Done add_step(const std::vector<Done>& follows, std::string_view milestone, std::string task,
              const std::string& who, const Plan& plan, TaskList& tasks, Duration work) {
  const Moment not_before = from(plan, milestone);
  const Moment start = later(all_done(follows), not_before);
  if (!not_before) {
    task += "; not before the time on the bag's data sheet: ____";
  } else if (!start) {
    task += fmt::format("; not before {} after the pour", show(*not_before - plan.pour.end));
  }
  std::vector<std::string> after;
  for (const Done& step : follows) after.push_back(step.task);
  const Moment end = start ? Moment(*start + work) : std::nullopt;
  return {tasks.add_after(std::move(after), std::move(task), who, start, end), end};
}

void add_later(const Job& job, const Plan& plan, TaskList& tasks) {
  Done trowelled{tasks.last().task, tasks.last().end};
  Done cured;
  cured.task = add_wet_cure(job, plan, trowelled.task, trowelled.at, tasks);
  cured.at = tasks.last().end;

  tasks.begin_phase("later");
  // Trowelling is over at the final set, well before the label lets the forms go.
  if (!trowelled.at) trowelled.at = plan.pour.end;
  const Done stripped = add_stripping(plan, trowelled, cured.at, tasks);
  // Ordinary cement stays under its wet cloth for the week; a rapid mix is sanded early.
  std::vector<Done> for_sanding = {stripped};
  if (is_ordinary(job.mix)) for_sanding.push_back(cured);
  std::vector<Done> ready = add_sanding(job, plan, std::move(for_sanding), tasks);
  const bool after_cure = std::any_of(ready.begin(), ready.end(),
                                      [&](const Done& step) { return step.task == cured.task; });
  if (!after_cure) ready.push_back(cured);
  ready = add_sealing(job, plan, std::move(ready), tasks);
  if (has_props(plan)) {
    ready.push_back(add_step({stripped}, "props",
                             "Take out the props, left until now, and let the soffit panels down",
                             "one or two people", plan, tasks));
  }
  add_light_use(plan, ready, tasks);
  add_step(ready, "full use", first_use(job), "everyone", plan, tasks);
}

}  // namespace strikeoff
