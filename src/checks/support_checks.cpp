// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"

namespace strikeoff {
namespace {

/// "the slab, a batch and 2 people who place it".
std::string pour_day_words(const SlabLoads& loads) {
  return fmt::format("the fresh slab, a full batch and {}",
                     count(loads.people, "person who places it", "people who place it"));
}

Check base_load_check(const CheckedSlab& one) {
  Check check;
  check.code = "base-load";
  check.title = fmt::format("{}: the base carries the slab ({})", one.slab.name,
                            show(one.plan.mass, one.job.units));
  check.value = in_kilopascals(one.plan.base_load);
  check.unit = "kPa";
  check.basis = basis("base-load");
  return check;
}

std::optional<Check> base_load(const CheckedSlab& one) {
  const std::optional<Pressure>& limit = one.job.limits.base_load;
  if (one.slab.support == Support::ground && !limit) return std::nullopt;
  const Units units = one.job.units;
  const Pressure load = one.plan.base_load;
  const SlabLoads& loads = one.plan.loads;
  const std::string pour_day =
      fmt::format("{} on pour day with {}", show(loads.pour_day, units), pour_day_words(loads));
  Check check = base_load_check(one);
  if (!limit) {
    check.level = Level::caution;
    check.title = fmt::format("{}: what the base carries is not known", one.slab.name);
    check.advice = fmt::format("The slab weighs {}, {} of base; {}: ask the maker of the base.",
                               show(one.plan.mass, units), show(load, units), pour_day);
    return check;
  }
  check.limit = in_kilopascals(*limit);
  if (load > *limit) {
    check.level = Level::stop;
    check.title = fmt::format("{}: too heavy for the base", one.slab.name);
    check.advice =
        fmt::format("{} against {} allowed: strengthen the base, or make the slab thinner.",
                    show(load, units), show(*limit, units));
  } else if (loads.pour_day_load > *limit) {
    check.level = Level::caution;
    check.title =
        fmt::format("{}: the base carries the slab, but not all of the pour day", one.slab.name);
    check.value = in_kilopascals(loads.pour_day_load);
    check.advice = fmt::format(
        "{}, {} of base: nobody stands or leans on it, and buckets are set down beside it.",
        pour_day, show(loads.pour_day_load, units));
  }
  return check;
}

/// " Too much too: leg 2, 81 kg.": the others over the limit.
std::string others_over(const std::vector<Bearing>& bearings, const Bearing& heaviest,
                        Mass Bearing::*load, Mass limit, Units units) {
  std::string text;
  for (const Bearing& each : bearings) {
    if (&each == &heaviest || each.*load <= limit) continue;
    text += fmt::format("{}{}, {}", text.empty() ? " Too much too: " : "; ", each.on,
                        show(each.*load, units));
  }
  return text.empty() ? "" : text + ".";
}

std::optional<Check> support_load(const CheckedSlab& one) {
  const auto& bearings = one.plan.loads.bearings;
  if (bearings.empty()) return std::nullopt;
  const auto heaviest =
      std::max_element(bearings.begin(), bearings.end(),
                       [](const Bearing& a, const Bearing& b) { return a.mass < b.mass; });
  const Units units = one.job.units;
  const std::string carries =
      fmt::format("{} carries about {} of the slab", heaviest->on, show(heaviest->mass, units));
  const std::string pour_day = fmt::format("up to {} on pour day if batch and people are over it",
                                           show(heaviest->pour_day, units));
  const std::optional<Mass>& limit = one.job.limits.support_load;
  Check check;
  check.code = "support-load";
  check.title = fmt::format("{}: {}", one.slab.name, carries);
  check.value = heaviest->mass.si();
  check.unit = "kg";
  check.basis = basis("support-load");
  if (!limit) {
    check.level = Level::caution;
    check.title += "; what it can carry is not known";
    check.advice = fmt::format(
        "And {}: ask the maker of the base. The base's own sides may take some of it off.",
        pour_day);
    return check;
  }
  check.limit = limit->si();
  if (heaviest->mass > *limit) {
    check.level = Level::stop;
    check.advice = fmt::format("{} allowed: set more supports, or make the slab thinner.",
                               show(*limit, units)) +
                   others_over(bearings, *heaviest, &Bearing::mass, *limit, units);
  } else if (heaviest->pour_day > *limit) {
    check.level = Level::caution;
    check.value = heaviest->pour_day.si();
    check.advice = fmt::format("And {}, {} allowed: nobody stands or leans there during the pour.",
                               pour_day, show(*limit, units)) +
                   others_over(bearings, *heaviest, &Bearing::pour_day, *limit, units);
  }
  return check;
}

}  // namespace

std::vector<Check> support_checks(const Job& job, const Plan& plan) {
  return for_each_slab(job, plan, [](const CheckedSlab& one, std::vector<Check>& checks) {
    add(base_load(one), checks);
    add(support_load(one), checks);
  });
}

}  // namespace strikeoff
