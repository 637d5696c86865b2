// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/quantity.h"

namespace strikeoff {

/// How fast cement reacts at a temperature, as a multiple of its rate at the reference: 1 there,
/// more when warmer. exp(-Ea/R (1/T - 1/Tref)) in K, R = 8.314 J/mol K (Arrhenius; ASTM C1074,
/// 6.3, equivalent age, from memory).
[[nodiscard]] double arrhenius_rate(Temperature temperature, Temperature reference,
                                    MolarEnergy activation_energy);

}  // namespace strikeoff
