// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Timetables add and multiply minutes; differences below this are rounding.
inline constexpr Duration rounding = minutes(1e-9);

/// A length beside its limit, in millimetres; `ok` until the check finds otherwise.
[[nodiscard]] Check measured(std::string code, std::string title, Length value, Length limit,
                             std::string basis);
/// Adds a check that applies.
void add(const std::optional<Check>& check, std::vector<Check>& checks);

/// Says of the checks from number `first` on which slab or additive they are about.
void set_about(const std::string& name, std::size_t first, std::vector<Check>& checks);

/// One slab as the job gives it and as it was planned.
struct CheckedSlab {
  const Slab& slab;
  const SlabPlan& plan;
  const Job& job;
};

/// A group's checks of each slab of the job, in their order.
template <class Group>
[[nodiscard]] std::vector<Check> for_each_slab(const Job& job, const Plan& plan, Group group) {
  std::vector<Check> checks;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const std::size_t first = checks.size();
    group(CheckedSlab{job.slabs[i], plan.slabs[i], job}, checks);
    set_about(job.slabs[i].name, first, checks);
  }
  return checks;
}

/// The side with the least of something; nothing when every side meets a wall.
template <class Measure>
[[nodiscard]] const Side* least_side(const Slab& slab, Measure measure) {
  const Side* least = nullptr;
  for (const Side& side : slab.sides) {
    if (side.wall) continue;
    if (least == nullptr || measure(side) < measure(*least)) least = &side;
  }
  return least;
}

/// Every check of a plan whose other parts are complete: stops first, then cautions, then what
/// holds; in a fixed order within a level.
[[nodiscard]] std::vector<Check> run_checks(const Job& job, const Plan& plan);

// The groups, one file each.
[[nodiscard]] std::vector<Check> pour_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> mix_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> site_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> base_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> slab_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> opening_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> overhang_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> support_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> steel_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> ground_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> panel_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> stiffness_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> form_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> hardening_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> lift_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> safety_checks(const Job& job, const Plan& plan);

}  // namespace strikeoff
