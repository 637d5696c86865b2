// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Concrete over steel inside a building, whatever the grain. Assumption.
inline constexpr Length least_cover = Length::mm(20);
/// Bars in between when the job does not say. Assumption.
inline constexpr Length usual_bar_spacing = Length::mm(150);
/// An inside corner rounded less than this is sharp: cracks start there. Assumption.
inline constexpr Length round_enough = Length::mm(25);

/// The least cover that is good practice: the largest grain, `least_cover` or more.
[[nodiscard]] Length good_cover(const Mix& mix);

/// How far a bar goes on past an opening's corner: 40 diameters (common practice for laps and
/// anchors, from memory), 300 mm where the diameter is not known.
[[nodiscard]] Length anchorage(const Reinforcement& given);

/// True when an opening has inside corners that cracks start from.
[[nodiscard]] bool has_sharp_corners(const Opening& opening);
/// Bars for one opening: along each of its long sides, and across each sharp corner.
[[nodiscard]] std::vector<BarCut> opening_bars(const Opening& opening, const Reinforcement& given);

/// What to cut of mesh or bars, for the outline less its openings. Bars lie both ways, the first
/// and the last the cover away from the slab's box, no farther apart than the spacing, and end the
/// cover before an edge or an opening; pieces too short for two covers and 100 mm are left out.
/// A mesh covers the top with 15 % for laps (assumption).
[[nodiscard]] SteelPlan plan_steel(const Slab& slab, const SlabPlan& plan, const Mix& mix);

}  // namespace strikeoff
