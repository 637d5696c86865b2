// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "pour/timetable.h"
#include "strikeoff/job.h"
#include "strikeoff/pour_log.h"

namespace strikeoff {

/// A pour that is under way.
struct Underway {
  std::vector<LoggedBatch> begun;  // 1, 2, 3, …
  Duration now;
};

/// When each batch goes through the hands: those begun as they did, the rest as soon as the crew
/// can, not before `now`. Of the joints to batches that have no water yet, those within the rest
/// wait least (but `least` is good enough), then those at the present wet edge; then the pour ends
/// first; then water goes in as late as that allows. The rules are those of
/// `least_wait_timetable`; more than 60 batches keep a steady beat. A batch that is not placed yet
/// is placed as soon as it can be, not before `now`. Precondition: someone mixes, carries and
/// places; batches >= the number begun >= 1.
[[nodiscard]] std::vector<BatchTimes> rest_times(const Crew& crew, const Underway& pour,
                                                 int batches, const std::vector<Touch>& touches,
                                                 Duration least);

}  // namespace strikeoff
