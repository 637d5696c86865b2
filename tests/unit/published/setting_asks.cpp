// SPDX-License-Identifier: MIT
#include <cmath>

#include "pour/working_time.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

constexpr double gas_constant = 8.314;  // J/mol K, as the cases round it

/// How much faster it goes at T than at Ts with this activation energy, J/mol.
double rate(const PublishedCase& one, double energy) {
  return 1 / temperature_factor(one.get<Temperature>("T"), one.get<Temperature>("Ts"),
                                MolarEnergy::from_si(energy));
}

Answers equivalent_age(const PublishedCase& one) {
  const double faster = rate(one, one.number("Q") * gas_constant);
  return {{"factor", faster}, {"te", one.get<Duration>("dt") * faster}};
}

/// The energy in kelvins, from two temperatures.
Answers energy_in_kelvins(const PublishedCase& one) {
  const Temperature cold = Temperature::celsius(10), warm = Temperature::celsius(30);
  const double factor = temperature_factor(cold, warm, one.get<MolarEnergy>("Ea"));
  return {{"Q", std::log(factor) / (1 / cold.in_k() - 1 / warm.in_k())}};
}

/// Freiesleben Hansen and Pedersen's energy: 33.5 kJ/mol, and 1.47 more for each degree under 20 C.
Answers freiesleben(const PublishedCase& one) {
  const double under = std::max(0.0, 20 - one.get<Temperature>("T").in_c());
  return {{"factor", rate(one, (33.5 + 1.47 * under) * 1000)}};
}

/// 6 h at 70 F, by the factor that the plan uses for a mix whose energy is not known.
Answers set_time(const PublishedCase& one) {
  const double factor =
      temperature_factor(one.get<Temperature>("T"), written<Temperature>("70 F"), {});
  return {{"set_time", hours(6) * factor}};
}

}  // namespace

Asks setting_asks() {
  Asks asks = {{"MT-13", energy_in_kelvins}, {"MT-14", freiesleben}, {"MT-15", freiesleben}};
  for (const char* id : {"MT-05", "MT-06", "MT-07", "MT-08", "MT-09", "MT-10", "MT-11", "MT-12"}) {
    asks.emplace(id, equivalent_age);
  }
  for (const char* id : {"ST-02", "ST-03", "ST-04", "ST-05", "ST-06"}) asks.emplace(id, set_time);
  return asks;
}

}  // namespace strikeoff::test
