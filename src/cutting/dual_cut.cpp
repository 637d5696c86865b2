// SPDX-License-Identifier: MIT
#include "cutting/dual_cut.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "cutting/knapsack.h"

namespace strikeoff {
namespace {

constexpr double price_scale = 1e7;  // the dearest piece costs this much
constexpr long proof_nodes = 200'000;

}  // namespace

std::optional<DualCut> dual_cut(const BarProblem& problem, std::span<const int> demand,
                                std::span<const double> price) {
  const double dearest = *std::max_element(price.begin(), price.end());
  if (!(dearest > 0)) return std::nullopt;
  std::vector<KnapsackItem<std::int64_t>> items;
  DualCut cut;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    // Rounded down, with a little over a whole number taken as that number: 2 x 1/2 must stay 1.
    const auto value = static_cast<std::int64_t>(
        std::floor(std::max(0.0, price[i]) / dearest * price_scale + 1e-3));
    items.push_back({problem.items[i].length, value, demand[i]});
    cut.need += value * demand[i];
  }
  for (const BarStock& stock : problem.stocks) {
    cut.worth.push_back(best_fill(items, stock.length, proof_nodes).upper);
  }
  return cut;
}

bool satisfies(const BarMix& mix, const DualCut& cut) {
  std::int64_t sum = 0;
  for (std::size_t k = 0; k < mix.size(); ++k) sum += cut.worth[k] * mix[k];
  return sum >= cut.need;
}

}  // namespace strikeoff
