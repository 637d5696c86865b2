// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "checks/checks.h"
#include "core/format.h"
#include "pour/crew.h"

namespace strikeoff {
namespace {

/// NIOSH lifting equation (Publication 94-110, read in a summary): the load constant, which is the
/// limit of a lift with every multiplier at 1. The lifting index is mass / 23 kg at best.
constexpr Mass load_constant = kilograms(23);

Mass lift_limit(const Job& job) {
  return std::min(load_constant, job.limits.lift.value_or(load_constant));
}

/// In how many lifts each is within the limit.
int lifts(Mass mass, Mass limit) {
  return static_cast<int>(std::ceil(mass / limit - 1e-9));
}

Check lift(const Job& job, const std::string& what, Mass mass, const std::string& advice) {
  const Mass limit = lift_limit(job);
  Check check;
  check.code = "lift";
  check.title = fmt::format("{} can be lifted by one person", what);
  check.value = mass.si();
  check.limit = limit.si();
  check.unit = "kg";
  check.basis = limit < load_constant
                    ? "limits.lift of the job, stricter than NIOSH"
                    : "NIOSH lifting equation, best case: lifting index = mass / 23 kg (51 lb)";
  if (mass > limit) {
    check.level = Level::caution;
    check.title = fmt::format("{} is heavy: {} a person, limit {}", what, show(mass, job.units),
                              show(limit, job.units));
    check.advice = advice;
  }
  return check;
}

Check batch_lift(const Job& job, const Plan& plan) {
  Mass heaviest;
  for (const Batch& batch : plan.batches) {
    // Water is 1 kg a litre.
    heaviest = std::max(heaviest, batch.dry + batch.water * kilograms_per_m3(1000));
  }
  const int sharing = std::max(1, holders(job.crew.people, Role::carry));
  const Mass each = heaviest / sharing;
  Check check = lift(job, "A batch", each,
                     fmt::format("Carry it in {} buckets, wheel it, or mix beside the form; never "
                                 "twist with a full bucket.",
                                 lifts(heaviest, lift_limit(job))));
  if (sharing == 1) return check;
  check.basis += fmt::format("; the {} people who carry share each batch", sharing);
  if (check.level == Level::ok) {
    check.title = fmt::format("A batch can be lifted by the {} people who carry it", sharing);
  }
  return check;
}

/// A standing caution: short, always there, and not the last word on its subject.
Check standing(std::string code, std::string title, std::string advice, std::string basis) {
  Check check;
  check.code = std::move(code);
  check.level = Level::caution;
  check.title = std::move(title);
  check.advice = std::move(advice);
  check.basis = std::move(basis);
  return check;
}

}  // namespace

std::vector<Check> safety_checks(const Job& job, const Plan& plan) {
  return {
      lift(job, "A bag", job.mix.bag,
           fmt::format("Lift it with {} people, or open it and carry it in parts; store the bags "
                       "at waist height.",
                       lifts(job.mix.bag, lift_limit(job)))),
      batch_lift(job, plan),
      standing(
          "silica", "Dust of the mix and of dry sanding harms the lungs",
          "Tip bags low and slowly, outdoors or with extraction; wear a fitted dust mask; sand "
          "wet. The bag's safety data sheet decides.",
          "29 CFR 1926.1153: 50 ug/m3 over 8 h; emptying bags is not in its Table 1"),
      standing("caustic", "Wet mix burns skin and eyes",
               "Gloves, goggles, long sleeves; wash splashes off at once, rinse eyes and see a "
               "doctor. The bag's safety data sheet decides.",
               "wet cement has a pH of 12 to 13 (precast-industry article)"),
      standing("electric", "Power tools stand on a wet floor",
               "Use an outlet with a residual-current device (GFCI), keep leads and joints out of "
               "the wet. Local electrical code decides.",
               "common practice, no source"),
      standing(
          "hearth", "If this slab is a hearth, fire has rules of its own",
          "Clearances, thickness and what may burn beneath it come from the local code and the "
          "stove's manual; no fire before it is dry through. Ask a licensed practitioner.",
          "local codes; this plan checks none of them"),
  };
}

}  // namespace strikeoff
