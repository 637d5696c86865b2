// SPDX-License-Identifier: MIT
#include "pour/setting.h"

namespace strikeoff {

Setting setting(const Job& job, const PourPlan& pour) {
  Setting times;
  times.stiff = pour.working_time;
  if (job.mix.final_set) {
    times.final_set = *job.mix.final_set * pour.temperature_factor + retarder_delay(job.mix, pour);
  }
  return times;
}

Duration retarder_delay(const Mix& mix, const PourPlan& pour) {
  if (!pour.working_time || !mix.working_time) return {};
  return *pour.working_time - *mix.working_time * pour.temperature_factor;
}

bool strikes_off_at_end(const PourPlan& pour) {
  // 1e-9 min: timetables add and multiply minutes.
  return pour.batches == 1 || (pour.usable && pour.end <= *pour.usable + minutes(1e-9));
}

}  // namespace strikeoff
