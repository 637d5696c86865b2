// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/plan.h"

namespace strikeoff {

/// The slab's shape: outline, panel area and openings in the base frame, areas, volumes and
/// thicknesses. Fills those fields of the result; mass, load, panels and form quantities come
/// later.
///
///   concrete = (outline - openings) x T - (panel - openings) x p
///              + level correction + fall wedge + apron
///
/// where T is the edge thickness and p the panel's. Every opening takes the concrete above it
/// away, through or not, so every opening leaves the panel's share too; only a through opening
/// is cut out of the panel itself. The base's hollow and the top's rise are taken over outline less
/// openings. An apron fills a ring inside its sides, as wide as their overhang less the `strip`
/// that forms its inner face, over its depth. Source: volumes of prisms and wedges, no rule of
/// thumb.
[[nodiscard]] SlabPlan measure_slab(const Slab& slab, Length strip = {});

/// The area of panel to buy and bed: panel area less the openings that cut it.
[[nodiscard]] Area cut_panel_area(const Slab& slab, const SlabPlan& shape);

}  // namespace strikeoff
