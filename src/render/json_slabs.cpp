// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

Json point_mm(const Point& point) {
  return Json::List{number(point.x.in_mm()), number(point.y.in_mm())};
}

Json rectangle(const Rectangle& at) {
  return {{"x_mm", number(at.at.x.in_mm())},
          {"y_mm", number(at.at.y.in_mm())},
          {"length_mm", number(at.length.in_mm())},
          {"depth_mm", number(at.depth.in_mm())}};
}

Json opening(const OpeningPlan& opening) {
  Json result = rectangle(opening.box);
  result["outline_mm"] = points_mm(chords(opening.edge, drawn_within));
  return result;
}

Json panel(const PanelPiece& piece) {
  Json result = {{"mark", piece.mark}};
  result.add(rectangle(piece.at));
  result["cuts"] = array(piece.cuts, rectangle);
  if (!piece.outline.empty()) result["outline_mm"] = points_mm(piece.outline);
  return result;
}

Json thickness_at(const ThicknessAt& place) {
  return {{"thickness_mm", number(place.thickness.in_mm())}, {"at_mm", point_mm(place.at)}};
}

Json forms(const FormQuantities& forms) {
  return {{"soffit_mm", number(forms.soffit.in_mm())},
          {"edge_mm", number(forms.edge.in_mm())},
          {"knock_out_mm", number(forms.knock_out.in_mm())},
          {"isolation_mm", number(forms.isolation.in_mm())},
          {"foam_m2", number(forms.foam.si())},
          {"seams_mm", number(forms.seams.in_mm())},
          {"loose_seams_mm", number(forms.loose_seams.in_mm())},
          {"split_seams_mm", number(forms.split_seams.in_mm())},
          {"ledger_mm", number(forms.ledger.in_mm())},
          {"ledger_pieces_mm",
           array(forms.ledger_pieces, [](Length piece) { return Json(number(piece.in_mm())); })},
          {"panel_m2", number(forms.panel.si())},
          {"formed_m2", number(forms.formed.si())},
          {"screw_spacing_mm", number(forms.screw_spacing.in_mm())},
          {"stakes", forms.stakes},
          {"stakes_apart_mm", number(forms.stakes_apart.in_mm())},
          {"props", forms.props},
          {"props_apart_mm", number(forms.props_apart.in_mm())},
          {"brackets", forms.brackets}};
}

}  // namespace

Json points_mm(const Polygon& polygon) {
  return array(polygon, point_mm);
}

Json slab(const SlabPlan& slab) {
  Json result = {{"name", slab.name},
                 {"area_m2", number(slab.area.si())},
                 {"top_area_m2", number(slab.top_area.si())},
                 {"perimeter_mm", number(slab.perimeter.in_mm())},
                 {"edge_thickness_mm", number(slab.edge_thickness.in_mm())},
                 {"least_thickness_mm", number(slab.least_thickness.in_mm())},
                 {"concrete_l", number(in_litres(slab.concrete))},
                 {"panel_displacement_l", number(in_litres(slab.panel_displacement))},
                 {"level_correction_l", number(in_litres(slab.level_correction))},
                 {"fall_l", number(in_litres(slab.fall_wedge))},
                 {"apron_l", number(in_litres(slab.apron))},
                 {"base_low_mm", number(slab.base_low.in_mm())},
                 {"base_low_at_mm", point_mm(slab.base_low_at)},
                 {"thinnest", thickness_at(slab.thinnest)},
                 {"thickest", thickness_at(slab.thickest)},
                 {"mass_kg", number(slab.mass.si())},
                 {"base_load_kpa", number(in_kilopascals(slab.base_load))},
                 {"outline_mm", points_mm(slab.outline)},
                 {"panel_outline_mm", points_mm(slab.panel)},
                 {"openings", array(slab.openings, opening)},
                 {"panels", array(slab.panels, panel)},
                 {"forms", forms(slab.forms)},
                 {"loads", loads(slab.loads)}};
  if (!slab.steel.none()) result["steel"] = steel(slab.steel);
  if (slab.control_joints) result["control_joints"] = control_joints(*slab.control_joints);
  return result;
}

}  // namespace strikeoff::json
