// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Whether one person can strike off, trowel and, where that is theirs too, place, one at a time.
enum class Lone {
  not_alone,    // several finish, or nobody
  no_conflict,  // all is struck off before the first zone can be trowelled
  fits,         // in some order everything is in time
  does_not_fit,
  not_known  // too many orders to try them all
};

/// By the plan's own water and placing times. Zone i is struck off, 1 min per m2 (assumption), once
/// the zones it meets are placed, before its batch's usable time is over where that is possible at
/// all; it is trowelled, both passes in one go, between `stiff` and `final_set` after its contact.
/// Both go from zone to zone in order; every order of the two among each other and with placing is
/// tried, earliest first, up to a bound. Who also mixes or carries is free when the pour ends.
[[nodiscard]] Lone lone_finisher(const Crew& crew, const Plan& plan, Duration stiff,
                                 Duration final_set, double minutes_per_m2);

}  // namespace strikeoff
