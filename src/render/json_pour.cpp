// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

const char* kind_name(AdditiveKind kind) {
  switch (kind) {
    case AdditiveKind::retarder:
      return "retarder";
    case AdditiveKind::plasticizer:
      return "plasticizer";
    case AdditiveKind::fiber:
      return "fiber";
    case AdditiveKind::pigment:
      return "pigment";
  }
  return "";
}

/// A dose is measured by mass or by volume; the unit is in the key.
void add_amount(Json& object, const std::string& key,
                const std::variant<std::monostate, Mass, Volume>& amount) {
  if (const Mass* mass = std::get_if<Mass>(&amount)) object[key + "_kg"] = number(mass->si());
  if (const Volume* volume = std::get_if<Volume>(&amount)) {
    object[key + "_l"] = number(in_litres(*volume));
  }
}

Json dose_total(const DoseTotal& dose) {
  Json result = {{"name", dose.name},
                 {"kind", kind_name(dose.kind)},
                 {"per_bag", number(dose.per_bag)},
                 {"total", number(dose.total)}};
  add_amount(result, "amount_per_bag", dose.amount_per_bag);
  if (dose.falls) result["falls"] = true;
  return result;
}

Json batch_dose(const BatchDose& dose) {
  Json result = {{"name", dose.name}, {"doses", number(dose.doses)}};
  add_amount(result, "amount", dose.amount);
  return result;
}

Json zone(const Zone& zone) {
  return {{"slab", zone.slab}, {"outline_mm", points_mm(zone.outline)}, {"lift", zone.lift}};
}

Json joint_end(const JointEnd& end) {
  return {{"on", end.on}, {"from", end.from}, {"away_mm", number(end.away.in_mm())},
          {"inward_mm", number(end.inward.in_mm())}};
}

Json joint(const Joint& joint) {
  return {{"first", joint.first},
          {"second", joint.second},
          {"slab", joint.slab},
          {"length_mm", number(joint.length.in_mm())},
          {"line_mm", points_mm(joint.line)},
          {"ends", array(joint.ends, joint_end)},
          {"wait_min", number(in_minutes(joint.wait))}};
}

const char* word(Fronts fronts) {
  return fronts == Fronts::one ? "one" : fronts == Fronts::in_turn ? "in turn" : "shared";
}

Json short_contact(const Joint& contact) {
  return {{"first", contact.first},
          {"second", contact.second},
          {"slab", contact.slab},
          {"length_mm", number(contact.length.in_mm())},
          {"ends", array(contact.ends, joint_end)}};
}

Json sweep(const Sweep& sweep) {
  return {{"slab", sweep.slab},
          {"from", sweep.from},
          {"towards", sweep.towards},
          {"lifts", sweep.lifts},
          {"fronts", word(sweep.fronts)},
          {"cells", sweep.cells}};
}

Json choice(const SettledValue& choice) {
  return {{"path", choice.path}, {"value", choice.value}, {"reason", choice.reason}};
}

Json remedy(const Remedy& remedy) {
  Json result = {{"what", remedy.what}, {"feasible", remedy.works}};
  if (remedy.margin) result["margin_min"] = number(in_minutes(*remedy.margin));
  if (remedy.cost) result["cost"] = number(remedy.cost->si());
  return result;
}

}  // namespace

Json mix(const MixPlan& mix) {
  Json result = {{"name", mix.name},
                 {"concrete_l", number(in_litres(mix.concrete))},
                 {"waste_l", number(in_litres(mix.waste))},
                 {"yield_l", number(in_litres(mix.yield))},
                 {"bags_exact", number(mix.bags_exact)},
                 {"bags", mix.bags},
                 {"spare_bags", mix.spare_bags},
                 {"surplus_l", number(in_litres(mix.surplus))},
                 {"water_per_bag_l", number(in_litres(mix.water_per_bag))},
                 {"water_total_l", number(in_litres(mix.water_total))},
                 {"doses", array(mix.doses, dose_total)},
                 {"fresh_density_kg_m3", number(mix.fresh_density.si())}};
  if (mix.ice_per_bag > Mass{}) result["ice_per_bag_kg"] = number(mix.ice_per_bag.si());
  return result;
}

Json batch(const Batch& batch) {
  Json result = {{"number", batch.number},
                 {"bags", number(batch.bags)},
                 {"dry_kg", number(batch.dry.si())},
                 {"water_l", number(in_litres(batch.water))},
                 {"water_kg", number(batch.water_mass.si())}};
  if (batch.ice > Mass{}) result["ice_kg"] = number(batch.ice.si());
  if (batch.bucket_mark) {
    result["bucket_mark_mm"] = number(batch.bucket_mark->in_mm());
    result["bucket_fills"] = batch.bucket_fills;
  }
  result["doses"] = array(batch.doses, batch_dose);
  result["volume_l"] = number(in_litres(batch.volume));
  result["zone_l"] = number(in_litres(batch.zone));
  result["mixer"] = batch.mixer;
  result["contact_min"] = number(in_minutes(batch.contact));
  result["place_start_min"] = number(in_minutes(batch.place_start));
  result["place_end_min"] = number(in_minutes(batch.place_end));
  result["neighbours"] = batch.neighbours;
  result["edge_wait_min"] = number(in_minutes(batch.edge_wait));
  result["zones"] = array(batch.zones, zone);
  result["front_mm"] = number(batch.front.in_mm());
  result["advance_mm"] = number(batch.advance.in_mm());
  if (batch.meet_by) result["meet_by_min"] = number(in_minutes(*batch.meet_by));
  if (batch.longer > Duration{}) result["longer_min"] = number(in_minutes(batch.longer));
  return result;
}

Json pour(const PourPlan& pour) {
  Json result = {{"batches", pour.batches},
                 {"takt_min", number(in_minutes(pour.takt))},
                 {"bottleneck", pour.bottleneck},
                 {"lead_min", number(in_minutes(pour.lead))},
                 {"gap", pour.gap},
                 {"edge_wait_max_min", number(in_minutes(pour.edge_wait_max))},
                 {"mix_temperature_c", number(pour.mix_temperature.in_c())},
                 {"temperature_factor", number(pour.temperature_factor)}};
  if (pour.working_time) result["working_time_min"] = number(in_minutes(*pour.working_time));
  if (pour.usable) result["usable_min"] = number(in_minutes(*pour.usable));
  if (pour.margin) result["margin_min"] = number(in_minutes(*pour.margin));
  result["end_min"] = number(in_minutes(pour.end));
  result["wet_edge_max_mm"] = number(pour.wet_edge_max.in_mm());
  result["joint_length_mm"] = number(pour.joint_length.in_mm());
  result["feasible"] = pour.feasible;
  result["wait_is_least"] = pour.wait_is_least;
  result["chain"] = pour.chain;
  result["sweeps"] = array(pour.sweeps, sweep);
  result["joints"] = array(pour.joints, joint);
  result["too_short"] = array(pour.too_short, short_contact);
  result["retarder_per_bag"] = number(pour.retarder_per_bag);
  result["retarder_reason"] = pour.retarder_reason;
  result["water_rule"] = pour.water_rule;
  result["smallest_crew"] = pour.smallest_crew;
  result["choices"] = array(pour.choices, choice);
  result["remedies"] = array(pour.remedies, remedy);
  result["changes"] = array(pour.changes, remedy);
  return result;
}

}  // namespace strikeoff::json
