// SPDX-License-Identifier: MIT
#include "site/evaporation.h"
#include "site/humidity.h"
#include "site/site.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

/// The paper's inch-pound and SI forms are not each other's conversion: the SI form, which the
/// program uses, runs about 4 % lower (case EV-08).
constexpr double us_form = 0.05;

/// Menzel's SI form, which the program uses, is rounded up: 0.315 for 0.3116 and 0.060 for 0.0597.
constexpr double si_form = 0.015;

/// The program's vapour pressures keep to the table within 0.15 %; this case is to its digits.
constexpr double another_formula = 0.0015;

EvaporationRate uno(const PublishedCase& one) {
  return evaporation_uno(one.get<Temperature>("Tc"), one.get<Temperature>("Ta"), one.fraction("RH"),
                         one.get<Speed>("V"));
}

Answers uno_si(const PublishedCase& one) {
  return {{"E", uno(one)}};
}

Answers uno_us(const PublishedCase& one) {
  return {{"E", {uno(one), us_form}}};
}

Answers uno_both(const PublishedCase& one) {
  return {{"E_printed_SI_form", uno(one)}, {"E_US_form_converted", {uno(one), us_form}}};
}

Answers uno_clamped(const PublishedCase& one) {
  return {{"E_clamped", uno(one)}};
}

Answers menzel(const PublishedCase& one) {
  const Temperature dew = dew_point(one.get<Temperature>("Ta"), one.fraction("RH"));
  return {{"W", evaporation_menzel(one.get<Temperature>("Tc"), dew, one.get<Speed>("V"))}};
}

/// The table of drying tendencies names the dew point itself.
Answers menzel_by_dew_point(const PublishedCase& one) {
  const EvaporationRate rate = evaporation_menzel(
      one.get<Temperature>("Tc"), one.get<Temperature>("dew_point"), one.get<Speed>("V"));
  return {{"W", {rate, si_form}}};
}

Answers rate_units(const PublishedCase&) {
  const double kg_per_m2_h = written<Mass>("1 lb").si() / written<Area>("1 ft2").si() /
                             (written<Duration>("1 h") / hours(1));
  return {{"E", kilograms_per_m2_h(kg_per_m2_h)}};
}

Answers band(const PublishedCase&) {
  return {{"band", evaporation_band * 100}};
}

Answers stop_from(const PublishedCase&) {
  return {{"limit_SI", evaporation_stop}};
}

Answers caution_from(const PublishedCase&) {
  return {{"caution", evaporation_caution}};
}

Answers saturation(const PublishedCase& one) {
  return {{"es", saturation_pressure(one.get<Temperature>("T"))}};
}

Answers between_rows(const PublishedCase& one) {
  return {{"es", {saturation_pressure(one.get<Temperature>("T")), another_formula}}};
}

Answers dew(const PublishedCase& one) {
  return {{"Td", dew_point(one.get<Temperature>("T"), one.fraction("RH"))}};
}

}  // namespace

Asks air_asks() {
  Asks asks = {{"EV-01", uno_us},      {"EV-02", menzel},      {"EV-03", uno_si},
               {"EV-04", uno_us},      {"EV-05", uno_si},      {"EV-06", menzel},
               {"EV-07", rate_units},  {"EV-08", uno_both},    {"EV-09", uno_us},
               {"EV-10", uno_clamped}, {"EV-R1", stop_from},   {"EV-R2", caution_from},
               {"EV-R5", band},        {"PS-23", between_rows}};
  for (const PublishedCase& one : published_cases()) {
    if (set_aside().count(one.id()) > 0) continue;
    if (one.id().rfind("EV-T", 0) == 0) asks.emplace(one.id(), menzel_by_dew_point);
    const bool vapour = one.id().rfind("PS-", 0) == 0;
    if (vapour) asks.emplace(one.id(), one.expects("Td") ? dew : saturation);
  }
  return asks;
}

}  // namespace strikeoff::test
