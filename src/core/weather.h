// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// The weather at a time after midnight: on straight lines between the hours, and before the first
/// and after the last as there. Precondition: there is an hour.
[[nodiscard]] HourWeather weather_at(const std::vector<HourWeather>& hours,
                                     Duration after_midnight);

/// "15:00", from minutes after midnight; a day later is the same time again.
[[nodiscard]] std::string show_time(std::chrono::minutes after_midnight);

}  // namespace strikeoff
