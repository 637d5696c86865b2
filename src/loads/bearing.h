// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// What each leg, then each partition, carries of the slab: the part of it that is nearer to this
/// support than to any other, weighed by its own concrete, hollows, fall, panel and apron
/// included, so that the masses add up to the slab's. Whether the base's own sides carry some of
/// it is not known, and a stiff slab or base shares its weight out differently: an estimate.
///
/// A leg's part is exact. A partition stands as points along it, `most_support_points` for the
/// whole slab at most, spaced evenly: partitions that face each other are parted by the line
/// midway, exactly, and others to within a part of the space. Sets all but the load of the pour
/// day. `strip` is the thickness of the forms' strips. Precondition: the slab is measured and
/// weighed.
[[nodiscard]] std::vector<Bearing> bearings(const Slab& slab, const SlabPlan& plan, Length strip);

inline constexpr int most_support_points = 600;

}  // namespace strikeoff
