// SPDX-License-Identifier: MIT
#include "cutting/mix_search.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace strikeoff {
namespace {

constexpr long most_nodes = 200'000;

std::int64_t up(std::int64_t a, std::int64_t b) {
  return a <= 0 ? 0 : a / b + int{a % b != 0};
}

}  // namespace

MixSearch::MixSearch(const BarProblem& problem, const BarMix& most)
    : problem_(problem), most_(most) {
  // The dearest first: few of them are needed, and the cheap ones then follow.
  for (std::size_t k = 0; k < most.size(); ++k) {
    if (problem.stocks[k].cost > 0) order_.push_back(k);
  }
  std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
    return problem.stocks[a].cost > problem.stocks[b].cost;
  });
}

std::optional<BarMix> MixSearch::cheapest(std::int64_t at_least) {
  best_cost_ = missed_ = no_cost;
  at_least_ = at_least;
  nodes_ = 0;
  for (std::size_t j = rates_.size(); j < cuts.size(); ++j) {
    std::vector<double>& rate = rates_.emplace_back(order_.size() + 1, 0.0);
    for (std::size_t a = order_.size(); a-- > 0;) {
      const std::size_t k = order_[a];
      rate[a] = std::max(rate[a + 1], static_cast<double>(cuts[j].worth[k]) /
                                          static_cast<double>(problem_.stocks[k].cost));
    }
  }
  mix_ = most_;
  for (const std::size_t k : order_) mix_[k] = 0;  // free bars are all offered
  std::vector<std::int64_t> missing;
  for (const DualCut& cut : cuts) {
    std::int64_t rest = cut.need;
    for (std::size_t k = 0; k < mix_.size(); ++k) rest -= cut.worth[k] * mix_[k];
    missing.push_back(rest);
  }
  descend(0, 0, missing);
  return best_cost_ == no_cost ? std::nullopt : std::optional(best_);
}

long MixSearch::work() const {
  return nodes_ * static_cast<long>(10 + 2 * cuts.size() + not_packed.size());
}

/// The least that it can cost in all to fill what the cuts still miss from the stocks from `at` on;
/// `no_cost` when they cannot.
std::int64_t MixSearch::least_cost(std::size_t at, std::int64_t cost,
                                   const std::vector<std::int64_t>& missing) const {
  std::int64_t most = 0;
  for (std::size_t j = 0; j < cuts.size(); ++j) {
    if (missing[j] <= 0) continue;
    const double rate = rates_[j][at];
    if (rate <= 0) return no_cost;
    // 1e-9: rounding must not prune an equal one away from a better one.
    const double least = std::ceil(static_cast<double>(missing[j]) / rate * (1 - 1e-9));
    if (least >= 9e18) return no_cost;
    most = std::max(most, static_cast<std::int64_t>(least));
  }
  return most >= no_cost - cost ? no_cost : cost + most;
}

void MixSearch::descend(std::size_t at, std::int64_t cost,
                        const std::vector<std::int64_t>& missing) {
  if (best_cost_ <= at_least_) return;
  const std::int64_t least_cost_here = least_cost(at, cost, missing);
  if (least_cost_here >= best_cost_) return;
  if (++nodes_ > most_nodes) {
    missed_ = std::min(missed_, std::max(least_cost_here, at_least_));
    return;
  }
  if (at == order_.size()) {
    if (is_ruled_out()) return;
    best_cost_ = cost;
    best_ = mix_;
    return;
  }
  const std::size_t k = order_[at];
  std::int64_t least = 0, most = 0;
  for (std::size_t j = 0; j < cuts.size(); ++j) {
    if (cuts[j].worth[k] <= 0) continue;
    most = std::max(most, up(missing[j], cuts[j].worth[k]));
  }
  // The last stock fills whatever is missing; more than that, and more than in every mix ruled out,
  // could be one less.
  if (at + 1 == order_.size()) least = most;
  for (const BarMix& known : not_packed) most = std::max<std::int64_t>(most, known[k] + 1);
  most = std::min<std::int64_t>(most, most_[k]);
  std::vector<std::int64_t> rest(missing.size());
  for (std::int64_t n = least; n <= most; ++n) {
    const std::int64_t spent = cost + n * problem_.stocks[k].cost;
    if (spent >= best_cost_) break;
    if (nodes_ > most_nodes) {
      missed_ = std::min(missed_, std::max(least_cost_here, at_least_));
      break;
    }
    mix_[k] = static_cast<int>(n);
    for (std::size_t j = 0; j < cuts.size(); ++j) rest[j] = missing[j] - cuts[j].worth[k] * n;
    descend(at + 1, spent, rest);
  }
  mix_[k] = 0;
}

bool MixSearch::is_ruled_out() const {
  return std::any_of(not_packed.begin(), not_packed.end(), [&](const BarMix& known) {
    for (std::size_t k = 0; k < known.size(); ++k) {
      if (mix_[k] > known[k]) return false;
    }
    return true;
  });
}

}  // namespace strikeoff
