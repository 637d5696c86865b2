// SPDX-License-Identifier: MIT
#pragma once

#include <array>

#include "strikeoff/job.h"

namespace strikeoff {

/// The air of a day and a night, the same every day: at each full hour of the local clock.
struct AirCycle {
  std::array<Temperature, 24> at;
  [[nodiscard]] Temperature coldest() const;
  [[nodiscard]] Temperature warmest() const;
  /// Of the 24.
  [[nodiscard]] Temperature mean() const;
};

/// The air around the clock, from what the job says of the site:
/// - its hours, straight lines between them; of an hour that comes twice, the colder. Hours that
///   the list leaves open lie on a line through the night's coldest, at 05:00 if that is one of
///   them; without a night they are as cold as the coldest hour of the list (assumption);
/// - else its air, at 15:00, and its night, at 05:00, and half a cosine each way (assumption);
/// - else its air, all day long.
[[nodiscard]] AirCycle air_cycle(const Site& site);

/// When the pour begins, after local midnight: noon where the job does not say (assumption).
[[nodiscard]] Duration start_of_pour(const Job& job);

}  // namespace strikeoff
