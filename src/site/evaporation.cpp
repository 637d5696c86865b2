// SPDX-License-Identifier: MIT
#include "site/evaporation.h"

#include <algorithm>
#include <cmath>

#include "site/humidity.h"

namespace strikeoff {
namespace {

double in_kilometres_per_hour(Speed speed) {
  return speed / kilometres_per_hour(1);
}

}  // namespace

EvaporationRate evaporation_uno(Temperature concrete, Temperature air, double humidity,
                                Speed wind) {
  // Uno, ACI Materials Journal 95 (1998), title 95-M34, the SI form as printed; it reads about 4 %
  // lower than the same paper's inch-pound form. Formula from memory, title page read.
  const auto vapour = [](Temperature t) { return std::pow(std::max(t.in_c() + 18, 0.0), 2.5); };
  const double rate =
      5 * (vapour(concrete) - humidity * vapour(air)) * (in_kilometres_per_hour(wind) + 4) * 1e-6;
  return kilograms_per_m2_h(std::max(rate, 0.0));
}

EvaporationRate evaporation_menzel(Temperature concrete, Temperature dew_point, Speed wind) {
  // Menzel, "Causes and prevention of crack development in plastic concrete", Portland Cement
  // Association 1954, the SI form as printed; from memory.
  const double dryness =
      in_kilopascals(saturation_pressure(concrete) - saturation_pressure(dew_point));
  const double rate = 0.315 * dryness * (0.253 + 0.060 * in_kilometres_per_hour(wind));
  return kilograms_per_m2_h(std::max(rate, 0.0));
}

}  // namespace strikeoff
