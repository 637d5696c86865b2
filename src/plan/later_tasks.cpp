// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"
#include "pour/hardening.h"

namespace strikeoff {
namespace {

/// A step that waits for the bag's time: at that time where it is known, else as early as the
/// step before it, with words instead of a time.
std::string add_step(const std::string& after, const std::string& task, const std::string& who,
                     const std::optional<Duration>& from_pour_end, const Plan& plan,
                     Duration& earliest, TaskList& tasks) {
  const std::string silent =
      from_pour_end ? "" : "; when the bag's data sheet says, not before the label's time";
  if (from_pour_end) earliest = std::max(earliest, plan.pour.end + *from_pour_end);
  return tasks.add_after({after}, task + silent, who, earliest, earliest);
}

/// Mixes to strip after 12 h or more set like ordinary portland cement (assumption), and so does
/// a mix whose bag does not say.
bool is_ordinary(const Mix& mix) {
  return mix.strip_after.value_or(hours(12)) >= hours(12);
}

std::string add_wet_cure(const Job& job, const std::string& after, Duration start,
                         TaskList& tasks) {
  tasks.begin_phase("wet cure");
  // ACI 308R and ACI 318: 7 days moist for ordinary cement at 50 F (10 C) or warmer, from memory.
  // Rapid mixes: an hour wet from when the surface is hard is common practice, no source.
  const bool ordinary = is_ordinary(job.mix);
  const std::string task =
      ordinary ? "Keep the top wet for 7 days: damp cloth under the sheet, at 50 F (10 C) or warmer"
               : "Keep the top wet for an hour, or as long as the bag's data sheet says: sprinkle "
                 "when the surface is hard, sheet over it";
  return tasks.add_after({after}, task, who_has(job.crew, Role::finish), start,
                         start + (ordinary ? days(7) : hours(1)));
}

}  // namespace

void add_later(const Job& job, const Plan& plan, TaskList& tasks) {
  const Hardening times = hardening(job, plan.pour);
  const std::string trowelled = tasks.last().task;
  Duration earliest = tasks.last().end;
  const std::string cured = add_wet_cure(job, trowelled, earliest, tasks);
  const Duration cure_ends = tasks.last().end;

  tasks.begin_phase("later");
  const std::string finishers = who_has(job.crew, Role::finish);
  const std::string stripped =
      add_step(trowelled, "Strip the forms: screws out, ease the strips off, do not pry",
               "one or two people", times.strip, plan, earliest, tasks);
  const std::string sanded = add_step(stripped, "Sand top and edges, wet or with a vacuum, mask on",
                                      finishers, times.sand, plan, earliest, tasks);
  earliest = std::max(earliest, cure_ends);
  // ASTM D4263: 18 in (457 mm) square of clear sheet, 16 h or more.
  const std::string dry = tasks.add_after(
      {cured, sanded},
      "Let it dry: tape down a clear sheet 18 in (457 mm) square for 16 h; do not seal while damp "
      "gathers under it (a dry sheet does not prove a dry slab)",
      finishers, earliest, earliest);
  const std::string sealed =
      add_step(dry, "Seal, two thin coats", finishers, times.seal, plan, earliest, tasks);
  add_step(sealed, "First full use: loads, hot pans, people leaning on the edge", "everyone",
           times.full_service, plan, earliest, tasks);
}

}  // namespace strikeoff
