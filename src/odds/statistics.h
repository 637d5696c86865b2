// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

#include "strikeoff/odds.h"

namespace strikeoff {

/// The standard normal quantile, for p in (0, 1): a rational approximation with a relative error
/// below 1.2e-9 (Acklam 2003, coefficients from memory, held against std::erfc in the tests).
[[nodiscard]] double normal_quantile(double p);

/// `times` of `runs`, with the 95 % score interval of Wilson, J. Am. Stat. Assoc. 22 (1927) 209.
/// Precondition: 0 <= times <= runs, runs > 0.
[[nodiscard]] Chance chance_of(std::int64_t times, std::int64_t runs);

/// The least of the values that at least the share p of them do not exceed. Reorders the values.
/// Precondition: at least one value; p in [0, 1].
[[nodiscard]] double quantile(std::vector<double>& values, double p);

}  // namespace strikeoff
