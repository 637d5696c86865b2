// SPDX-License-Identifier: MIT
#include "core/format.h"
#include "plan/tasks.h"
#include "site/wet_cure.h"

namespace strikeoff {

std::string add_wet_cure(const Job& job, const Plan& /*plan*/, const std::string& after,
                         const Moment& start, TaskList& tasks) {
  tasks.begin_phase("wet cure");
  const std::string task =
      is_ordinary(job.mix)
          ? "Keep the top wet for 7 days: damp cloth under the sheet, at 50 F (10 C) or warmer"
          : "Keep the top wet for an hour, or as long as the bag's data sheet says: sprinkle "
            "when the surface is hard, sheet over it";
  Moment end;
  if (start) end = *start + wet_cure(job.mix);
  return tasks.add_after({after}, task, who_has(job.crew, Role::finish), start, end);
}

}  // namespace strikeoff
