// SPDX-License-Identifier: MIT
#include <regex>

#include "mix/fresh_mix.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

/// Heat of ice over that of water: the program has 79.7 K (143.5 Btu/lb), these cases 80 K, which
/// is 0.05 F colder (note of CT-08).
constexpr double ice_of_80 = 0.002;

/// "kg, 0.92 kJ/kg.K, 66 C", "lb at 80 F": the unit of the mass, and the temperature.
Mass mass_of(const PublishedCase& one, const std::string& input) {
  const std::string unit = one.unit(input);
  return written<Mass>(std::to_string(one.number(input)) + " " + unit.substr(0, 2));
}

Temperature temperature_of(const PublishedCase& one, const std::string& input) {
  static const std::regex end("([-0-9.]+) ([CF])(,.*)?$");
  std::smatch found;
  const std::string unit = one.unit(input);
  if (!std::regex_search(unit, found, end)) throw std::runtime_error("no temperature: " + unit);
  return written<Temperature>(found.str(1) + " " + found.str(2));
}

/// The solids as one bag: both have the same specific heat, so their heat is that of their mass at
/// their mean temperature.
struct Ingredients {
  Mass solids, water, ice;
  Temperature solids_at, water_at;
  double cement_share;  // of the solids
  [[nodiscard]] Temperature mixed() const {
    return fresh_mix_temperature(solids, solids_at, water, water_at, ice);
  }
};

Ingredients ingredients(const PublishedCase& one) {
  const Mass cement = mass_of(one, "cement"), aggregate = mass_of(one, "aggregate");
  const double share = cement / (cement + aggregate);
  const double at = temperature_of(one, "cement").in_c() * share +
                    temperature_of(one, "aggregate").in_c() * (1 - share);
  const bool iced = one.has_input("ice");
  return {
      cement + aggregate,       mass_of(one, "water"),        iced ? mass_of(one, "ice") : Mass{},
      Temperature::celsius(at), temperature_of(one, "water"), share};
}

Answers mixed(const PublishedCase& one) {
  return {{"T", ingredients(one).mixed()}};
}

Answers iced(const PublishedCase& one) {
  return {{"T", {ingredients(one).mixed(), ice_of_80}}};
}

Answers iced_in_c_and_f(const PublishedCase& one) {
  const Temperature mix = ingredients(one).mixed();
  return {{"T", {mix, ice_of_80}}, {"T_F", {mix, ice_of_80}}};
}

Temperature warmer(Temperature by_one_degree) {
  return Temperature::celsius(by_one_degree.in_c() + 1);
}

/// How much warmer one ingredient makes the mix 1 C warmer: the equation is linear.
Answers one_degree(const PublishedCase& one) {
  const Ingredients before = ingredients(one);
  Ingredients water = before, solids = before;
  water.water_at = warmer(before.water_at);
  solids.solids_at = warmer(before.solids_at);
  const auto needed = [&](const Ingredients& after) {
    return 1 / (after.mixed().in_c() - before.mixed().in_c());
  };
  return {{"water", needed(water)},
          {"cement", needed(solids) / before.cement_share},
          {"aggregate", needed(solids) / (1 - before.cement_share)}};
}

/// Heat that melting takes: what a kilogram of ice cools the mix more than one of water at 0 C.
Answers heat_of_fusion(const PublishedCase&) {
  constexpr double water_heat = 4.184;  // kJ/kg K
  const Temperature warm = Temperature::celsius(30), melting = Temperature::celsius(0);
  const Mass solids = kilograms(100), part = kilograms(1);
  const double liquid = fresh_mix_temperature(solids, warm, part, melting).in_c();
  const double frozen = fresh_mix_temperature(solids, warm, Mass{}, melting, part).in_c();
  const double kilojoules = (liquid - frozen) * (0.22 * 100 + 1) * water_heat;
  return {{"F_SI", kilojoules}, {"F_US", kilojoules / 2.326}};
}

}  // namespace

Asks fresh_mix_asks() {
  return {{"CT-01", mixed}, {"CT-02", iced},           {"CT-03", one_degree},     {"CT-04", mixed},
          {"CT-05", mixed}, {"CT-06", mixed},          {"CT-10", heat_of_fusion}, {"CT-07", mixed},
          {"CT-08", iced},  {"CT-09", iced_in_c_and_f}};
}

}  // namespace strikeoff::test
