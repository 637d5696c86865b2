// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/quantity.h"

namespace strikeoff {

// How much water a wet, level top loses to the air. The wind is taken 0.5 m (20 in) above it. Never
// negative: where water would gather instead, the rate is zero.

/// By the formula behind the nomograph, Uno 1998; what a plan is judged by. `humidity` is relative,
/// 0 to 1. Air and concrete below -18 C count as -18 C.
[[nodiscard]] EvaporationRate evaporation_uno(Temperature concrete, Temperature air,
                                              double humidity, Speed wind);

/// By vapour pressures, Menzel 1954; the second opinion.
[[nodiscard]] EvaporationRate evaporation_menzel(Temperature concrete, Temperature dew_point,
                                                 Speed wind);

/// How far measured rates lie on either side of the estimate, as a share of it: Hover 2020.
inline constexpr double evaporation_band = 0.4;

}  // namespace strikeoff
