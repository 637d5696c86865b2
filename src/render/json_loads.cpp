// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

Json bearing(const Bearing& bearing) {
  return {{"on", bearing.on},
          {"area_m2", number(bearing.area.si())},
          {"mass_kg", number(bearing.mass.si())},
          {"pour_day_kg", number(bearing.pour_day.si())}};
}

Json cantilever(const Cantilever& one) {
  Json result = {{"side", one.side},
                 {"reach_mm", number(one.reach.in_mm())},
                 {"depth_mm", number(one.depth.in_mm())},
                 {"length_mm", number(one.length.in_mm())},
                 {"width_mm", number(one.width.in_mm())},
                 {"corner", one.corner},
                 {"own_mpa", number(in_megapascals(one.own))},
                 {"apron_mpa", number(in_megapascals(one.apron))},
                 {"leaning_mpa", number(in_megapascals(one.leaning))},
                 {"stress_mpa", number(in_megapascals(one.stress()))}};
  if (one.strength) result["strength_mpa"] = number(in_megapascals(*one.strength));
  if (one.lean_from) result["lean_from_min"] = number(in_minutes(*one.lean_from));
  return result;
}

Json bar_cut(const BarCut& bar) {
  return {{"place", bar.place}, {"length_mm", number(bar.length.in_mm())}, {"number", bar.number}};
}

Json places_mm(const std::vector<Length>& places) {
  return array(places, [](Length place) { return Json(number(place.in_mm())); });
}

}  // namespace

Json loads(const SlabLoads& loads) {
  Json result = {{"fresh_kg", number(loads.fresh.si())},
                 {"batch_kg", number(loads.batch.si())},
                 {"people", loads.people},
                 {"people_kg", number(loads.people_mass.si())},
                 {"pour_day_kg", number(loads.pour_day.si())},
                 {"pour_day_kpa", number(in_kilopascals(loads.pour_day_load))},
                 {"bearings", array(loads.bearings, bearing)}};
  if (loads.worst) result["cantilever"] = cantilever(*loads.worst);
  return result;
}

Json steel(const SteelPlan& steel) {
  return {{"cover_mm", number(steel.cover.in_mm())},
          {"bars", array(steel.bars, bar_cut)},
          {"bar_length_mm", number(steel.bar_length.in_mm())},
          {"mesh_m2", number(steel.mesh.si())}};
}

Json control_joints(const ControlJoints& joints) {
  return {{"apart_mm", number(joints.apart.in_mm())},
          {"depth_mm", number(joints.depth.in_mm())},
          {"from_left_mm", places_mm(joints.from_left)},
          {"from_front_mm", places_mm(joints.from_front)}};
}

}  // namespace strikeoff::json
