// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string_view>

#include "job/quantity_text.h"

namespace strikeoff {

/// A unit as it may be written, and what one such number is in the unit the type holds (SI;
/// nanometres for lengths, degrees Celsius for temperatures, a fraction for percents).
struct Unit {
  std::string_view name;
  Dimension dimension;
  double (*to_si)(double);
};

/// Every spelling of every unit a job file may use.
[[nodiscard]] std::span<const Unit> units_table();

}  // namespace strikeoff
