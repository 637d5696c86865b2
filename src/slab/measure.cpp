// SPDX-License-Identifier: MIT
#include "slab/measure.h"

#include "core/outlines.h"

namespace strikeoff {

SlabPlan measure_slab(const Slab& slab) {
  SlabPlan shape;
  shape.name = slab.name;
  shape.edge_thickness = slab.thickness;
  shape.least_thickness = slab.panel ? slab.thickness - slab.panel->thickness : slab.thickness;
  shape.outline = slab_outline(slab);
  shape.area = signed_area(shape.outline);
  shape.perimeter = perimeter(shape.outline);
  if (slab.panel) shape.panel = panel_outline(slab);

  const Point corner = bounding_box(shape.outline).at;
  shape.top_area = shape.area;
  Area displaced = slab.panel ? signed_area(shape.panel) : Area{};
  for (const Opening& opening : slab.openings) {
    Rectangle at = opening.at;
    at.at = {corner.x + at.at.x, corner.y + at.at.y};
    shape.openings.push_back(at);
    shape.top_area -= area(at);
    if (slab.panel) displaced -= overlap(shape.panel, at);
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
    if (slab.openings[i].through) sum -= overlap(shape.panel, shape.openings[i]);
  }
  return sum;
}

}  // namespace strikeoff
