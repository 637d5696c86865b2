// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Everything to buy, in packs, less what is on hand, in their unit. Reads the plan's slabs, mix,
/// cut list.
[[nodiscard]] std::vector<Material> list_materials(const Job& job, const Catalogue& catalogue,
                                                   const Plan& plan);

/// What must be at hand beside the materials: tools and protection, not counted and not priced
/// (common practice, no source).
[[nodiscard]] std::vector<std::string> list_tools(const Job& job, const Plan& plan);

/// What the materials cost. Lines are rounded to hundredths of the currency.
[[nodiscard]] Cost add_up(const Job& job, const std::vector<Material>& materials);

/// The number of packs, at least `needed`, that costs least under these price breaks, and the
/// price of one pack at that number. Without breaks: `needed` at `price`.
struct Purchase {
  int packs = 0;
  double price = 0;
};
[[nodiscard]] Purchase cheapest(int needed, double price, const std::vector<PriceBreak>& breaks);

}  // namespace strikeoff
