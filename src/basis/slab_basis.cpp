// SPDX-License-Identifier: MIT
#include "basis/basis.h"

namespace strikeoff {
namespace {

constexpr std::string_view green =
    "exact integrals along the edge (Green's theorem): straight edges and arcs";

}  // namespace

std::span<const BasisEntry> slab_basis() {
  static const BasisEntry entries[] = {
      {"area",
       "/slabs/*/area_m2",
       "area inside the slab's edge, arcs counted exactly",
       "",
       {},
       green},
      {"top-area",
       "/slabs/*/top_area_m2",
       "area of the top: inside the edge, less the openings, arcs counted exactly",
       "",
       {},
       green},
      {"perimeter",
       "/slabs/*/perimeter_mm",
       "length of the slab's edge, arcs along the arc",
       "",
       {}},
      {"edge-thickness",
       "/slabs/*/edge_thickness_mm",
       "thickness of the visible edge, as asked for",
       "thickness",
       {{"thickness", "job:/slabs/*/thickness"}}},
      {"least-thickness",
       "/slabs/*/least_thickness_mm",
       "thickness over the panel where that is least: edge thickness less panel, more where the "
       "base "
       "is low or the top rises; the least of all corners of panel, edge and openings and of the "
       "lines on which the base bends",
       "",
       {}},
      {"concrete-of-slab",
       "/slabs/*/concrete_l",
       "top times thickness, less the panel, more for a hollow base, a sloping top and aprons: "
       "volumes of prisms and wedges, no rule of thumb",
       "top * thickness - panel + hollow + fall + apron",
       {{"top", "plan:/slabs/*/top_area_m2"},
        {"thickness", "plan:/slabs/*/edge_thickness_mm"},
        {"panel", "plan:/slabs/*/panel_displacement_l"},
        {"hollow", "plan:/slabs/*/level_correction_l"},
        {"fall", "plan:/slabs/*/fall_l"},
        {"apron", "plan:/slabs/*/apron_l"}}},
      {"panel-displacement",
       "/slabs/*/panel_displacement_l",
       "what the panel takes of the concrete: its area inside the slab's edge, less every opening, "
       "times its thickness",
       "",
       {{"thickness", "job:/slabs/*/panel/stock/thickness"}}},
      {"level-correction",
       "/slabs/*/level_correction_l",
       "what the hollow of the base takes: the volume between the level of its highest reading and "
       "planes through the readings, under the slab less its openings; exact",
       "",
       {{"lows", "job:/slabs/*/levels/#/low"}}},
      {"fall-volume",
       "/slabs/*/fall_l",
       "the wedge that a sloping top adds over its low side, over the slab less its openings; "
       "exact",
       "",
       {{"slope", "job:/slabs/*/fall/percent"}}},
      {"apron-volume",
       "/slabs/*/apron_l",
       "what hangs below the base's top: the ring between the edge and the inner faces of aprons, "
       "times their depth",
       "",
       {{"depth", "job:/slabs/*/apron/depth"}}},
      {"base-low",
       "/slabs/*/base_low_mm",
       "how far the lowest place of the base under the slab lies below its highest reading, on "
       "planes "
       "through the readings",
       "",
       {{"lows", "job:/slabs/*/levels/#/low"}}},
      {"base-low-place",
       "/slabs/*/base_low_at_mm/*",
       "where the base is lowest, from its zero point",
       "",
       {}},
      {"thinnest",
       "/slabs/*/thinnest/thickness_mm",
       "thickness where the slab is thinnest, panel and base and sloping top counted, aprons not",
       "",
       {}},
      {"thickest",
       "/slabs/*/thickest/thickness_mm",
       "thickness where the slab is thickest, panel and base and sloping top counted, aprons not",
       "",
       {}},
      {"thinnest-place",
       "/slabs/*/thinnest/at_mm/*",
       "where the slab is thinnest, from the base's zero point",
       "",
       {}},
      {"thickest-place",
       "/slabs/*/thickest/at_mm/*",
       "where the slab is thickest, from the base's zero point",
       "",
       {}},
      {"mass",
       "/slabs/*/mass_kg",
       "concrete times density: the slab's own where the job gives one, else that of the fresh "
       "mix, "
       "though some of its water leaves as it hardens",
       "concrete / 1000 * if(given(own_density), own_density, fresh_density)",
       {{"concrete", "plan:/slabs/*/concrete_l"},
        {"own_density", "job:/slabs/*/density"},
        {"fresh_density", "plan:/mix/fresh_density_kg_m3"}}},
      {"base-load-of-slab",
       "/slabs/*/base_load_kpa",
       "the slab's weight over the area of its base",
       "mass * 9.80665 / base_area / 1000",
       {{"mass", "plan:/slabs/*/mass_kg"}, {"base_area", "job:/slabs/*/base"}},
       "standard acceleration of gravity, CGPM 1901"},
      {"outline",
       "/slabs/*/outline_mm/*/*",
       "corners of the slab's edge from the base's zero point: each side of the base moved out by "
       "its "
       "overhang; arcs drawn by chords within 0.05 mm",
       "",
       {}},
      {"panel-outline",
       "/slabs/*/panel_outline_mm/*/*",
       "corners of the area that panels cover: each side of the base moved out by the panel's "
       "overhang",
       "",
       {}},
      {"opening-place",
       "/slabs/*/openings/*/x_mm /slabs/*/openings/*/y_mm",
       "lower left corner of the rectangle that the opening fits in, from the base's zero point: "
       "where "
       "the job has it, from the slab's corner, moved by the overhang",
       "",
       {}},
      {"opening-size",
       "/slabs/*/openings/*/length_mm /slabs/*/openings/*/depth_mm",
       "the rectangle that the opening fits in",
       "",
       {}},
      {"opening-outline",
       "/slabs/*/openings/*/outline_mm/*/*",
       "the opening's edge, arcs drawn by chords within 0.05 mm",
       "",
       {}},
      {"panel-place",
       "/slabs/*/panels/*/x_mm /slabs/*/panels/*/y_mm",
       "lower left corner of the panel piece, from the base's zero point: of the layouts tried the "
       "one "
       "with the fewest sheets, then with the least seam near openings, then with the least seam",
       "",
       {}},
      {"panel-size",
       "/slabs/*/panels/*/length_mm /slabs/*/panels/*/depth_mm",
       "size of the panel piece: full sheets in staggered rows, what is left at the ends, no "
       "sliver "
       "under 75 mm (3 in) where a neighbour can give way",
       "",
       {},
       "",
       Known::assumption},
      {"panel-cut",
       "/slabs/*/panels/*/cuts/*/x_mm /slabs/*/panels/*/cuts/*/y_mm "
       "/slabs/*/panels/*/cuts/*/length_mm "
       "/slabs/*/panels/*/cuts/*/depth_mm",
       "what to cut out of the panel piece for an opening, from the piece's lower left corner",
       "",
       {}},
      {"panel-piece-outline",
       "/slabs/*/panels/*/outline_mm/*/*",
       "corners of a panel piece that is cut to a slanted or round line",
       "",
       {}},
  };
  return entries;
}

}  // namespace strikeoff
