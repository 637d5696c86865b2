// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// What the air does to a fresh top that lies bare for a while.
struct BareSpell {
  HourWeather worst;  // where it dries fastest
  EvaporationRate evaporation;
  EvaporationRate warmed;  // the worst of a top that is as warm as the air where that is warmer
  Temperature dew_point;   // the highest
  Temperature warmest, coldest;
};

/// As a plan judges it: air whose humidity is assumed may be drier.
[[nodiscard]] double judged_humidity(const Site& site, double humidity);

/// From `from` to `to`, after midnight, of a top at this temperature. By the job's hours, looked at
/// every ten minutes and at each of them; without hours the site's weather.
[[nodiscard]] BareSpell bare_spell(const Site& site, Temperature top, Duration from, Duration to);

/// The fresh mix, where its bags have the air's temperature unless the job gives theirs.
[[nodiscard]] Temperature mix_in(const Job& job, const MixPlan& mix, Temperature air);

/// A pour begun at each full hour that the job's hours hold.
[[nodiscard]] std::vector<HourPlan> full_hours(const Job& job, const MixPlan& mix,
                                               const std::optional<Duration>& covered);

/// The hour with the least worst rate among those with nothing against them, the earliest of
/// equals; nothing when there is none.
[[nodiscard]] std::optional<std::chrono::minutes> best_hour(const std::vector<HourPlan>& hours);

}  // namespace strikeoff
