// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/quantity.h"

namespace strikeoff {

/// How well hands hold what they lift: handles are good, a full bag is fair, a slack bag is poor.
enum class Coupling { good, fair, poor };

/// One lift with both hands, done again and again. Lengths are not negative.
struct Lifting {
  Length out;             // of the hands before the ankles, H
  Length from;            // height of the hands over the floor as the lift begins, V
  Length by;              // the hands move so far up or down, D
  double turn_deg = 0;    // the load lies so far beside the front, A
  double per_minute = 0;  // F
  Duration lasting;       // of the work with these lifts; over 8 h counts as 8 h
  Coupling coupling = Coupling::good;
};

/// The revised NIOSH lifting equation's multipliers, 0 to 1; 0: no load is recommended.
struct LiftMultipliers {
  double horizontal = 1, vertical = 1, distance = 1, asymmetry = 1, frequency = 1, coupling = 1;
  [[nodiscard]] double product() const;
};

/// NIOSH Publication 94-110: what most healthy workers may lift with every multiplier at 1.
/// The manual's US form has 51 lb (23.1 kg).
inline constexpr Mass lift_constant = kilograms(23);

[[nodiscard]] LiftMultipliers lift_multipliers(const Lifting& lift);

/// FM by lifts a minute, how long they go on, and where the hands begin. Linear between the rows of
/// the table; 0 past its end.
[[nodiscard]] double frequency_multiplier(double per_minute, Duration lasting, Length from);

/// CM by how the load is held and where the hands begin.
[[nodiscard]] double coupling_multiplier(Coupling coupling, Length from);

/// Recommended weight limit: the constant times all multipliers. Mass over it is the lifting index.
[[nodiscard]] Mass recommended_weight(const Lifting& lift);

}  // namespace strikeoff
