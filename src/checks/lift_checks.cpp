// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "loads/handling.h"

namespace strikeoff {
namespace {

/// NIOSH 94-110: above 1 some workers are at a higher risk, above 3 many (from memory). Both are
/// cautions, not stops: the pour itself does not fail, the posture is assumed, and parts or help
/// mend it without another plan.
constexpr double high_index = 3;

/// ISO 11228-1:2003: so much in all over 8 h, carried 20 m at a time; 10 000 kg up to 10 m (from
/// memory).
constexpr Mass day_limit = kilograms(6000);

bool is_bag(const LiftPlan& lift) {
  return lift.name == "bag";
}

/// In so many lifts or by so many people, each within the limit.
std::string in_parts(const LiftPlan& lift) {
  if (!lift.parts) return "No part is small enough at this pace: slow down, or share it out. ";
  const int parts = *lift.parts;
  if (is_bag(lift)) {
    return parts == 2 ? "Lift it with 2 people, or open it where it lies and lift it in 2 parts. "
                      : fmt::format("Open it where it lies and lift it in {} parts. ", parts);
  }
  return fmt::format("Carry {} in {} buckets, wheel it, or mix beside the form. ",
                     lift.sharing == 1 ? "it" : "each share", parts);
}

std::string help(const LiftPlan& lift, Units units) {
  if (!is_bag(lift)) return "Never twist with a full bucket.";
  return fmt::format("From a stack at waist height beside the mixer the limit is {}.",
                     show(recommended_from_waist(lift), units));
}

std::string subject(const LiftPlan& lift) {
  if (is_bag(lift)) return "A bag";
  return lift.sharing == 1 ? "A batch" : fmt::format("A batch, shared by {},", lift.sharing);
}

Check lift_check(const LiftPlan& lift, const Job& job) {
  const Mass limit = lift_limit(lift, job.limits);
  const char* to = is_bag(lift) ? "from the floor to the mixer" : "from the floor to the form";
  Check check;
  check.code = "lift";
  check.about = lift.name;
  check.title = fmt::format("{} can be lifted {} by one person", subject(lift), to);
  check.value = lift.mass.si();
  check.limit = limit.si();
  check.unit = "kg";
  check.basis = basis("lift-limit");
  if (lift.mass <= limit) return check;
  check.level = Level::caution;
  const bool far_over = lift.index.value_or(high_index + 1) > high_index;
  check.title = fmt::format("{} is {} to lift {}: {} a person, {} {}", subject(lift),
                            far_over ? "far too heavy" : "heavy", to, show(lift.mass, job.units),
                            limit < lift.recommended ? "your limit is" : "recommended are",
                            show(limit, job.units));
  check.advice =
      (far_over ? "Backs are hurt like this. " : "") + in_parts(lift) + help(lift, job.units);
  return check;
}

/// The one who lifts most.
std::optional<Check> day_check(const HandlingPlan& handling, Units units) {
  const auto most =
      std::max_element(handling.people.begin(), handling.people.end(),
                       [](const PersonLoad& a, const PersonLoad& b) { return a.mass < b.mass; });
  if (most == handling.people.end()) return std::nullopt;
  Check check;
  check.code = "handling-day";
  check.title =
      fmt::format("Of all, {} lifts most over the day: {}", most->name, show(most->mass, units));
  check.value = most->mass.si();
  check.limit = day_limit.si();
  check.unit = "kg";
  check.basis = basis("handling-day");
  if (most->mass <= day_limit) return check;
  check.level = Level::caution;
  check.advice = "Find more people, wheel bags and batches, or pour on two days.";
  return check;
}

}  // namespace

std::vector<Check> lift_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (const LiftPlan& lift : plan.handling.lifts) checks.push_back(lift_check(lift, job));
  add(day_check(plan.handling, job.units), checks);
  return checks;
}

}  // namespace strikeoff
