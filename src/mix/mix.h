// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Water in use per bag: the label's `use`, else `least` when a plasticizer is in the mix, else
/// the middle of least and most.
[[nodiscard]] Volume water_per_bag(const Job& job);

/// Volume of one bag at this much water: the label's yield, which holds at `yield_water` (else at
/// the middle of least and most, else at `use`), changed by the volume of the water more or less.
[[nodiscard]] Volume yield_of_bag(const Mix& mix, Volume water);

/// Bags, water and waste for the net volume: bags_exact = concrete x (1 + waste) / yield, up to
/// whole bags, then up to equal batches. `doses` are left empty: see `dose_totals`.
[[nodiscard]] MixPlan plan_mix(const Job& job, Volume concrete);

/// How many equal batches the bags make.
[[nodiscard]] int batch_count(const MixPlan& mix, double bags_per_batch);

/// Doses per bag of one additive; `retarder` is what the pour chose for an "auto" one. A percent
/// of binder becomes doses by the dose size.
[[nodiscard]] double doses_per_bag(const Additive& additive, const Mix& mix, double retarder);

/// All additives for the whole pour.
[[nodiscard]] std::vector<DoseTotal> dose_totals(const Job& job, const MixPlan& mix,
                                                 double retarder);

/// Depth of this much water above the inside bottom of a round bucket, straight or tapered:
/// V = pi h (r0^2 + r0 r + r^2)/3 with r = r0 + (r1 - r0) h/H, solved by
/// r^3 = r0^3 + 3 V (r1 - r0)/(pi H) (frustum of a cone). Over the brim: the smallest number of
/// equal fills, and the mark of one fill.
struct BucketMark {
  Length depth;
  int fills = 1;
};
[[nodiscard]] BucketMark bucket_mark(const Bucket& bucket, Volume water);

}  // namespace strikeoff
