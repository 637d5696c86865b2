// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "checks/checks.h"
#include "core/format.h"
#include "pour/hardening.h"

namespace strikeoff {
namespace {

/// Timetables add and multiply minutes; differences below this are rounding.
constexpr Duration tolerance = minutes(1e-9);

Check timed(std::string code, std::string title, Duration value) {
  Check check;
  check.code = std::move(code);
  check.title = std::move(title);
  check.value = in_minutes(value);
  check.unit = "min";
  return check;
}

/// What working time leaves for a joint once the margin asked for is off.
std::optional<Duration> allowed(const Job& job, const PourPlan& pour) {
  if (!pour.usable) return std::nullopt;
  return *pour.usable - job.limits.margin;
}

const char* const measure_first =
    "The bag does not say how long it can be worked: do the bucket test and give working_time "
    "before you pour.";
const char* const usable_basis =
    "usable share x working time, less the margin asked for; the share is an assumption";

Check cold_joint(const Job& job, const Plan& plan) {
  const PourPlan& pour = plan.pour;
  Check check =
      timed("cold-joint", "Every batch meets the next while it still knits", pour.edge_wait_max);
  if (pour.batches == 1) {
    check.title = "One batch: no joints";
    check.value = std::nullopt;
    check.unit.clear();
    check.basis = "a single batch has no neighbour";
    return check;
  }
  check.basis = fmt::format("wait = {} x takt {} + lead {}; limit: {}", pour.gap, show(pour.takt),
                            show(pour.lead), usable_basis);
  const auto limit = allowed(job, pour);
  if (!limit) {
    check.level = Level::caution;
    check.title = "Whether the joints knit is not known";
    check.advice = measure_first;
    return check;
  }
  check.limit = in_minutes(*limit);
  if (pour.edge_wait_max > *limit + tolerance) {
    check.level = Level::stop;
    check.title = "A batch waits too long for its neighbour: cold joint";
    check.advice = fmt::format(
        "{} too long. Speed up {} (one batch every {} now), carry less far, mix smaller batches, "
        "use colder water, or a retarder within its label.",
        show(pour.edge_wait_max - *limit), pour.bottleneck, show(pour.takt));
  } else if (pour.gap_is_assumed) {
    check.level = Level::caution;
    check.title = "Every batch should meet the next in time, if each reaches right across";
    check.advice =
        "This outline is not a rectangle: see that each batch fills the slab from side to side, "
        "so that only the one before it and the one after it touch it.";
  }
  return check;
}

Check own_age(const Job& job, const Plan& plan) {
  const PourPlan& pour = plan.pour;
  Check check = timed("own-age", "Each batch is placed while it can be worked", pour.lead);
  check.basis = std::string("mix + discharge + carry + place; limit: ") + usable_basis;
  const auto limit = allowed(job, pour);
  if (!limit) {
    check.level = Level::caution;
    check.title = "Whether a batch stays workable until it is placed is not known";
    check.advice = measure_first;
    return check;
  }
  check.limit = in_minutes(*limit);
  if (pour.lead > *limit + tolerance) {
    check.level = Level::stop;
    check.title = "A batch is stiff before it is placed";
    check.advice = fmt::format(
        "{} too long from water to placed: mix nearer, mix smaller batches, or give more people "
        "to placing.",
        show(pour.lead - *limit));
  }
  return check;
}

Check strike_off(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  // Struck one zone (or row of zones) behind the front, or the whole top once at the end.
  const double behind = std::min(std::max(1, pour.gap), std::max(0, pour.batches - 1));
  const Duration progressive = pour.takt * behind + pour.lead;
  const bool at_end = strikes_off_at_end(pour);
  Check check = timed("strike-off",
                      at_end ? "The whole top can be struck off at the end"
                             : "Strike off one zone behind the front, not at the end",
                      at_end ? pour.end : progressive);
  check.basis =
      "age of the oldest mix when the straightedge passes; limit: usable share x "
      "working time (the share is an assumption)";
  if (!pour.usable) {
    check.level = Level::caution;
    check.title = "Strike off right behind the front: how long the mix lasts is not known";
    check.advice = measure_first;
    return check;
  }
  check.limit = in_minutes(*pour.usable);
  if (at_end && pour.end <= *pour.usable + tolerance) return check;
  check.advice = fmt::format(
      "Pull the straightedge over each zone as soon as the next is placed; "
      "the whole top at the end would be {} old.",
      show(pour.end));
  if (progressive > *pour.usable + tolerance) {
    check.level = Level::stop;
    check.title = "The top sets before it can be struck off";
    check.advice = fmt::format(
        "{} too late even right behind the front: mend `own-age` and `cold-joint` first.",
        show(progressive - *pour.usable));
  }
  return check;
}

/// Placers who also finish cannot do both when the first zone is ready before the pour ends.
bool finisher_is_busy(const Job& job, const PourPlan& pour, Duration stiff) {
  if (pour.end <= stiff) return false;
  return std::none_of(job.crew.people.begin(), job.crew.people.end(), [](const auto& roles) {
    return !roles.empty() &&
           std::all_of(roles.begin(), roles.end(), [](Role r) { return r == Role::finish; });
  });
}

Check trowelling(const Job& job, const Plan& plan) {
  const Hardening times = hardening(job, plan.pour);
  const auto window = trowel_window(times, plan);
  const Duration open = plan.batches.back().contact + times.stiff.value_or(Duration{});
  Check check = timed("trowel-window", "The whole top can be trowelled at once", open);
  check.basis =
      "opens when the last batch's working time is over, closes at the first batch's "
      "final set; both counted from water contact";
  if (!window) {
    check.level = Level::caution;
    check.title = "How long the top can be trowelled is not known";
    check.advice =
        "Stay with it: start when a finger leaves only a light mark; the bag's data "
        "sheet or a test piece tells when it is too hard.";
    if (!times.stiff) {
      check.value = std::nullopt;
      check.unit.clear();
    }
    return check;
  }
  check.value = in_minutes(window->open);
  check.limit = in_minutes(window->close);
  if (*times.final_set <= *times.stiff) {
    check.level = Level::stop;
    check.title = "No time to trowel: the mix is at its final set when its working time ends";
    check.advice = "Check working_time and final_set against the bag's data sheet.";
  } else if (window->open > window->close) {
    check.level = Level::caution;
    check.title = "The top must be trowelled zone by zone";
    check.advice =
        fmt::format("Each zone has {}; follow the order of the batches, as the schedule says.",
                    show(*times.final_set - *times.stiff));
    if (finisher_is_busy(job, plan.pour, *times.stiff)) {
      check.advice += fmt::format(
          " From {} on, while the pour still runs, somebody must trowel who does not "
          "mix, carry or place.",
          show_clock(*times.stiff));
    }
  }
  return check;
}

Check pour_end(Duration within, const PourPlan& pour) {
  Check check = timed("pour-end", "The pour ends in the time you have", pour.end);
  check.limit = in_minutes(within);
  check.basis = "crew.pour_within of the job";
  if (pour.end > within + tolerance) {
    check.level = Level::stop;
    check.title = "The pour takes longer than you have";
    check.advice = fmt::format(
        "{} too long: speed up {}, or mix larger batches if the joints "
        "allow it.",
        show(pour.end - within), pour.bottleneck);
  }
  return check;
}

std::string missing_roles(const Crew& crew) {
  const std::pair<Role, const char*> roles[] = {{Role::mix, "mixes"},
                                                {Role::carry, "carries"},
                                                {Role::place, "places"},
                                                {Role::finish, "finishes"}};
  std::string missing;
  for (const auto& [role, verb] : roles) {
    const bool held = std::any_of(crew.people.begin(), crew.people.end(),
                                  [wanted = role](const std::vector<Role>& has) {
                                    return std::find(has.begin(), has.end(), wanted) != has.end();
                                  });
    if (!held) missing += (missing.empty() ? "nobody " : ", nobody ") + std::string(verb);
  }
  return missing;
}

Check crew_check(const Job& job, const Plan& plan) {
  Check check;
  check.code = "crew";
  check.title = "Every job of the pour has somebody";
  check.value = static_cast<double>(job.crew.people.size());
  check.unit = "people";
  check.basis = "roles of the job's crew";
  check.advice = plan.pour.smallest_crew;
  if (const std::string missing = missing_roles(job.crew); !missing.empty()) {
    check.level = Level::stop;
    check.title = "The crew is not complete: " + missing;
    check.advice = "Give the missing work to somebody, or find one more person.";
  } else if (plan.pour.takt_is_bound) {
    check.level = Level::caution;
    check.title = "Somebody walks between jobs that do not follow each other";
    check.advice = fmt::format(
        "One batch every {} is the best that can be hoped for; give each "
        "person jobs that follow each other (mix and carry, carry and place).",
        show(plan.pour.takt));
  }
  return check;
}

}  // namespace

std::vector<Check> pour_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks{cold_joint(job, plan), own_age(job, plan), strike_off(plan),
                            trowelling(job, plan)};
  if (job.crew.pour_within) checks.push_back(pour_end(*job.crew.pour_within, plan.pour));
  checks.push_back(crew_check(job, plan));
  return checks;
}

}  // namespace strikeoff
