// SPDX-License-Identifier: MIT
#include "cutting/bar_state.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "cutting/knapsack.h"
#include "cutting/pattern.h"

namespace strikeoff {
namespace {

constexpr long fill_nodes = 2'000;

/// Stocks by length.
std::vector<std::size_t> by_length(const BarProblem& problem, bool longest_first) {
  std::vector<std::size_t> order(problem.stocks.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const auto x = problem.stocks[a].length, y = problem.stocks[b].length;
    return longest_first ? x > y : x < y;
  });
  return order;
}

}  // namespace

bool BarState::is_done() const {
  return std::all_of(demand.begin(), demand.end(), [](int d) { return d <= 0; });
}

void BarState::use(BarPattern pattern, int times) {
  bars[pattern.stock] -= times;
  for (std::size_t i = 0; i < demand.size(); ++i) {
    pattern.counts[i] = std::min(pattern.counts[i], times == 1 ? demand[i] : pattern.counts[i]);
    demand[i] -= pattern.counts[i] * times;
  }
  pattern.times = times;
  chosen.push_back(std::move(pattern));
}

int BarState::room_for(const BarPattern& pattern, int times) const {
  times = std::min(times, bars[pattern.stock]);
  for (std::size_t i = 0; i < demand.size(); ++i) {
    if (pattern.counts[i] > 0) times = std::min(times, demand[i] / pattern.counts[i]);
  }
  return times;
}

std::int64_t waste_allowed(const BarProblem& problem, const BarState& state) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < state.demand.size(); ++i) {
    sum -= problem.items[i].length * state.demand[i];
  }
  for (std::size_t k = 0; k < state.bars.size(); ++k) {
    sum += problem.stocks[k].length * state.bars[k];
  }
  return sum;
}

bool fill_each_board(const BarProblem& problem, bool longest_first, bool for_length,
                     BarState& state, long& work) {
  double longest = 1;
  for (const BarItem& item : problem.items) {
    longest = std::max(longest, static_cast<double>(item.length));
  }
  std::vector<double> worth;
  for (const BarItem& item : problem.items) {
    const auto length = static_cast<double>(item.length);
    worth.push_back(length * static_cast<double>(item.width) *
                    (for_length ? 1 + length / longest : 1));
  }
  for (const std::size_t k : by_length(problem, longest_first)) {
    while (state.bars[k] > 0 && !state.is_done()) {
      BarPattern pattern = best_pattern(problem, k, worth, state.demand, fill_nodes, work);
      if (problem.trim) fill_up(problem, worth, state.demand, fill_nodes, pattern, work);
      const int times = state.room_for(pattern, state.bars[k]);
      if (pattern.strips.empty() || times < 1) break;
      state.use(std::move(pattern), times);
    }
  }
  return state.is_done();
}

bool fill_each_bar(const BarProblem& problem, bool longest_first, BarState& state, long& work) {
  for (const std::size_t k : by_length(problem, longest_first)) {
    while (state.bars[k] > 0 && !state.is_done()) {
      std::size_t first = problem.items.size();
      for (std::size_t i = 0; i < problem.items.size(); ++i) {
        if (state.demand[i] <= 0 || problem.items[i].length > problem.stocks[k].length) continue;
        if (first == problem.items.size() ||
            problem.items[i].length > problem.items[first].length) {
          first = i;
        }
      }
      if (first == problem.items.size()) break;
      std::vector<KnapsackItem<std::int64_t>> items;
      for (std::size_t i = 0; i < problem.items.size(); ++i) {
        const std::int64_t length = problem.items[i].length;
        items.push_back({length, length, state.demand[i] - int{i == first}});
      }
      auto rest = best_fill(items, problem.stocks[k].length - items[first].length, fill_nodes);
      work += rest.work;
      BarPattern pattern{k, std::move(rest.counts), {}, 1};
      ++pattern.counts[first];
      const int times = std::max(1, state.room_for(pattern, state.bars[k]));
      state.use(std::move(pattern), times);
    }
  }
  return state.is_done();
}

}  // namespace strikeoff
