// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <chrono>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "site/air_cycle.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

Check cold_cure(const Job& job, const HardeningPlan& plan) {
  constexpr double most = 1.5;  // assumption
  constexpr Temperature counts_from =
      Temperature::celsius(10);  // ACI 347, in a page that quotes it
  Check check;
  check.code = "cold-cure";
  check.basis = basis("slowing");
  check.limit = most;
  check.unit = "times as long";
  check.value = plan.slowing;
  if (!plan.slowing) {
    check.level = Level::stop;
    check.title = fmt::format("The slab does not harden: the air stays at {} or below",
                              show(Temperature::celsius(0), job.units));
    check.advice =
        "Wait for warmer days, or heat a tent over it and give its temperature as \"air\".";
    return check;
  }
  const bool too_cold = is_ordinary(job.mix) && plan.mean < counts_from;
  check.title = "The air is warm enough for the bag's later times";
  if (*plan.slowing <= most && !too_cold) return check;
  check.level = Level::caution;
  check.title = fmt::format("The cold makes every later time {} times as long as the bag says",
                            show_number(*plan.slowing, 1));
  check.advice =
      "The later steps are put off by that. An insulating blanket over the sheet keeps the slab's "
      "own warmth in.";
  if (too_cold) {
    check.advice += fmt::format(
        " A day and a night are {} on average: time under {} does not count for ordinary cement, "
        "so "
        "strip and load it only when a test piece that lay beside it is hard.",
        show(plan.mean, job.units), show(counts_from, job.units));
  }
  return check;
}

/// Only where something hangs on it: a soffit that is carried until then.
std::optional<Check> soffit_strength_check(const Job& job, const HardeningPlan& plan) {
  const Milestone* props = milestone(plan, "props");
  if (props == nullptr || !props->strength) return std::nullopt;
  Check check;
  check.code = "strength";
  check.basis = basis("soffit-strength");
  check.limit = in_megapascals(*props->strength);
  check.unit = "MPa";
  if (props->strong) {
    check.title = fmt::format("The slab has {} before its props go, by the bag's strengths",
                              show(*props->strength, job.units));
    return check;
  }
  check.level = Level::caution;
  check.title = "How strong the slab is when its props go is not known";
  check.advice = fmt::format(
      "It needs {}. {} Leave the props until the data sheet of the bag says it is that strong, or "
      "ask who supplies it.",
      show(*props->strength, job.units),
      job.mix.strength.size() < 2
          ? "The job gives fewer than two strengths of the mix."
          : "No curve through the strengths that the job gives for the mix tells when.");
  return check;
}

/// The time of day counts from midnight, noon where there is none.
Duration until(const StartDate& ready_by, const Job& job) {
  const std::chrono::sys_days ready{ready_by.day}, pour{job.date->day};
  const auto time = ready_by.time.value_or(std::chrono::minutes{0});
  return days(static_cast<double>((ready - pour).count())) +
         minutes(static_cast<double>(time.count())) - start_of_pour(job);
}

/// "Begin the pour by 2026-05-02 07:10 at the latest."
std::string latest(const HardeningPlan& plan) {
  if (!plan.start_by) return "";
  return fmt::format("Begin the pour by {} at the latest.", readable(*plan.start_by));
}

Check too_late(const HardeningPlan& plan, const std::string& by, Duration most, Check check) {
  const Milestone* light = milestone(plan, "light use");
  const bool light_in_time = light != nullptr && light->from && *light->from <= most;
  check.level = light_in_time ? Level::caution : Level::stop;
  check.title = light_in_time ? fmt::format("By {} the slab takes light use only", by)
                              : fmt::format("The slab is not ready by {}", by);
  check.advice = latest(plan) + " Or use a mix that gains strength sooner, or keep it warmer.";
  return check;
}

Check ready_by_check(const Job& job, const Plan& plan) {
  const std::string by = readable(iso(*job.ready_by));
  const std::optional<Duration> use = plan.schedule.back().start;
  Check check;
  check.code = "ready-by";
  check.basis = basis("ready-by");
  check.unit = "d";
  if (use) check.value = *use / days(1);
  if (!use) {
    check.level = Level::caution;
    check.title = fmt::format("Whether the slab is ready by {} is not known", by);
    check.advice =
        "Some step before its first full use has no time on the bag: look for ____ in the "
        "schedule, "
        "and give the mix those times from its data sheet.";
    return check;
  }
  if (!job.date) {
    check.level = Level::caution;
    check.title = fmt::format("To be ready by {} the pour must begin in time", by);
    check.advice = latest(plan.hardening) + " Then write the day of the pour as \"date\".";
    return check;
  }
  const Duration most = until(*job.ready_by, job);
  check.limit = most / days(1);
  if (*use > most + rounding) return too_late(plan.hardening, by, most, std::move(check));
  check.title = fmt::format("The slab is ready for full use by {}", by);
  return check;
}

}  // namespace

std::vector<Check> hardening_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks = {cold_cure(job, plan.hardening)};
  add(soffit_strength_check(job, plan.hardening), checks);
  if (job.ready_by && !plan.schedule.empty()) checks.push_back(ready_by_check(job, plan));
  return checks;
}

}  // namespace strikeoff
