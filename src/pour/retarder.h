// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"

namespace strikeoff {

/// What the joints ask of the working time.
struct Demand {
  Duration wait;    // worst edge wait
  Duration age;     // of a batch when it is placed: the lead
  Duration margin;  // asked for on top
  /// The larger of wait and age, with the margin.
  [[nodiscard]] Duration usable() const { return (wait > age ? wait : age) + margin; }
};

/// True when the usable time covers the demand, give or take 1e-9 min.
[[nodiscard]] bool covers(Duration usable, const Demand& demand);

/// The retarder whose dose is "auto": the first one; null when there is none.
[[nodiscard]] const Additive* auto_retarder(const Job& job);

/// Doses per bag of all retarders together, the "auto" one at `dose`.
[[nodiscard]] double retarder_doses(const Job& job, double dose);

/// Working time before the temperature factor, the "auto" retarder at `dose`. Several retarders:
/// the minutes each would gain alone over `plain` add up (assumption: products are not known to
/// help or hinder each other).
[[nodiscard]] Duration retarded_by_all(const Job& job, Duration plain, double dose);

/// The most doses per bag an "auto" retarder may have: its `most`; else the last dose its factors
/// speak of; else four (common practice, no source).
[[nodiscard]] double most_doses(const Additive& retarder);

/// The least dose of the "auto" retarder, in its steps, that makes the usable time cover the
/// demand; else the largest it may have. More retarder is taken never to shorten the time.
/// `factor` is for temperature. Precondition: there is an "auto" retarder.
[[nodiscard]] double least_dose(const Job& job, Duration plain, double factor,
                                const Demand& demand);

}  // namespace strikeoff
