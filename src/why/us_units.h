// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "strikeoff/why.h"
#include "why/kinds.h"

namespace strikeoff {

/// A value of the plan file as a reader with a US tape and scale has it; empty where the plan's
/// units are metric, or where the unit is the same in both.
[[nodiscard]] std::string in_us_units(double value, const std::string& unit,
                                      const std::string& pointer, Units units);

/// The number as `why` shows it.
[[nodiscard]] PlanNumber plan_number(const NumberBasis& number, const PlanFile& file, Units units);

}  // namespace strikeoff
