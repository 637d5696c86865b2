// SPDX-License-Identifier: MIT
#include "slab/measure.h"

#include "core/outlines.h"

namespace strikeoff {
namespace {

Area common_area(const Outline& edge, const Polygon& polygon) {
  return Area::from_si(common_moments(edge, polygon).one);
}

}  // namespace

SlabPlan measure_slab(const Slab& slab) {
  SlabPlan shape;
  shape.name = slab.name;
  shape.edge_thickness = slab.thickness;
  shape.least_thickness = slab.panel ? slab.thickness - slab.panel->thickness : slab.thickness;
  shape.edge = slab_edge(slab);
  shape.outline = chords(shape.edge, drawn_within);
  shape.area = area(shape.edge);
  shape.perimeter = perimeter(shape.edge);
  if (slab.panel) shape.panel = panel_outline(slab);

  shape.top_area = shape.area;
  Area displaced = slab.panel ? signed_area(shape.panel) : Area{};
  for (const Opening& opening : slab.openings) {
    const Outline edge = opening_edge(opening, shape.edge);
    shape.openings.push_back({edge, bounding_box(edge)});
    shape.top_area -= area(edge);
    if (slab.panel) displaced -= common_area(edge, shape.panel);
  }
  const Length panel_thickness = slab.panel ? slab.panel->thickness : Length{};
  shape.panel_displacement = displaced * panel_thickness;
  shape.concrete = shape.top_area * slab.thickness - shape.panel_displacement;
  return shape;
}

Area cut_panel_area(const Slab& slab, const SlabPlan& shape) {
  if (!slab.panel) return {};
  Area sum = signed_area(shape.panel);
  for (std::size_t i = 0; i < slab.openings.size(); ++i) {
    if (slab.openings[i].through) sum -= common_area(shape.openings[i].edge, shape.panel);
  }
  return sum;
}

}  // namespace strikeoff
