// SPDX-License-Identifier: MIT
#include "loads/slab_loads.h"

#include <algorithm>

#include "hardening/hardening.h"
#include "loads/bearing.h"
#include "loads/cantilever.h"
#include "pour/crew.h"

namespace strikeoff {
namespace {

Mass batch_mass(const Batch& batch) {
  return batch.dry + batch.water_mass + batch.ice;
}

}  // namespace

SlabLoads load_slab(const Job& job, const Plan& plan, std::size_t index) {
  const Slab& slab = job.slabs[index];
  const SlabPlan& planned = plan.slabs[index];
  const Length strip = job.forms.strip_stock.front().thickness;
  SlabLoads loads;
  loads.fresh = planned.concrete * plan.mix.fresh_density;
  for (const Batch& batch : plan.batches) loads.batch = std::max(loads.batch, batch_mass(batch));
  loads.people = holders(job.crew.people, Role::place);
  loads.people_mass = person_mass * loads.people;
  const Mass beside = loads.batch + loads.people_mass;
  loads.pour_day = loads.fresh + beside;
  loads.pour_day_load =
      Pressure::from_si(loads.pour_day.si() * standard_gravity / signed_area(slab.base).si());
  if (slab.support == Support::ground) return loads;
  loads.bearings = bearings(slab, planned, strip);
  for (Bearing& bearing : loads.bearings) {
    bearing.pour_day = loads.fresh * (bearing.mass / planned.mass) + beside;
  }
  loads.worst = worst_cantilever(slab, planned, job.mix, strip);
  if (loads.worst) {
    const Pressure needed = compressive_for(loads.worst->stress() / stress_share_good);
    loads.worst->lean_from = when_strong(job, plan.pour, needed);
  }
  return loads;
}

}  // namespace strikeoff
