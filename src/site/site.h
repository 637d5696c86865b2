// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Humidity where the job gives none: as dry as it may well be (assumption).
inline constexpr double driest_air = 0.30;

/// Rates from which care is needed, and from which the top cracks unless it is protected: caution
/// level FHWA-HRT-05-038; limit UFGS 03 30 00; both read.
inline constexpr EvaporationRate evaporation_caution = kilograms_per_m2_h(0.5);
inline constexpr EvaporationRate evaporation_stop = kilograms_per_m2_h(1.0);

/// Air in which a pour should not be begun (assumption for the cold; the heat is that of the mix).
inline constexpr Temperature coldest_start = Temperature::celsius(5);
inline constexpr Temperature hottest_start = Temperature::celsius(35);

/// The air over the fresh top and while it cures. Reads the plan's slabs, mix and pour. The top
/// lies bare from the first water until `covered`; nothing: nobody knows, and then every hour of
/// the job after the start counts.
[[nodiscard]] SitePlan plan_site(const Job& job, const Plan& plan,
                                 const std::optional<Duration>& covered);

}  // namespace strikeoff
