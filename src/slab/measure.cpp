// SPDX-License-Identifier: MIT
#include "slab/measure.h"

#include "core/outlines.h"
#include "slab/heights.h"
#include "slab/thickness.h"

namespace strikeoff {
namespace {

Area common_area(const Outline& edge, const Polygon& polygon) {
  return Area::from_si(common_moments(edge, polygon).one);
}

/// Outline, panel and openings, with their areas; what the panel takes of the concrete.
void set_plan_view(const Slab& slab, SlabPlan& shape) {
  shape.on_ground = slab.support == Support::ground;
  shape.base = slab.base;
  shape.sharp = sharp_outline(slab);
  shape.edge = slab_edge(slab);
  shape.outline = chords(shape.edge, drawn_within);
  shape.area = area(shape.edge);
  shape.perimeter = perimeter(shape.edge);
  if (slab.panel) {
    shape.panel = panel_outline(slab);
    shape.panel_thickness = slab.panel->thickness;
  }
  shape.apron_depth = slab.apron_depth;

  shape.top_area = shape.area;
  // A cut corner may take some of the panel with it.
  Area displaced;
  if (slab.panel) {
    displaced =
        slab.corner_cuts.empty() ? signed_area(shape.panel) : common_area(shape.edge, shape.panel);
  }
  for (const Opening& opening : slab.openings) {
    const Outline edge = opening_edge(opening, shape.edge);
    shape.openings.push_back({edge, bounding_box(edge), opening.name});
    shape.top_area -= area(edge);
    if (slab.panel) displaced -= common_area(edge, shape.panel);
  }
  if (slab.panel) shape.panel_displacement = displaced * slab.panel->thickness;
}

void set_wedges(const Heights& heights, SlabPlan& shape) {
  if (heights.are_none()) return;
  shape.level_correction = heights.under(shape.edge);
  shape.fall_wedge = heights.over(shape.edge);
  for (const OpeningPlan& opening : shape.openings) {
    shape.level_correction -= heights.under(opening.edge);
    shape.fall_wedge -= heights.over(opening.edge);
  }
}

void set_thickness(const Slab& slab, const Heights& heights, SlabPlan& shape) {
  const ThicknessRange range = thickness_range(slab, shape, heights);
  shape.thinnest = range.thinnest;
  shape.thickest = range.thickest;
  shape.least_thickness = range.least_over_panel;
  const HeightAt lowest = lowest_base(slab, shape, heights);
  shape.base_low = lowest.height;
  shape.base_low_at = lowest.at;
}

/// The ring between the slab's edge and the inner faces of its aprons, down to their depth.
Volume apron_volume(const Slab& slab, const SlabPlan& shape, Length strip) {
  if (!has_apron(slab)) return {};
  const Polygon inner = inside_aprons(slab, strip);
  return (shape.area - common_area(shape.edge, inner)) * slab.apron_depth;
}

}  // namespace

SlabPlan measure_slab(const Slab& slab, Length strip) {
  SlabPlan shape;
  shape.name = slab.name;
  shape.edge_thickness = slab.thickness;
  set_plan_view(slab, shape);
  const Heights heights(slab);
  set_wedges(heights, shape);
  set_thickness(slab, heights, shape);
  shape.apron = apron_volume(slab, shape, strip);
  shape.concrete = shape.top_area * slab.thickness - shape.panel_displacement +
                   shape.level_correction + shape.fall_wedge + shape.apron;
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
