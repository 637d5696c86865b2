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

/// Every check of a plan whose other parts are complete: stops first, then cautions, then what
/// holds; in a fixed order within a level.
[[nodiscard]] std::vector<Check> run_checks(const Job& job, const Plan& plan);

// The groups, one file each.
[[nodiscard]] std::vector<Check> pour_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> mix_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> base_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> slab_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> panel_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> stiffness_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> form_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> hardening_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> lift_checks(const Job& job, const Plan& plan);
[[nodiscard]] std::vector<Check> safety_checks(const Job& job, const Plan& plan);

}  // namespace strikeoff
