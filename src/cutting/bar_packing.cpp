// SPDX-License-Identifier: MIT
#include "cutting/bar_packing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <set>

#include "cutting/dual_cut.h"
#include "cutting/knapsack.h"
#include "cutting/pattern.h"
#include "cutting/rip.h"

namespace strikeoff {
namespace {

constexpr int dives = 100;
constexpr long fill_nodes = 2'000;
constexpr std::size_t most_patterns = 3'000;  // at one place of the search

/// Pieces and bars not yet used, and the patterns chosen so far.
struct State {
  std::vector<int> demand;
  BarMix bars;
  std::vector<BarPattern> chosen;

  [[nodiscard]] bool is_done() const {
    return std::all_of(demand.begin(), demand.end(), [](int d) { return d <= 0; });
  }

  /// Takes no more pieces than are wanted; what a pattern has over is waste.
  void use(BarPattern pattern, int times) {
    bars[pattern.stock] -= times;
    for (std::size_t i = 0; i < demand.size(); ++i) {
      pattern.counts[i] = std::min(pattern.counts[i], times == 1 ? demand[i] : pattern.counts[i]);
      demand[i] -= pattern.counts[i] * times;
    }
    pattern.times = times;
    chosen.push_back(std::move(pattern));
  }

  /// As often as there are bars and pieces for it, at most `times`.
  [[nodiscard]] int room_for(const BarPattern& pattern, int times) const {
    times = std::min(times, bars[pattern.stock]);
    for (std::size_t i = 0; i < demand.size(); ++i) {
      if (pattern.counts[i] > 0) times = std::min(times, demand[i] / pattern.counts[i]);
    }
    return times;
  }
};

/// The length that may be wasted in all; negative when the bars are too short together.
std::int64_t waste_allowed(const BarProblem& problem, const State& state) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < state.demand.size(); ++i) {
    sum -= problem.items[i].length * state.demand[i];
  }
  for (std::size_t k = 0; k < state.bars.size(); ++k) {
    sum += problem.stocks[k].length * state.bars[k];
  }
  return sum;
}

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

/// Fills board after board as full as can be found. `for_length` counts long pieces for more than
/// their area, since they are the hardest to place later.
bool fill_each_board(const BarProblem& problem, bool longest_first, bool for_length, State& state) {
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
      BarPattern pattern = best_pattern(problem, k, worth, state.demand, fill_nodes);
      const int times = state.room_for(pattern, state.bars[k]);
      if (pattern.strips.empty() || times < 1) break;
      state.use(std::move(pattern), times);
    }
  }
  return state.is_done();
}

std::size_t longest_left(const BarProblem& problem, const std::vector<int>& demand) {
  std::size_t longest = demand.size();
  for (std::size_t i = 0; i < demand.size(); ++i) {
    if (demand[i] > 0 &&
        (longest == demand.size() || problem.items[i].length > problem.items[longest].length)) {
      longest = i;
    }
  }
  return longest;
}

/// Fills bar after bar as full as can be, each with the longest piece left that fits it (minimal
/// bin slack: Gupta and Ho, Production Planning & Control 10, 1999; from memory).
bool fill_each(const BarProblem& problem, bool longest_first, State& state) {
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
      BarPattern pattern{
          k,
          best_fill(items, problem.stocks[k].length - items[first].length, fill_nodes).counts,
          {},
          1};
      ++pattern.counts[first];
      const int times = std::max(1, state.room_for(pattern, state.bars[k]));
      state.use(std::move(pattern), times);
    }
  }
  return state.is_done();
}

class Search {
 public:
  Search(const BarProblem& problem, ColumnGeneration& continuous, long& effort)
      : problem_(problem), continuous_(continuous), effort_(effort) {
    for (const BarItem& item : problem.items) {
      penalty_.push_back(static_cast<double>(item.length) * static_cast<double>(item.width));
    }
    longest_ = *std::max_element(penalty_.begin(), penalty_.end());
  }

  /// The continuous solution of what is left.
  [[nodiscard]] ColumnGeneration::Answer solve(const State& state) {
    --effort_;
    return continuous_.solve(
        {state.demand, std::vector<double>(problem_.stocks.size(), 0.0), state.bars, penalty_});
  }

  /// True when the rest surely does not fit.
  [[nodiscard]] bool is_impossible(const State& state, const ColumnGeneration::Answer& answer) {
    if (answer.uncut <= 1e-7 * longest_) return false;
    const auto cut = dual_cut(problem_, state.demand, answer.price);
    return cut && !satisfies(state.bars, *cut);
  }

