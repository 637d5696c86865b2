// SPDX-License-Identifier: MIT
#include "pour/hardening.h"

#include <algorithm>

#include "pour/working_time.h"

namespace strikeoff {
namespace {

/// Portland pastes need 35 to 42 kJ/mol, ASTM C1074 suggests 40 to 45 (from memory).
constexpr MolarEnergy usual_activation_energy = kilojoules_per_mole(40);

std::optional<Duration> scaled(const std::optional<Duration>& label, double factor,
                               Duration delay) {
  if (!label) return std::nullopt;
  return *label * factor + delay;
}

}  // namespace

Hardening hardening(const Job& job, const PourPlan& pour) {
  const Mix& mix = job.mix;
  Duration delay;
  if (pour.working_time && mix.working_time) {
    delay = *pour.working_time - *mix.working_time * pour.temperature_factor;
  }
  // Hours and days after the pour a thin slab has taken the temperature of the air, whatever the
  // water was.
  const double factor =
      std::max(1.0, temperature_factor(job.site.air, mix.at,
                                       mix.activation_energy.value_or(usual_activation_energy)));
  Hardening times;
  times.stiff = pour.working_time;
  times.final_set = scaled(mix.final_set, pour.temperature_factor, delay);
  times.strip = scaled(mix.strip_after, factor, delay);
  times.sand = scaled(mix.sand_after, factor, delay);
  times.seal = scaled(mix.seal_after, factor, delay);
  times.full_service = scaled(mix.full_service, factor, delay);
  times.cold_factor = factor;
  return times;
}

bool strikes_off_at_end(const PourPlan& pour) {
  // 1e-9 min: timetables add and multiply minutes.
  return pour.batches == 1 || (pour.usable && pour.end <= *pour.usable + minutes(1e-9));
}

}  // namespace strikeoff
