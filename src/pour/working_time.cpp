// SPDX-License-Identifier: MIT
#include "pour/working_time.h"

#include "mix/arrhenius.h"

namespace strikeoff {
namespace {

/// f(doses) between the given points, from (0, 1); beyond the last point it stays at its factor:
/// nothing is known there, and more would be a guess on the unsafe side.
double factor_at(const std::vector<DoseFactor>& factors, double doses) {
  DoseFactor before{0, 1};
  for (const DoseFactor& point : factors) {
    if (doses <= point.doses) {
      if (point.doses <= before.doses) return point.factor;
      const double t = (doses - before.doses) / (point.doses - before.doses);
      return before.factor + t * (point.factor - before.factor);
    }
    before = point;
  }
  return before.factor;
}

}  // namespace

double temperature_factor(Temperature mix, Temperature reference,
                          std::optional<MolarEnergy> activation_energy) {
  const MolarEnergy cautious = kilojoules_per_mole(mix > reference ? 50 : 30);
  // As much longer at `mix` as it is faster at the reference.
  return arrhenius_rate(reference, mix, activation_energy.value_or(cautious));
}

Duration retarded(Duration working_time, const Additive& retarder, double doses) {
  if (!retarder.factors.empty()) return working_time * factor_at(retarder.factors, doses);
  return working_time + retarder.extends.value_or(Duration{}) * doses;
}

}  // namespace strikeoff
