// SPDX-License-Identifier: MIT
#include "strikeoff/planner.h"

#include <algorithm>

#include "checks/checks.h"
#include "cutting/cut_list.h"
#include "cutting/stocks.h"
#include "hardening/hardening.h"
#include "loads/control_joints.h"
#include "loads/handling.h"
#include "loads/slab_loads.h"
#include "loads/steel.h"
#include "mix/mix.h"
#include "plan/covered.h"
#include "plan/finish.h"
#include "plan/materials.h"
#include "plan/ready_by.h"
#include "plan/schedule.h"
#include "pour/joint_ends.h"
#include "pour/pour.h"
#include "pour/remedies.h"
#include "pour/search.h"
#include "site/site.h"
#include "slab/marks.h"
#include "slab/measure.h"
#include "slab/panels.h"
#include "slab/strips.h"

namespace strikeoff {
namespace {

std::vector<SlabPlan> measure_slabs(const Job& job) {
  std::vector<SlabPlan> slabs;
  for (const Slab& slab : job.slabs) {
    slabs.push_back(measure_slab(slab, job.forms.strip_stock.front().thickness));
  }
  return slabs;
}

/// Works out the form parts and panels of each slab; the parts are collected for the saw.
std::vector<Part> plan_forms(const Job& job, Density fresh, std::vector<SlabPlan>& slabs) {
  MarkCounter marks;
  std::vector<Part> parts;
  for (std::size_t i = 0; i < slabs.size(); ++i) {
    const Slab& slab = job.slabs[i];
    SlabPlan& planned = slabs[i];
    FormWork forms = form_work(slab, planned, job.forms, fresh, marks);
    PanelLayout panels = lay_panels(slab, planned, job.forms.kerf, marks);
    planned.forms = forms.quantities;
    planned.sides = std::move(forms.sides);
    planned.strip_thickness = job.forms.strip_stock.front().thickness;
    planned.forms.seams = panels.seams;
    planned.forms.loose_seams = panels.unsupported;
    planned.forms.split_seams = panels.in_openings;
    planned.forms.panel = cut_panel_area(slab, planned);
    planned.panels = std::move(panels.pieces);
    parts.insert(parts.end(), forms.parts.begin(), forms.parts.end());
    parts.insert(parts.end(), panels.parts.begin(), panels.parts.end());
  }
  return parts;
}

/// Weighs each slab by its own density, else the fresh mix's, over the area of its base.
void weigh(const Job& job, Density fresh, std::vector<SlabPlan>& slabs) {
  for (std::size_t i = 0; i < slabs.size(); ++i) {
    slabs[i].mass = slabs[i].concrete * job.slabs[i].density.value_or(fresh);
    slabs[i].base_load = Pressure::from_si(slabs[i].mass.si() * standard_gravity /
                                           signed_area(job.slabs[i].base).si());
  }
}

/// What lies on each slab's base, its steel and its joints.
void load_slabs(const Job& job, Plan& plan) {
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    const Slab& slab = job.slabs[i];
    SlabPlan& planned = plan.slabs[i];
    planned.loads = load_slab(job, plan, i);
    planned.steel = plan_steel(slab, planned, job.mix);
    if (slab.support == Support::ground) {
      planned.control_joints = control_joints(slab, planned, job.mix);
    }
  }
}

/// When the edge of each batch that a later one touches must be met.
void set_edge_deadlines(const PourPlan& pour, double usable_share, std::vector<Batch>& batches) {
  if (!pour.usable) return;
  for (Batch& batch : batches) {
    const bool meets_later = std::any_of(batch.neighbours.begin(), batch.neighbours.end(),
                                         [&](int other) { return other > batch.number; });
    if (meets_later) batch.meet_by = batch.contact + *pour.usable + batch.longer * usable_share;
  }
}

/// A tapered retarder: what its batches take, and per bag as much as the first one.
void add_up_taper(const Job& job, const std::vector<Batch>& batches,
                  std::vector<DoseTotal>& doses) {
  for (std::size_t i = 0; i < doses.size(); ++i) {
    if (!job.additives[i].taper || batches.empty()) continue;
    const BatchDose& first = batches.front().doses[i];
    DoseTotal& dose = doses[i];
    dose.total = 0;
    for (const Batch& batch : batches) dose.total += batch.doses[i].doses;
    dose.per_bag = first.doses / batches.front().bags;
    dose.amount_per_bag = amount_of(dose.per_bag, dose_size(job.additives[i], job.mix));
    dose.falls = batches.back().doses[i].doses < first.doses;
  }
}

Volume concrete_of(const std::vector<SlabPlan>& slabs) {
  Volume concrete;
  for (const SlabPlan& slab : slabs) concrete += slab.concrete;
  return concrete;
}

}  // namespace

Job settled_job(const Job& given) {
  const std::vector<SlabPlan> slabs = measure_slabs(given);
  const MixPlan mix = plan_mix(given, concrete_of(slabs));
  const ZoneCutter cutter = zone_cutter(given, slabs);
  return settle(given, PourModel(given, mix, cutter)).job;
}

Plan make_plan(const Job& given, const Catalogue& catalogue) {
  Plan plan;
  plan.name = given.name;
  plan.date = given.date;
  plan.units = given.units;
  plan.currency = given.currency;
  plan.assumptions = given.assumptions;

  plan.slabs = measure_slabs(given);
  const Volume concrete = concrete_of(plan.slabs);
  const MixPlan any_batches = plan_mix(given, concrete);
  const ZoneCutter cutter = zone_cutter(given, plan.slabs);
  const PourModel model(given, any_batches, cutter);
  Settled settled = settle(given, model);
  const Job& job = settled.job;
  plan.mix = plan_mix(job, concrete);
  weigh(job, plan.mix.fresh_density, plan.slabs);

  std::vector<Part> parts = plan_forms(job, plan.mix.fresh_density, plan.slabs);
  plan.cut_list =
      cut_parts(std::move(parts), boards_of(job), sheets_of(job), job.on_hand, saw_of(job));

  Pour pour = plan_pour(job, plan.mix, model);
  plan.pour = std::move(pour.plan);
  plan.batches = std::move(pour.batches);
  name_ends(job.slabs, plan.slabs, plan.pour.joints);
  name_ends(job.slabs, plan.slabs, plan.pour.too_short);
  plan.pour.choices = std::move(settled.choices);
  plan.pour.remedies = remedies(job, model, plan.pour.joints);
  plan.pour.changes = changes(job, model);
  set_edge_deadlines(plan.pour, job.crew.usable, plan.batches);
  plan.mix.doses = dose_totals(job, plan.mix, pour.retarder);
  add_up_taper(job, plan.batches, plan.mix.doses);
  plan.site = plan_site(job, plan, covered_at(job, plan));

  plan.hardening = plan_hardening(job, plan.slabs, plan.pour, start_of_pour(job));
  plan.handling = plan_handling(job, plan);
  plan.finish = plan_finish(job, catalogue, plan.slabs);
  load_slabs(job, plan);

  plan.materials = list_materials(job, catalogue, plan);
  plan.also_ready = list_tools(job, plan);
  plan.cost = add_up(job, plan.materials);
  plan.schedule = make_schedule(job, plan);
  plan.hardening.start_by = latest_start(job, plan);
  plan.checks = run_checks(job, plan);
  return plan;
}

}  // namespace strikeoff
