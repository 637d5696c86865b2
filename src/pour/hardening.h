// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// When the later work may begin; nothing where the bag does not say. The retarder's delay
/// W - W0 x temperature factor is in all of them.
struct Hardening {
  // From a batch's own water contact. The factor of the working time is the cautious (short)
  // side for both, so the trowel window is not drawn longer than the label supports.
  std::optional<Duration> stiff;      // the working time is over: the first trowel pass may begin
  std::optional<Duration> final_set;  // too hard to trowel
  // From the end of the pour (last batch placed). Cold air makes them longer; warmth never
  // shortens them (assumption), so they are the cautious (late) side.
  std::optional<Duration> strip, sand, seal, full_service;
  double cold_factor = 1;  // at least 1; what made the label's four times longer
};

[[nodiscard]] Hardening hardening(const Job& job, const PourPlan& pour);

/// True when the whole top may be struck off once, after the last batch: the oldest mix is still
/// usable then. False where the working time is not known, unless there is only one batch.
[[nodiscard]] bool strikes_off_at_end(const PourPlan& pour);

}  // namespace strikeoff
