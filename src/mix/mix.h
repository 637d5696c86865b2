// SPDX-License-Identifier: MIT
#pragma once

#include <variant>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Water at 1 kg/L: 0.2 % heavier than at 20 C, far less than a bag's own tolerance.
inline constexpr Density water_density = kilograms_per_m3(1000);

/// Water in use per bag: the label's `use`, else `least` when a plasticizer is in the mix, else
/// the middle of least and most.
[[nodiscard]] Volume water_per_bag(const Job& job);

/// Volume of one bag at this much water: the label's yield, which holds at `yield_water` (else at
/// the middle of least and most, else at `use`), changed by the volume of the water more or less.
[[nodiscard]] Volume yield_of_bag(const Mix& mix, Volume water);

/// The least whole number that is `value` or more; a value above a whole number by no more than
/// rounding (1e-9 of it) counts as that number, so that arithmetic never opens a bag.
[[nodiscard]] int whole_up(double value);

/// Bags, water and waste for the net volume: bags_exact = concrete x (1 + waste) / yield, up to
/// whole bags, then up to equal batches; `bags` are the bags opened, a part bag counted whole.
/// Fresh density: the label's, else (bag + water)/yield (mass balance, ASTM C138, from memory)
/// with water at `water_density`. `doses` are left empty: see `dose_totals`.
[[nodiscard]] MixPlan plan_mix(const Job& job, Volume concrete);

/// How many equal batches the bags make: whole bags shared out, the last batch as full as the
/// others.
[[nodiscard]] int batch_count(const MixPlan& mix, double bags_per_batch);

/// An amount of an additive; nothing when the job does not say how large a dose is.
using Amount = std::variant<std::monostate, Mass, Volume>;

/// What one dose of this additive is. An additive given as a percent of binder without the mass of
/// a dose is weighed: its dose is what one bag takes. Precondition: a percent of binder comes with
/// the mix's binder.
[[nodiscard]] Amount dose_size(const Additive& additive, const Mix& mix);

/// So many doses of this size.
[[nodiscard]] Amount amount_of(double doses, const Amount& dose);

/// Doses per bag of one additive; `retarder` is what the pour chose for an "auto" one. A percent
/// of binder becomes doses by the dose size.
[[nodiscard]] double doses_per_bag(const Additive& additive, const Mix& mix, double retarder);

/// Doses per bag of every additive, in the job's order. Only the first "auto" retarder gets
/// `retarder`; a second one stays at 0, since one answer does not fix two doses.
[[nodiscard]] std::vector<double> doses_per_bag(const Job& job, double retarder);

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
