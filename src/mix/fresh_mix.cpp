// SPDX-License-Identifier: MIT
#include "mix/fresh_mix.h"

#include <algorithm>

namespace strikeoff {
namespace {

constexpr double melting = 79.7;  // K
constexpr double dry_heat = 0.22;

}  // namespace

Temperature fresh_mix_temperature(Mass bag, Temperature bag_temperature, Mass water,
                                  Temperature water_temperature, Mass ice) {
  const double dry = dry_heat * bag.si(), wet = water.si();
  const double coldest = std::min({0.0, bag_temperature.in_c(), water_temperature.in_c()});
  const double mixed =
      (dry * bag_temperature.in_c() + wet * water_temperature.in_c() - melting * ice.si()) /
      (dry + wet + ice.si());
  return Temperature::celsius(std::max(mixed, coldest));
}

std::optional<Chill> chill_to(Temperature wanted, Mass bag, Temperature bag_temperature, Mass water,
                              Mass ice) {
  const double dry = dry_heat * bag.si(), wet = water.si();
  const double bags = dry * bag_temperature.in_c();
  const double heat = (dry + wet) * wanted.in_c() - bags;  // that water and ice must bring
  const double c = (heat + melting * ice.si()) / (wet - ice.si());
  if (c > hottest_water.in_c()) return std::nullopt;
  if (c >= coldest_water.in_c()) return Chill{Temperature::celsius(c), ice};
  const double melt = (wet * coldest_water.in_c() - heat) / (coldest_water.in_c() + melting);
  if (melt > most_ice * wet) return std::nullopt;
  return Chill{coldest_water, kilograms(melt)};
}

}  // namespace strikeoff
