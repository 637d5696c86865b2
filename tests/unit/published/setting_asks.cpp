// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <cstddef>

#include "hardening/maturity.h"
#include "pour/working_time.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

constexpr double gas_constant = 8.314;  // J/mol K, as the cases round it

/// How much faster it goes at T than at Ts with this activation energy, J/mol.
double rate(const PublishedCase& one, double energy) {
  return arrhenius_rate(one.get<Temperature>("T"), one.get<Temperature>("Ts"),
                        MolarEnergy::from_si(energy));
}

Answers by_equivalent_age(const PublishedCase& one) {
  const double energy = one.number("Q") * gas_constant;
  const AirSpell spell = {one.get<Duration>("dt"), one.get<Temperature>("T")};
  return {
      {"factor", rate(one, energy)},
      {"te", equivalent_age({spell}, one.get<Temperature>("Ts"), MolarEnergy::from_si(energy))}};
}

/// Maturity in C h: the rate against 20 C, times the degrees of 20 C over the datum, times hours.
double maturity(Temperature at, Duration time, Temperature datum) {
  const Temperature reference = Temperature::celsius(20);
  return nurse_saul_rate(at, reference, datum) * (reference.in_c() - datum.in_c()) *
         (time / hours(1));
}

/// "6h@18, 6h@24, ... C"
Answers maturity_of_spells(const PublishedCase& one) {
  const std::vector<double> spells = one.numbers("intervals");
  double sum = 0;
  for (std::size_t i = 0; i + 1 < spells.size(); i += 2) {
    sum +=
        maturity(Temperature::celsius(spells[i + 1]), hours(spells[i]), one.get<Temperature>("T0"));
  }
  return {{"M", sum}};
}

Answers maturity_in_days(const PublishedCase& one) {
  const double hours_of_degrees =
      maturity(one.get<Temperature>("T"), one.get<Duration>("t"), one.get<Temperature>("T0"));
  return {{"M", hours_of_degrees / 24}};
}

Answers maturity_in_both(const PublishedCase& one) {
  const double in_c =
      maturity(one.get<Temperature>("T"), one.get<Duration>("t"), one.get<Temperature>("T0"));
  return {{"M_C", in_c}, {"M_F", in_c * 1.8}};
}

Answers nurse_saul_age(const PublishedCase& one) {
  return {{"te", one.get<Duration>("t") * nurse_saul_rate(one.get<Temperature>("T"),
                                                          one.get<Temperature>("Ts"),
                                                          one.get<Temperature>("T0"))}};
}

/// The energy in kelvins, from two temperatures.
Answers energy_in_kelvins(const PublishedCase& one) {
  const Temperature cold = Temperature::celsius(10), warm = Temperature::celsius(30);
  const double factor = arrhenius_rate(warm, cold, one.get<MolarEnergy>("Ea"));
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
  Asks asks = {{"MT-01", maturity_of_spells}, {"MT-02", maturity_of_spells},
               {"MT-03", maturity_in_days},   {"MT-04", maturity_in_both},
               {"MT-19", nurse_saul_age},     {"MT-13", energy_in_kelvins},
               {"MT-14", freiesleben},        {"MT-15", freiesleben}};
  for (const char* id : {"MT-05", "MT-06", "MT-07", "MT-08", "MT-09", "MT-10", "MT-11", "MT-12"}) {
    asks.emplace(id, by_equivalent_age);
  }
  for (const char* id : {"ST-02", "ST-03", "ST-04", "ST-05", "ST-06"}) asks.emplace(id, set_time);
  return asks;
}

}  // namespace strikeoff::test
