// SPDX-License-Identifier: MIT
#include "pour/slab_volume.h"

#include "core/outlines.h"

namespace strikeoff {

SlabVolume::SlabVolume(const Slab& slab, const SlabPlan& shape, Length strip)
    : thickness_(slab.thickness), heights_(slab) {
  if (slab.panel) {
    panel_thickness_ = slab.panel->thickness;
    const Area covered = Area::from_si(common_moments(shape.edge, shape.panel).one);
    if (covered / shape.area > 1 - 1e-9) {
      thickness_ -= panel_thickness_;
    } else {
      panel_ = shape.panel;
    }
  }
  if (has_apron(slab)) {
    apron_depth_ = slab.apron_depth;
    inside_ = inside_aprons(slab, strip);
  }
  even_ = panel_.empty() && inside_.empty() && heights_.are_none();
}

Volume SlabVolume::over(const Polygon& part) const {
  const Area whole = signed_area(part);
  Volume volume = whole * thickness_;
  if (even_) return volume;
  const Outline outline = outline_of(part);
  const auto within = [&](const Polygon& region) {
    return Area::from_si(common_moments(outline, region).one);
  };
  if (!panel_.empty()) volume -= within(panel_) * panel_thickness_;
  if (!inside_.empty()) volume += (whole - within(inside_)) * apron_depth_;
  if (!heights_.are_none()) volume += heights_.under(outline) + heights_.over(outline);
  return volume;
}

}  // namespace strikeoff
