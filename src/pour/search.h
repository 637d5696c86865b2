// SPDX-License-Identifier: MIT
#pragma once

#include <tuple>
#include <vector>

#include "pour/pour_model.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

// Chooses what a job leaves open. Few values are open and each has few candidates, so all
// combinations are looked at by their beat, and the best few by their timetable.

struct Settled {
  Job job;  // nothing is open in it
  std::vector<SettledValue> choices;
};

/// A job with every open value chosen, and why. The best setup works; then whole bags; then the
/// least retarder, the fewest people, the fewest mixers, the shortest pour, the fewest bags; then
/// the least ice and the least cooling. When none works, the one with the most to spare. Without a
/// working time nothing can be compared: one bag, one mixer, one person for each open count.
[[nodiscard]] Settled settle(const Job& job, const PourModel& model);

/// The bags of a batch that may be chosen, rising: whole bags, and half a heavy one, up to what
/// the mixer holds, at most 12. Without a capacity 60 kg (132 lb) of dry mix (assumption: what a
/// drill turns in a tub).
[[nodiscard]] std::vector<double> bag_sizes(const Job& job, const MixPlan& mix);

/// The order above as a tuple, smaller is better.
using Rank = std::tuple<bool, double, bool, double, int, int, double, double, double, double>;
[[nodiscard]] Rank rank_of(const Setup& setup, const Outlook& outlook, const PourModel& model);

/// Every setup the job leaves open; the water is as the job has it where it is not open.
[[nodiscard]] std::vector<Setup> open_setups(const Job& job, const PourModel& model);

/// The least cooling, of those open, with which this crew needs the least retarder.
[[nodiscard]] Setup cooled(Setup setup, const Job& job, const PourModel& model);

}  // namespace strikeoff
