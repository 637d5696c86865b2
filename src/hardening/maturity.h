// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "mix/arrhenius.h"
#include "site/air_cycle.h"
#include "strikeoff/quantity.h"

namespace strikeoff {

// Age as the mix feels it. The Arrhenius rate of equivalent age is mix/arrhenius.h's.

/// Nurse-Saul maturity as a rate: max(0, (T - T0) / (Tref - T0)), 1 at the reference (ASTM C1074,
/// 6.2, from memory). Throws std::invalid_argument unless the reference is over the datum.
[[nodiscard]] double nurse_saul_rate(Temperature temperature, Temperature reference,
                                     Temperature datum);

/// Portland pastes need 35 to 42 kJ/mol (NIST); ASTM C1074 suggests 40 to 45 (from memory).
inline constexpr MolarEnergy usual_activation_energy = kilojoules_per_mole(40);
/// Below this nothing hardens: ASTM C1074's datum for ordinary cement without admixtures (from
/// memory), and about where its water freezes.
inline constexpr Temperature datum_temperature = Temperature::celsius(0);

/// How fast a mix hardens, against its label's temperature: the slower of Arrhenius and
/// Nurse-Saul, and never faster than the label (assumption); 0 at and below the datum.
[[nodiscard]] double hardening_rate(Temperature air, Temperature label,
                                    MolarEnergy activation_energy);

/// A time spent at one temperature.
struct AirSpell {
  Duration time;
  Temperature temperature;
};

/// The time at the reference temperature that ripens a mix as far as these spells do: the sum of
/// time x arrhenius_rate.
[[nodiscard]] Duration equivalent_age(const std::vector<AirSpell>& spells, Temperature reference,
                                      MolarEnergy activation_energy);

/// Turns a label's times into real ones, in air that goes up and down every day.
class AgeClock {
 public:
  /// Ages are counted from `start`, local time after any midnight, may be over a day.
  AgeClock(const AirCycle& air, Duration start, Temperature label, MolarEnergy activation_energy);
  /// The age at the label's temperature that this real age is worth; never more than it.
  [[nodiscard]] Duration equivalent(Duration age) const;
  /// The real age when this is reached; nothing when it takes over `longest`.
  [[nodiscard]] std::optional<Duration> reached(Duration equivalent) const;
  /// A day and a night against what they are worth, at least 1; nothing when nothing hardens.
  [[nodiscard]] std::optional<double> slowing() const;

  static constexpr Duration longest = days(365);

 private:
  std::array<double, 24> rate_{};  // around each full hour
  Duration start_;                 // after midnight, under a day
  Duration a_day_;                 // what a day and a night are worth
};

}  // namespace strikeoff
