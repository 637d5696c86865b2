// SPDX-License-Identifier: MIT
#pragma once

#include <utility>

#include "mix/mix.h"
#include "pour/pour.h"
#include "strikeoff/odds.h"
#include "support/pour_job.h"

namespace strikeoff::test {

/// The pour of a long slab in this many batches of one bag, planned without forms and checks.
inline Plan a_pour_plan(Job job, int batches) {
  SlabPlan slab =
      a_slab(Length::inches(10.0 * batches), Length::inches(26.25), Length::inches(1.75));
  slab.concrete = job.mix.yield * ((batches - 0.5) / (1 + job.waste));
  Plan plan;
  plan.mix = plan_mix(job, slab.concrete);
  plan.slabs = {std::move(slab)};
  job.slabs = slabs_of(plan.slabs);
  Pour pour = plan_pour(job, plan.slabs, plan.mix);
  plan.mix.doses = dose_totals(job, plan.mix, pour.retarder);
  plan.pour = std::move(pour.plan);
  plan.batches = std::move(pour.batches);
  return plan;
}

/// Nothing strays from the plan.
inline Spreads no_spreads() {
  Spreads none;
  none.working_time = none.crew_pace = none.mix_temperature_c = none.batch_working_time = 0;
  none.drill_stop = none.yield = none.volume = none.loss_usual = none.loss_bad = 0;
  return none;
}

}  // namespace strikeoff::test
