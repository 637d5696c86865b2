// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "pour/crew.h"
#include "pour/retarder.h"
#include "pour/timetable.h"
#include "strikeoff/job.h"

namespace strikeoff {

// What the pour tells the crew, each as one whole sentence.

/// Why this dose of retarder, with the dose of the "auto" one where there is one; empty without a
/// retarder. `plain` is the working time before retarder and temperature, `factor` is for
/// temperature.
[[nodiscard]] std::string retarder_reason(const Job& job, const Pace& pace,
                                          std::optional<Duration> plain, double factor,
                                          const Demand& demand, double dose);

/// What tapering brings, to follow that: when batch 1 and when the last one is stiff, and their
/// doses.
[[nodiscard]] std::string taper_reason(Duration first_stiff, Duration last_stiff, double first,
                                       double last);

/// "1/2", "1 1/2", "0.3": quarters as a spoon or a scale has them.
[[nodiscard]] std::string in_quarters(double n);
/// "1/2 dose", "1 1/2 doses".
[[nodiscard]] std::string doses_in_words(double n);
/// "1/2 bag", "2 bags".
[[nodiscard]] std::string bags_in_words(double n);

/// When water goes into the next batch: so long after the previous one starts being placed, or
/// before it; where that differs from batch to batch, by the table. Where mixing `flat_out` (every
/// batch as soon as its mixer is free) makes the edges wait a minute longer or more, that too.
[[nodiscard]] std::string water_rule(const Timetable& table, Duration flat_out);
/// That instead, for a crew in which nobody has a needed role.
[[nodiscard]] std::string no_timetable(const Pace& pace);

/// The fewest people, up to 8, who can pour this with the job's mixers and this usable time,
/// sharing the work as in `consecutive_crews`; among equal numbers the crew with the fastest beat,
/// then the one that divides the work most.
[[nodiscard]] std::string smallest_crew(const Job& job, int gap, std::optional<Duration> usable);

/// How long the joints wait at this beat: gap x takt + lead; 0 when no two batches touch.
[[nodiscard]] Duration edge_wait(int gap, const Pace& pace);

}  // namespace strikeoff