  /// Rounds the continuous solution down and solves the rest again. Where nothing is whole, the
  /// pattern used most goes first; in later `turn`s the choice falls by chance, in proportion to
  /// use (a fixed sequence of numbers, so that results repeat).
  bool dive(State& state, int turn) {
    while (!state.is_done()) {
      if (effort_ < 0) return false;
      auto answer = solve(state);
      if (answer.uncut > 1e-7 * longest_) return false;
      std::sort(answer.uses.begin(), answer.uses.end(), [&](const auto& a, const auto& b) {
        return a.times != b.times ? a.times > b.times : a.pattern < b.pattern;
      });
      bool used = false;
      for (const auto& use : answer.uses) {
        const BarPattern& pattern = continuous_.patterns()[use.pattern];
        const int times = state.room_for(pattern, static_cast<int>(std::floor(use.times + 1e-6)));
        if (times < 1) continue;
        state.use(pattern, times);
        used = true;
      }
      if (used || answer.uses.empty()) {
        if (!used) return false;
        continue;
      }
      const auto& use = answer.uses[turn == 0 ? 0 : drawn(answer.uses)];
      const BarPattern pattern = continuous_.patterns()[use.pattern];
      if (state.bars[pattern.stock] < 1) return false;
      state.use(pattern, 1);
    }
    return true;
  }

  /// Search from a state that departs from the first choice at most `departures` times in all, the
  /// second choice counting once, the third twice (limited discrepancy search: Harvey and Ginsberg,
  /// IJCAI 1995); `unknown` when that or the effort left something out.
  Packing search(State& state, std::size_t departures) {
    if (state.is_done()) return Packing::found;
    if (waste_allowed(problem_, state) < 0) return Packing::impossible;
    if (effort_ < 0) return Packing::unknown;
    if (failed_.count(key(state)) > 0) return Packing::impossible;
    const auto answer = solve(state);
    if (is_impossible(state, answer)) {
      failed_.insert(key(state));
      return Packing::impossible;
    }
    bool complete = true;
    std::size_t rank = 0;
    for (const BarPattern& pattern : patterns_for(state, answer, complete)) {
      if (rank > departures || effort_ < 0) {
        complete = false;
        break;
      }
      State next = state;
      next.use(pattern, 1);
      const Packing outcome = search(next, departures - rank++);
      if (outcome == Packing::found) {
        state = std::move(next);
        return outcome;
      }
      complete = complete && outcome == Packing::impossible;
    }
    if (!complete) return Packing::unknown;
    failed_.insert(key(state));
    return Packing::impossible;
  }

 private:
  /// One of the uses, each as likely as it is used.
  [[nodiscard]] std::size_t drawn(const std::vector<ColumnGeneration::Use>& uses) {
    double whole = 0;
    for (const auto& use : uses) whole += use.times;
    // Minimal standard generator (Park and Miller, CACM 31, 1988).
    chance_ = chance_ * 48271 % 2147483647;
    double at = whole * static_cast<double>(chance_) / 2147483647;
    for (std::size_t u = 0; u + 1 < uses.size(); ++u) {
      if ((at -= uses[u].times) < 0) return u;
    }
    return uses.size() - 1;
  }

  [[nodiscard]] static std::vector<int> key(const State& state) {
    std::vector<int> key = state.demand;
    key.insert(key.end(), state.bars.begin(), state.bars.end());
    return key;
  }

