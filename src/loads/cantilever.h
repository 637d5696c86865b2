// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

// How an overhang bends down over the edge of its base. This screens a worktop's edge; it designs
// no structure, and ACI 318-19 14.1.3 (from memory) lets no plain concrete cantilever as one.

/// Depth of the concrete that holds a side's overhang at the base's face: less by the panel where
/// that passes the face.
[[nodiscard]] Length root_depth(const Slab& slab, const Side& side);

/// Bending stress at the top of a section this deep by a moment per length of it, 6 m/h2, from a
/// slab that weighs rho T on its overhang c: m = rho g T c2/2.
[[nodiscard]] Pressure own_weight_stress(Density density, Length thickness, Length reach,
                                         Length depth);
/// From a strip `wide` and `deep` that hangs below the outer end of the overhang.
[[nodiscard]] Pressure apron_stress(Density density, Length wide, Length deep, Length reach,
                                    Length depth);
/// Width of the slab that holds a person who leans on 300 mm of its edge (assumption), spread at 45
/// degrees both ways: 300 mm + 2 c, no more than the edge is long.
[[nodiscard]] Length leaning_width(Length reach, Length edge);
/// From that person's 1 kN (assumption): 6 P c/(b h2).
[[nodiscard]] Pressure leaning_stress(Length reach, Length depth, Length width);

/// Mean tensile strength 0.30 fc^(2/3) MPa of EN 1992-1-1 table 3.1 (from memory), up to C50/60,
/// with the label's compressive strength for fc: on the safe side of bending for thin slabs.
[[nodiscard]] Pressure tensile_strength(Pressure compressive);
/// The compressive strength at which concrete has this tensile strength: the inverse.
[[nodiscard]] Pressure compressive_for(Pressure tensile);

/// What the label gives at 28 days, or at its last age before; at its first one where all are
/// later. Nothing where it gives none.
[[nodiscard]] std::optional<Pressure> label_strength(const Mix& mix);

/// The overhang with the greatest stress of those that hang free: no wall, no brackets. `lean_from`
/// is left open. `strip` is the thickness of the forms' strips. Nothing without one.
/// Precondition: the slab is measured and weighed.
[[nodiscard]] std::optional<Cantilever> worst_cantilever(const Slab& slab, const SlabPlan& plan,
                                                         const Mix& mix, Length strip);

/// One part in three of the strength: a first-timer's concrete varies (assumption).
inline constexpr double stress_share_good = 1.0 / 3;
/// Over this share it may break (assumption).
inline constexpr double stress_share_most = 1 / 1.5;

}  // namespace strikeoff
