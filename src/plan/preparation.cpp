// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "plan/tasks.h"

namespace strikeoff {
namespace {

/// Nobody knows how long forms take; the day before is one moment, and the order is what counts.
constexpr Duration day_before = days(-1);

bool has_panel(const Job& job) {
  return std::any_of(job.slabs.begin(), job.slabs.end(),
                     [](const Slab& slab) { return slab.panel.has_value(); });
}

bool has_ground(const Job& job) {
  return std::any_of(job.slabs.begin(), job.slabs.end(),
                     [](const Slab& slab) { return slab.support == Support::ground; });
}

bool has_doses(const Plan& plan) {
  return std::any_of(plan.mix.doses.begin(), plan.mix.doses.end(),
                     [](const DoseTotal& dose) { return dose.total > 0; });
}

std::string bucket_test(const Plan& plan) {
  const std::string doses = has_doses(plan) ? " and doses" : "";
  const std::string plan_uses = plan.pour.working_time
                                    ? "the plan uses " + show(*plan.pour.working_time)
                                    : "the bag does not say, so measure it before anything else";
  return fmt::format(
      "Bucket test: mix a little with the day's water{}; push a rod in and pull it out until the "
      "hole no longer closes: working time ____ min ({})",
      doses, plan_uses);
}

std::string rehearsal(const Times& times) {
  return fmt::format(
      "Timed rehearsal of one batch, dry: load ____ min ({}), mix ____ min ({}), carry ____ min "
      "({}), place ____ min ({}); the plan's minutes are in brackets",
      show(times.load.usual), show(times.mix.usual), show(times.carry.usual),
      show(times.place.usual));
}

void add_before_mixing(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("before mixing");
  // Room for each step, and 1.5 min a batch for weighing, are assumptions.
  const Duration ready = minutes(-20), dressed = minutes(-10), wet = minutes(-5);
  const bool doses = has_doses(plan);
  const Duration weighed = doses ? ready - minutes(5) : ready;
  const Duration weighing = std::max(minutes(15), minutes(1.5 * plan.pour.batches));
  const std::string spare = plan.mix.spare_bags > 0 ? ", the spare kept closed" : "";
  tasks.add(fmt::format("Lay everything within reach: {}{}, mixer, buckets, straightedge, floats, "
                        "clean water (from here on the minutes are estimates)",
                        count(plan.mix.bags, "bag", "bags"), spare),
            "everyone", weighed - weighing - minutes(20), weighed - weighing);
  const std::string water = plan.mix.water_temperature
                                ? fmt::format("; have it at {} by a thermometer when it goes in",
                                              show(*plan.mix.water_temperature, job.units))
                                : "";
  tasks.add(fmt::format("Weigh out the water of {}, or mark the bucket{}; lay the batches out in "
                        "order",
                        count(plan.pour.batches, "batch", "batches"), water),
            who_has(job.crew, Role::mix), weighed - weighing, weighed);
  if (doses) {
    tasks.add("Lay the doses out beside each batch, counted", who_has(job.crew, Role::mix), weighed,
              ready);
  }
  tasks.add("Put on gloves, goggles, dust mask and long sleeves", "everyone", ready, dressed);
  const std::string placers = who_has(job.crew, Role::place);
  if (has_panel(job)) tasks.add("Wet the panels: damp all over, no pools", placers, dressed, wet);
  if (has_ground(job)) tasks.add("Wet the ground: damp all over, no pools", placers, dressed, wet);
}

}  // namespace

void add_preparation(const Job& job, const Plan& plan, TaskList& tasks) {
  tasks.begin_phase("day before");
  tasks.add(bucket_test(plan), who_has(job.crew, Role::mix), day_before, day_before);
  tasks.add(rehearsal(job.crew.times), "everyone", day_before, day_before);
  for (std::string& task : form_tasks(job, plan)) {
    tasks.add(std::move(task), "one or two people", day_before, day_before);
  }
  add_before_mixing(job, plan, tasks);
}

}  // namespace strikeoff
