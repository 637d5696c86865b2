// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The amount rounded to hundredths, halves away from zero (as shops do: common practice).
[[nodiscard]] Money to_cents(double amount);

/// Smallest whole number of packs that holds `packs`; an excess of 1e-9 is rounding, not need.
[[nodiscard]] int whole_packs(double packs);

/// How many the job says are there. Offcuts (entries with a length or a width) do not count.
[[nodiscard]] double quantity_on_hand(const Job& job, const Material& material);

/// Sets packs, price, cost and note of a material of which `packs` must be bought. The job's own
/// price goes first, by item, then by stock; only the catalogue's price has `breaks`.
void buy(const Job& job, int packs, std::optional<double> catalogue_price,
         const std::vector<PriceBreak>& breaks, Material& material);

}  // namespace strikeoff
