// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "odds/trial.h"
#include "strikeoff/odds.h"

namespace strikeoff {

/// The name of an input of the risk, as the list of drivers gives it.
[[nodiscard]] std::string name_of(Input input);

/// What to do about the odds, the most pressing first; `leading` is the input with the largest
/// share. Chances, bags and remedy are there already.
[[nodiscard]] std::vector<std::string> advice_on(const Odds& odds, Input leading);

/// What was assumed, with the values in use.
[[nodiscard]] std::vector<OddsAssumption> assumptions_of(const Spreads& spreads, bool beat_is_bound,
                                                         Units units);

}  // namespace strikeoff
