// SPDX-License-Identifier: MIT
#include "plan/covered.h"

#include "pour/finishing.h"
#include "pour/setting.h"

namespace strikeoff {

std::optional<Duration> covered_at(const Job& job, const Plan& plan) {
  const Setting times = setting(job, plan.pour);
  if (plan.batches.empty()) return std::nullopt;
  if (!times.stiff) {
    if (!times.final_set) return std::nullopt;
    return plan.batches.back().contact + *times.final_set;
  }
  const Finishers who = finishers(job.crew, plan.pour);
  if (times.final_set) {
    if (const auto whole = trowel_at_once(plan, *times.stiff, *times.final_set, who)) {
      return whole->end;
    }
  }
  return trowel_in_order(plan.batches, *times.stiff, who, usual_trowel).back().end;
}

}  // namespace strikeoff
