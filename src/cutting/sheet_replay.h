// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/plan.h"

namespace strikeoff {

/// Sizes are cut in whole nanometres, each off by half of one: this is for a few in a row, and for
/// the sums of mitred lengths.
inline constexpr Length cut_rounding = Length::nm(50);

[[nodiscard]] inline bool differs(Length a, Length b) {
  return a - b > cut_rounding || b - a > cut_rounding;
}

/// What is wrong with a sheet's cuts, found by sawing the sheet as they say: each pass goes from
/// side to side of a part that is there, `kerf` is lost, the direction changes with the stage,
/// there are at most three stages, and the parts made are the pieces where they should be, and the
/// left-overs. Empty: nothing is wrong. Whether the pieces are those asked for is not looked at.
[[nodiscard]] std::vector<std::string> saw_violations(const Sheet& sheet, Length kerf);

}  // namespace strikeoff
