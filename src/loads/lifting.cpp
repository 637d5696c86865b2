// SPDX-License-Identifier: MIT
#include "loads/lifting.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace strikeoff {
namespace {

// Waters, Putz-Anderson, Garg: Applications Manual for the Revised NIOSH Lifting Equation (NIOSH
// Publication 94-110), metric form; the equation was read in a summary, the tables of FM and CM and
// the limits of H, V, D and A are from memory.

/// Hands below this lift "from low": columns of the tables of FM and CM.
constexpr Length low_hands = Length::mm(750);

double horizontal_multiplier(Length out) {
  if (out > Length::mm(630)) return 0;
  return std::min(1.0, Length::mm(250) / out);
}

double vertical_multiplier(Length from) {
  if (from > Length::mm(1750)) return 0;
  return 1 - 0.003 * std::abs(from.in_mm() - 750) / 10;  // a centimetre
}

double distance_multiplier(Length by) {
  if (by > Length::mm(1750)) return 0;
  if (by <= Length::mm(250)) return 1;
  return 0.82 + 4.5 / (by.in_mm() / 10);
}

double asymmetry_multiplier(double turn_deg) {
  return turn_deg > 135 ? 0 : 1 - 0.0032 * turn_deg;
}

/// One row of the manual's table 5: up to 1 h, 2 h and 8 h, hands from low and from 75 cm up.
struct FrequencyRow {
  double per_minute;
  std::array<double, 3> low, high;
};

constexpr std::array<FrequencyRow, 18> frequency_table = {{
    {0.2, {1.00, 0.95, 0.85}, {1.00, 0.95, 0.85}},
    {0.5, {0.97, 0.92, 0.81}, {0.97, 0.92, 0.81}},
    {1, {0.94, 0.88, 0.75}, {0.94, 0.88, 0.75}},
    {2, {0.91, 0.84, 0.65}, {0.91, 0.84, 0.65}},
    {3, {0.88, 0.79, 0.55}, {0.88, 0.79, 0.55}},
    {4, {0.84, 0.72, 0.45}, {0.84, 0.72, 0.45}},
    {5, {0.80, 0.60, 0.35}, {0.80, 0.60, 0.35}},
    {6, {0.75, 0.50, 0.27}, {0.75, 0.50, 0.27}},
    {7, {0.70, 0.42, 0.22}, {0.70, 0.42, 0.22}},
    {8, {0.60, 0.35, 0.18}, {0.60, 0.35, 0.18}},
    {9, {0.52, 0.30, 0.00}, {0.52, 0.30, 0.15}},
    {10, {0.45, 0.26, 0.00}, {0.45, 0.26, 0.13}},
    {11, {0.41, 0.00, 0.00}, {0.41, 0.23, 0.00}},
    {12, {0.37, 0.00, 0.00}, {0.37, 0.21, 0.00}},
    {13, {0.00, 0.00, 0.00}, {0.34, 0.00, 0.00}},
    {14, {0.00, 0.00, 0.00}, {0.31, 0.00, 0.00}},
    {15, {0.00, 0.00, 0.00}, {0.28, 0.00, 0.00}},
    {16, {0.00, 0.00, 0.00}, {0.00, 0.00, 0.00}},
}};

double value_of(const FrequencyRow& row, std::size_t column, Length from) {
  return from < low_hands ? row.low[column] : row.high[column];
}

}  // namespace

double LiftMultipliers::product() const {
  return horizontal * vertical * distance * asymmetry * frequency * coupling;
}

double frequency_multiplier(double per_minute, Duration lasting, Length from) {
  const std::size_t column = lasting <= hours(1) ? 0 : lasting <= hours(2) ? 1 : 2;
  const auto above =
      std::find_if(frequency_table.begin(), frequency_table.end(),
                   [&](const FrequencyRow& row) { return per_minute <= row.per_minute; });
  if (above == frequency_table.end()) return 0;
  const double high = value_of(*above, column, from);
  if (above == frequency_table.begin()) return high;
  const FrequencyRow& below = *(above - 1);
  const double share = (per_minute - below.per_minute) / (above->per_minute - below.per_minute);
  const double low = value_of(below, column, from);
  return low + (high - low) * share;
}

double coupling_multiplier(Coupling coupling, Length from) {
  switch (coupling) {
    case Coupling::good:
      return 1;
    case Coupling::fair:
      return from < low_hands ? 0.95 : 1;
    case Coupling::poor:
      break;
  }
  return 0.90;
}

LiftMultipliers lift_multipliers(const Lifting& lift) {
  return {horizontal_multiplier(lift.out),
          vertical_multiplier(lift.from),
          distance_multiplier(lift.by),
          asymmetry_multiplier(lift.turn_deg),
          frequency_multiplier(lift.per_minute, lift.lasting, lift.from),
          coupling_multiplier(lift.coupling, lift.from)};
}

Mass recommended_weight(const Lifting& lift) {
  return lift_constant * lift_multipliers(lift).product();
}

}  // namespace strikeoff
