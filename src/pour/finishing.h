// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

// Striking off and trowelling as work: minutes of the people who have that role.

/// Minutes per m2 of one pass with the trowel: starting values for a form without data
/// (assumption).
inline constexpr double quick_trowel = 4, usual_trowel = 6, slow_trowel = 8;
/// Passes over the top (assumption).
inline constexpr int trowel_passes = 2;

/// The people who finish. Who also mixes, carries or places is free at the end of the pour.
struct Finishers {
  int people = 1;
  int free_at_once = 1;  // of these, those who only finish
  Duration others_free;  // when the rest joins them
};

/// With nobody to finish, one person who only finishes stands in: the crew is judged elsewhere.
[[nodiscard]] Finishers finishers(const Crew& crew, const PourPlan& pour);

/// When work is done, from the first water contact.
struct Stint {
  Duration start, end;
};

/// Both passes of each zone in the order of the batches, at this many minutes per m2 and pass. A
/// zone can be begun when it is placed and its batch is `stiff`. All finishers work on one zone at
/// a time. Zones come ready and set in the same order, so no other order has a smaller worst
/// lateness (swapping two neighbours into it never hurts: earliest due date, Jackson 1955, from
/// memory).
[[nodiscard]] std::vector<Stint> trowel_in_order(const std::vector<Batch>& batches, Duration stiff,
                                                 const Finishers& finishers, double minutes_per_m2);

/// The age of the oldest mix when its last pass ends.
[[nodiscard]] Duration oldest(const std::vector<Batch>& batches, const std::vector<Stint>& spans);

/// Both passes over the whole top at the usual pace, from when its last zone can be begun; nothing
/// when a slow pace would end after the first batch's `final_set`.
[[nodiscard]] std::optional<Stint> trowel_at_once(const Plan& plan, Duration stiff,
                                                  Duration final_set, const Finishers& finishers);

/// The fewest people, of at most 20 who only finish, that trowel every zone before its final set
/// even at a slow pace.
[[nodiscard]] std::optional<int> fewest_finishers(const std::vector<Batch>& batches, Duration stiff,
                                                  Duration final_set);
/// False when not even 20 quick people could.
[[nodiscard]] bool can_be_trowelled(const std::vector<Batch>& batches, Duration stiff,
                                    Duration final_set);

/// Who strikes off: who finishes; where nobody does, who places.
[[nodiscard]] Role strike_off_role(const Crew& crew);

/// How long the largest zone takes to strike off: 1 min per m2 (assumption).
[[nodiscard]] Duration strike_off_time(const std::vector<Batch>& batches);

/// What the freest of those who strike off has left between two batches; nothing when nobody has
/// the role. Negative where takt is not that of this crew.
[[nodiscard]] std::optional<Duration> strike_off_spare(const Crew& crew, Duration takt);

}  // namespace strikeoff
