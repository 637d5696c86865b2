// SPDX-License-Identifier: MIT
#include "mix/arrhenius.h"

#include <cmath>

namespace strikeoff {

double arrhenius_rate(Temperature temperature, Temperature reference,
                      MolarEnergy activation_energy) {
  constexpr double gas_constant = 8.314;  // J/mol K, as ASTM C1074 rounds it (from memory)
  return std::exp(activation_energy.si() / gas_constant *
                  (1 / reference.in_k() - 1 / temperature.in_k()));
}

}  // namespace strikeoff
