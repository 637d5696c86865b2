// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "core/format.h"
#include "plan/tasks.h"

namespace strikeoff {
namespace {

/// Nobody knows how long forms take; the day before is one moment, and the order is what counts.
constexpr Duration day_before = days(-1);

bool has_role(const Plan& plan, std::string_view role) {
  return std::any_of(plan.cut_list.parts.begin(), plan.cut_list.parts.end(),
                     [&](const Part& part) { return part.role == role; });
}

bool has_panel(const Job& job) {
  return std::any_of(job.slabs.begin(), job.slabs.end(),
                     [](const Slab& slab) { return slab.panel.has_value(); });
}

bool any_slab_needs(const Plan& plan, Length FormQuantities::*work) {
  return std::any_of(plan.slabs.begin(), plan.slabs.end(),
                     [&](const SlabPlan& slab) { return slab.forms.*work > Length{}; });
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

/// Forms and panels, each only where the job has them.
std::vector<std::string> form_tasks(const Job& job, const Plan& plan) {
  std::vector<std::string> tasks;
  const auto when = [&](bool needed, const char* task) {
    if (needed) tasks.emplace_back(task);
  };
  when(!plan.cut_list.boards.empty() || !plan.cut_list.sheets.empty(),
       "Rip, then crosscut the parts; write the mark on each");
  when(has_panel(job), "Bed the panels and screw them to the base");
  when(any_slab_needs(plan, &FormQuantities::seams), "Seal and tape the seams between panels");
  when(any_slab_needs(plan, &FormQuantities::ledger),
       "Screw ledger battens to the base's face where a soffit strip has too little panel above it "
       "for screws, and under knock-outs");
  when(has_role(plan, "soffit strip") || has_role(plan, "soffit panel"),
       "Fix the soffit strips, flush with the top of the base");
  when(has_role(plan, "edge strip"), "Fix the edge strips, screws from the outside");
  when(has_role(plan, "knock-out strip") || has_role(plan, "knock-out block"),
       "Fix the knock-outs of the openings");
  when(true, "Check level, heights and both diagonals; mend before sealing");
  when(true, "Seal the form joints from inside; let the sealant cure as its label says");
  when(has_role(plan, "edge strip"), "Tape the cut faces of the edge strips");
  when(true, "Wipe a thin coat of release agent on the form faces, none on panel or base");
  return tasks;
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
  tasks.add(fmt::format("Weigh out the water of {}, or mark the bucket; lay the batches out in "
                        "order",
                        count(plan.pour.batches, "batch", "batches")),
            who_has(job.crew, Role::mix), weighed - weighing, weighed);
  if (doses) {
    tasks.add("Lay the doses out beside each batch, counted", who_has(job.crew, Role::mix), weighed,
              ready);
  }
  tasks.add("Put on gloves, goggles, dust mask and long sleeves", "everyone", ready, dressed);
  if (has_panel(job)) {
    tasks.add("Wet the panels: damp all over, no pools", who_has(job.crew, Role::place), dressed,
              wet);
  }
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
