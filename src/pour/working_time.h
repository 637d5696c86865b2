// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"

namespace strikeoff {

/// How much longer (over 1) or shorter setting takes at `mix` than at `reference`: 1 /
/// arrhenius_rate. Ea as given; else 50 kJ/mol when warmer, 30 when cooler: the cautious side each
/// way (assumption).
[[nodiscard]] double temperature_factor(Temperature mix, Temperature reference,
                                        std::optional<MolarEnergy> activation_energy);

/// Working time with `doses` of this retarder per bag, before the temperature factor: W0 + doses x
/// extends, or W0 x f(doses) with f linear between the additive's factors.
[[nodiscard]] Duration retarded(Duration working_time, const Additive& retarder, double doses);

}  // namespace strikeoff
