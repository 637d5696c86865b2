// SPDX-License-Identifier: MIT
#include "plan/finish.h"

#include "plan/purchasing.h"

namespace strikeoff {
namespace {

constexpr double sanding_minutes_per_m2 = 10;  // one grit, a hand-held sander (assumption)
constexpr double coating_minutes_per_m2 = 4;   // one coat by roller or cloth (assumption)
constexpr double sealer_lost = 0.10;           // in roller, cloth and can (assumption)

/// One grit after the other goes over all that people see and touch.
std::vector<SandingPass> sanding_of(const Finish& finish, const Catalogue& catalogue, Area area) {
  const Supply& disc = supply(catalogue, "sanding-discs");
  std::vector<SandingPass> passes;
  for (const int grit : finish.grits) {
    passes.push_back({grit, area, minutes(sanding_minutes_per_m2 * area.si()),
                      whole_packs(area.si() * disc.rate)});
  }
  return passes;
}

void seal(const Sealer& sealer, Area area, FinishPlan& plan) {
  plan.sealer = sealer.name;
  plan.coats = sealer.coats;
  plan.sealed = area;
  plan.recoat = sealer.recoat;
  plan.coating = minutes(coating_minutes_per_m2 * area.si());
  plan.sealer_volume = sealer.pack * (sealer.coats * (area / sealer.covers) * (1 + sealer_lost));
}

}  // namespace

FinishPlan plan_finish(const Job& job, const Catalogue& catalogue,
                       const std::vector<SlabPlan>& slabs) {
  FinishPlan plan;
  for (const SlabPlan& slab : slabs) {
    plan.top += slab.top_area;
    plan.edges += (slab.perimeter - slab.forms.isolation) * slab.edge_thickness;
  }
  plan.fill_pits = job.finish.fill_pits;
  plan.sanding = sanding_of(job.finish, catalogue, plan.top + plan.edges);
  if (job.finish.sealer) seal(*job.finish.sealer, plan.top + plan.edges, plan);
  return plan;
}

}  // namespace strikeoff
