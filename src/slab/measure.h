// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/plan.h"

namespace strikeoff {

/// The slab's shape: outline, panel area and openings in the base frame, areas and volumes.
/// Fills those fields of the result; mass, load, panels and form quantities come later.
///
///   concrete = (outline - openings) x T - (panel - openings) x p
///
/// where T is the edge thickness and p the panel's. Every opening takes the concrete above it
/// away, through or not, so every opening leaves the panel's share too; only a through opening
/// is cut out of the panel itself. Source: prism volumes, no rule of thumb.
[[nodiscard]] SlabPlan measure_slab(const Slab& slab);

/// The area of panel to buy and bed: panel area less the openings that cut it.
[[nodiscard]] Area cut_panel_area(const Slab& slab, const SlabPlan& shape);

}  // namespace strikeoff
