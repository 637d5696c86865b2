// SPDX-License-Identifier: MIT
#include "cutting/dual_cut.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "cutting/pattern.h"

namespace strikeoff {
namespace {

constexpr double price_scale = 1e7;  // the dearest piece costs this much
constexpr long proof_nodes = 200'000;

}  // namespace

std::optional<DualCut> dual_cut(const BarProblem& problem, std::span<const int> demand,
                                std::span<const double> price) {
  const double dearest = *std::max_element(price.begin(), price.end());
  if (!(dearest > 0)) return std::nullopt;
  std::vector<std::int64_t> values;
  DualCut cut;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    // Rounded down, with a little over a whole number taken as that number: 2 x 1/2 must stay 1.
    const auto value = static_cast<std::int64_t>(
        std::floor(std::max(0.0, price[i]) / dearest * price_scale + 1e-3));
    values.push_back(value);
    cut.need += value * demand[i];
  }
  for (std::size_t k = 0; k < problem.stocks.size(); ++k) {
    cut.worth.push_back(pattern_bound(problem, k, values, demand, proof_nodes));
  }
  return cut;
}

bool satisfies(const BarMix& mix, const DualCut& cut) {
  std::int64_t sum = 0;
  for (std::size_t k = 0; k < mix.size(); ++k) sum += cut.worth[k] * mix[k];
  return sum >= cut.need;
}

}  // namespace strikeoff
