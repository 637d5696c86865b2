// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/quantity.h"

namespace strikeoff {

/// Pressure of water vapour in air that holds as much of it as it can, over water. Good to 0.15 %
/// from 0 to 40 C; zero at -237.3 C and below.
[[nodiscard]] Pressure saturation_pressure(Temperature temperature);

/// The temperature at which air of this relative humidity (0 to 1, as a fraction) begins to leave
/// water on what it touches; never warmer than the air. Bone-dry air has none: -237.3 C.
[[nodiscard]] Temperature dew_point(Temperature air, double humidity);

}  // namespace strikeoff
