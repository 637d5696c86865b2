// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// When a batch stiffens and sets, from its own water contact; nothing where the bag does not say.
/// The factor of the working time is the cautious (short) side for both, so the trowel window is
/// not drawn longer than the label supports.
struct Setting {
  std::optional<Duration> stiff;      // the working time is over: the first trowel pass may begin
  std::optional<Duration> final_set;  // too hard to trowel
};

[[nodiscard]] Setting setting(const Job& job, const PourPlan& pour);

/// What the retarder adds to the working time, W - W0 x temperature factor, and so to every later
/// time; none where the working time is not known.
[[nodiscard]] Duration retarder_delay(const Mix& mix, const PourPlan& pour);

/// True when the whole top may be struck off once, after the last batch: the oldest mix is still
/// usable then. False where the working time is not known, unless there is only one batch.
[[nodiscard]] bool strikes_off_at_end(const PourPlan& pour);

}  // namespace strikeoff
