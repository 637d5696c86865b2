// SPDX-License-Identifier: MIT
#include "plan/tasks.h"

namespace strikeoff {
namespace {

/// ASTM D4263: 18 in (457 mm) square of clear sheet, 16 h or more.
Done add_drying(const std::vector<Done>& follows, const std::string& who, TaskList& tasks) {
  std::vector<std::string> after;
  Moment start = follows.front().at;
  for (const Done& step : follows) {
    after.push_back(step.task);
    start = later(start, step.at);
  }
  Moment end;
  if (start) end = *start + hours(16);
  return {tasks.add_after(std::move(after),
                          "Let it dry: tape down a clear sheet 18 in (457 mm) square for 16 h; do "
                          "not seal while damp gathers under it (a dry sheet does not prove a dry "
                          "slab)",
                          who, start, end),
          end};
}

}  // namespace

Done add_sanding(const Job& job, const Plan& plan, const std::vector<Done>& follows,
                 TaskList& tasks) {
  return add_step(follows, "sand", "Sand top and edges, wet or with a vacuum, mask on",
                  who_has(job.crew, Role::finish), plan, tasks);
}

Done add_sealing(const Job& job, const Plan& plan, const std::vector<Done>& follows,
                 TaskList& tasks) {
  const std::string who = who_has(job.crew, Role::finish);
  const Done dry = add_drying(follows, who, tasks);
  return add_step({dry}, "seal", "Seal, two thin coats", who, plan, tasks);
}

}  // namespace strikeoff
