// SPDX-License-Identifier: MIT
#include "checks/trowel_check.h"

#include <fmt/core.h>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "pour/finishing.h"
#include "pour/lone_finisher.h"
#include "pour/setting.h"

namespace strikeoff {
namespace {

/// One person's time for two passes over the whole top at this pace.
Duration passes(const Plan& plan, double minutes_per_m2) {
  Area top;
  for (const SlabPlan& slab : plan.slabs) top += slab.top_area;
  return minutes(top.si() * minutes_per_m2 * trowel_passes);
}

/// Who could trowel it in time, and when those of today are free.
std::string more_finishers(const Job& job, const Plan& plan, Duration stiff, Duration final_set) {
  const Finishers who = finishers(job.crew, plan.pour);
  std::string text;
  if (who.free_at_once < who.people) {
    text += fmt::format(" {} only when the pour ends, at {}.",
                        who.free_at_once > 0 ? "Some of them are free" : "They are free",
                        show_clock(who.others_free));
  }
  const auto fewest = fewest_finishers(plan.batches, stiff, final_set);
  if (!fewest) return text + " At the slow pace not even 20 people would do.";
  return text + fmt::format(" {} would do at the slow pace.",
                            *fewest == 1 ? "1 person who only finishes"
                                         : fmt::format("{} people who only finish", *fewest));
}

}  // namespace

Check trowelling(const Job& job, const Plan& plan) {
  const Setting times = setting(job, plan.pour);
  Check check;
  check.code = "trowel-window";
  check.basis = basis("trowel-window");
  if (!times.stiff || !times.final_set) {
    check.level = Level::caution;
    check.title = "How long the top can be trowelled is not known";
    check.advice =
        "Stay with it: start when a finger leaves only a light mark; the bag's data "
        "sheet or a test piece tells when it is too hard.";
    return check;
  }
  const Duration stiff = *times.stiff, final_set = *times.final_set;
  const Finishers who = finishers(job.crew, plan.pour);
  const auto age = [&](double pace) {
    return oldest(plan.batches, trowel_in_order(plan.batches, stiff, who, pace));
  };
  const Duration slow = age(slow_trowel);
  check.title = trowel_at_once(plan, stiff, final_set, who)
                    ? "The whole top can be trowelled at once"
                    : "There is time to trowel zone by zone, in the order of the batches";
  check.value = in_minutes(slow);
  check.limit = in_minutes(final_set);
  check.unit = "min";
  if (slow <= final_set + rounding) {
    if (lone_finisher(job.crew, plan, stiff, final_set, usual_trowel) == Lone::does_not_fit) {
      check.level = Level::caution;
      check.title = "One person cannot strike off and trowel at the same time";
      check.advice =
          "The first zones must be trowelled while the last ones are placed and struck off, and "
          "only one person finishes: find a second one, if only to strike off.";
    }
    return check;
  }

  const std::string work = fmt::format(
      "Two passes over the whole top are {} to {} of work for {}, and each zone has {} before its "
      "final set.",
      show(passes(plan, quick_trowel) / who.people), show(passes(plan, slow_trowel) / who.people),
      count(who.people, "person", "people"), show(final_set - stiff));
  if (final_set <= stiff) {
    check.level = Level::stop;
    check.title = "No time to trowel: the mix is at its final set when its working time ends";
    check.advice = "Check working_time and final_set against the bag's data sheet.";
  } else if (!can_be_trowelled(plan.batches, stiff, final_set)) {
    check.level = Level::stop;
    check.title = "The top sets before it can be trowelled";
    check.advice = work +
                   " Not even 20 quick people would do: use a mix that sets later, or "
                   "colder water.";
  } else {
    const Duration quick = age(quick_trowel);
    check.level = Level::caution;
    check.title = "The top may set before it is trowelled";
    check.advice = work + fmt::format(" At the slow pace the worst zone is {} too late",
                                      show(slow - final_set));
    check.advice += quick > final_set + rounding
                        ? fmt::format(", at the quick one still {}.", show(quick - final_set))
                        : "; at the quick one it is in time.";
    if (lone_finisher(job.crew, plan, stiff, final_set, slow_trowel) == Lone::fits) {
      check.advice += " Trowelling between batches, whenever there is time, it can just be done.";
    }
    check.advice += more_finishers(job, plan, stiff, final_set);
  }
  return check;
}

}  // namespace strikeoff