  /// Every way to cut a bar with the longest piece left that the waste allows and to which no piece
  /// could be added; those of the continuous solution first, then by waste.
  [[nodiscard]] std::vector<BarPattern> patterns_for(const State& state,
                                                     const ColumnGeneration::Answer& answer,
                                                     bool& complete) {
    const std::size_t first = longest_left(problem_, state.demand);
    const std::int64_t allowed = waste_allowed(problem_, state);
    std::vector<std::size_t> order;  // longest first
    for (std::size_t i = 0; i < problem_.items.size(); ++i) {
      if (state.demand[i] > 0) order.push_back(i);
    }
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      return problem_.items[a].length > problem_.items[b].length;
    });
    std::vector<std::pair<std::int64_t, BarPattern>> found;
    std::set<std::int64_t> lengths;
    for (std::size_t k = 0; k < problem_.stocks.size(); ++k) {
      const std::int64_t length = problem_.stocks[k].length;
      if (state.bars[k] < 1 || length < problem_.items[first].length) continue;
      // Two stocks of one length make the same choices.
      if (!lengths.insert(length).second) continue;
      BarPattern pattern{k, std::vector<int>(problem_.items.size(), 0), {}, 1};
      pattern.counts[first] = 1;
      extend(state, order, 0, length - problem_.items[first].length, allowed, pattern, found,
             complete);
    }
    const auto rank = [&](const BarPattern& pattern) {
      double most = 0;
      for (const auto& use : answer.uses) {
        const BarPattern& known = continuous_.patterns()[use.pattern];
        if (known.stock == pattern.stock && known.counts == pattern.counts) {
          most = std::max(most, use.times);
        }
      }
      return most;
    };
    std::vector<std::pair<double, std::size_t>> ranked;
    for (std::size_t f = 0; f < found.size(); ++f) ranked.emplace_back(-rank(found[f].second), f);
    std::sort(ranked.begin(), ranked.end(), [&](const auto& a, const auto& b) {
      if (a.first != b.first) return a.first < b.first;
      const auto &x = found[a.second], &y = found[b.second];
      return x.first != y.first ? x.first < y.first : x.second.counts > y.second.counts;
    });
    std::vector<BarPattern> patterns;
    for (const auto& entry : ranked) patterns.push_back(std::move(found[entry.second].second));
    return patterns;
  }

  void extend(const State& state, const std::vector<std::size_t>& order, std::size_t at,
              std::int64_t room, std::int64_t allowed, BarPattern& pattern,
              std::vector<std::pair<std::int64_t, BarPattern>>& found, bool& complete) {
    if (found.size() >= most_patterns) {
      complete = false;
      return;
    }
    if (at == order.size()) {
      if (room > allowed) return;
      for (const std::size_t i : order) {
        if (pattern.counts[i] < state.demand[i] && problem_.items[i].length <= room) return;
      }
      found.emplace_back(room, pattern);
      return;
    }
    // Even all that is left of the shorter pieces must be able to fill the bar.
    std::int64_t fillable = 0;
    for (std::size_t a = at; a < order.size() && fillable < room; ++a) {
      fillable +=
          problem_.items[order[a]].length * (state.demand[order[a]] - pattern.counts[order[a]]);
    }
    if (room - fillable > allowed) return;
    const std::size_t i = order[at];
    const int already = pattern.counts[i];
    const int more = static_cast<int>(
        std::min<std::int64_t>(state.demand[i] - already, room / problem_.items[i].length));
    for (int n = more; n >= 0; --n) {
      pattern.counts[i] = already + n;
      extend(state, order, at + 1, room - n * problem_.items[i].length, allowed, pattern, found,
             complete);
    }
    pattern.counts[i] = already;
  }

  const BarProblem& problem_;
  ColumnGeneration& continuous_;
  long& effort_;
  std::vector<double> penalty_;
  double longest_ = 1;
  std::int64_t chance_ = 1;
  std::set<std::vector<int>> failed_;
};

}  // namespace

PackedBars pack_bars(const BarProblem& problem, const BarMix& mix, ColumnGeneration& continuous,
                     long& effort) {
  State start;
  for (const BarItem& item : problem.items) start.demand.push_back(item.demand);
  start.bars = mix;
  const bool bars = is_one_dimensional(problem);
  if (bars && waste_allowed(problem, start) < 0) return {Packing::impossible, {}};
  for (const bool longest_first : {true, false}) {
    for (const bool for_length : {false, true}) {
      State state = start;
      if (bars ? fill_each(problem, longest_first, state)
               : fill_each_board(problem, longest_first, for_length, state)) {
        return {Packing::found, std::move(state.chosen)};
      }
      if (bars) break;
    }
  }
  Search search(problem, continuous, effort);
  const auto answer = search.solve(start);
  if (search.is_impossible(start, answer)) return {Packing::impossible, {}};
  for (int turn = 0; turn < dives && effort > 0; ++turn) {
    State state = start;
    if (search.dive(state, turn)) return {Packing::found, std::move(state.chosen)};
  }
  if (!bars) {
    PackedBars ripped = rip_boards(problem, mix, effort);
    // No plan without a third cut is no proof against one with it.
    if (problem.trim && ripped.outcome == Packing::impossible) ripped.outcome = Packing::unknown;
    return ripped;
  }
  // Near the first choices first, then everywhere.
  for (const std::size_t departures : {2U, 4U, 8U, 1000000U}) {
    State state = start;
    const Packing outcome = search.search(state, departures);
    if (outcome == Packing::found) return {outcome, std::move(state.chosen)};
    if (outcome == Packing::impossible) return {outcome, {}};
  }
  return {};
}

}  // namespace strikeoff
