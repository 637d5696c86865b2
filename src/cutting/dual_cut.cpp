// SPDX-License-Identifier: MIT
#include "cutting/dual_cut.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include "cutting/pattern.h"

namespace strikeoff {
namespace {

constexpr double price_scale = 1e7;  // the dearest piece costs this much, or less of very many

/// Prices of this size, summed over all pieces or over as many bars full of them, fit 64 bits.
double scale_for(std::span<const int> demand, std::size_t stocks) {
  const double pieces = std::accumulate(demand.begin(), demand.end(), 1.0);
  return std::min(price_scale, 4e18 / (pieces * pieces * static_cast<double>(stocks)));
}
constexpr long proof_nodes = 200'000;

}  // namespace

std::optional<DualCut> dual_cut(const BarProblem& problem, std::span<const int> demand,
                                std::span<const double> price, long& work) {
  const double dearest = *std::max_element(price.begin(), price.end());
  if (!(dearest > 0)) return std::nullopt;
  const double scale = scale_for(demand, problem.stocks.size());
  DualCut cut;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    // Rounded down, with a little over a whole number taken as that number: 2 x 1/2 must stay 1.
    const auto value =
        static_cast<std::int64_t>(std::floor(std::max(0.0, price[i]) / dearest * scale + 1e-3));
    cut.value.push_back(value);
    cut.need += value * demand[i];
  }
  for (std::size_t k = 0; k < problem.stocks.size(); ++k) {
    // No bar holds more than all pieces.
    cut.worth.push_back(
        std::min(cut.need, pattern_bound(problem, k, cut.value, demand, proof_nodes, work)));
  }
  return cut;
}

bool satisfies(const BarMix& mix, const DualCut& cut) {
  std::int64_t sum = 0;
  for (std::size_t k = 0; k < mix.size(); ++k) sum += cut.worth[k] * mix[k];
  return sum >= cut.need;
}

bool satisfies(const BarMix& mix, const DualCut& cut, std::span<const int> demand) {
  std::int64_t rest = 0;
  for (std::size_t i = 0; i < demand.size(); ++i) rest += cut.value[i] * demand[i];
  for (std::size_t k = 0; k < mix.size() && rest > 0; ++k) rest -= cut.worth[k] * mix[k];
  return rest <= 0;
}

}  // namespace strikeoff
