// SPDX-License-Identifier: MIT
#include "cutting/bar_packing.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>

#include "cutting/bar_state.h"
#include "cutting/pattern.h"
#include "cutting/rip.h"

namespace strikeoff {
namespace {

constexpr int dives = 100;
constexpr long fill_work = 3'000;  // steps of a plan filled, beside its knapsacks

/// Rounds the continuous solution down and solves the rest again, until all is cut or stuck.
class Dive {
 public:
  Dive(BarSearch& search, const ColumnGeneration& continuous, const long& effort)
      : search_(search), continuous_(continuous), effort_(effort) {}

  /// Where nothing is whole, the pattern used most goes first; in later `turn`s the choice falls by
  /// chance, in proportion to use (a fixed sequence of numbers, so that results repeat).
  bool run(BarState& state, int turn) {
    while (!state.is_done()) {
      if (effort_ < 0) return false;
      auto answer = search_.solve(state);
      if (!search_.cuts_all(answer) || answer.uses.empty()) return false;
      std::sort(answer.uses.begin(), answer.uses.end(), [&](const auto& a, const auto& b) {
        return a.times != b.times ? a.times > b.times : a.pattern < b.pattern;
      });
      if (use_whole(state, answer.uses)) continue;
      const auto& use = answer.uses[turn == 0 ? 0 : drawn(answer.uses)];
      const BarPattern& pattern = continuous_.patterns()[use.pattern];
      if (state.bars[pattern.stock] < 1) return false;
      state.use(pattern, 1);
    }
    return true;
  }

 private:
  bool use_whole(BarState& state, const std::vector<ColumnGeneration::Use>& uses) const {
    bool used = false;
    for (const auto& use : uses) {
      const BarPattern& pattern = continuous_.patterns()[use.pattern];
      const int times = state.room_for(pattern, static_cast<int>(std::floor(use.times + 1e-6)));
      if (times < 1) continue;
      state.use(pattern, times);
      used = true;
    }
    return used;
  }

  /// One of the uses, each as likely as it is used.
  std::size_t drawn(const std::vector<ColumnGeneration::Use>& uses) {
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

  BarSearch& search_;
  const ColumnGeneration& continuous_;
  const long& effort_;
  std::int64_t chance_ = 1;
};

bool fill_each(const BarProblem& problem, bool bars, BarState& state, long& effort) {
  const BarState start = state;
  for (const bool longest_first : {true, false}) {
    for (const bool for_length : {false, true}) {
      state = start;
      long work = fill_work;
      const bool filled = bars ? fill_each_bar(problem, longest_first, state, work)
                               : fill_each_board(problem, longest_first, for_length, state, work);
      effort -= work;
      if (filled) return true;
      if (bars) break;
    }
  }
  return false;
}

}  // namespace

PackedBars pack_bars(const BarProblem& problem, const BarMix& mix, ColumnGeneration& continuous,
                     long& effort) {
  if (effort < 0) return {};
  BarState start;
  for (const BarItem& item : problem.items) start.demand.push_back(item.demand);
  start.bars = mix;
  const bool bars = is_one_dimensional(problem);
  if (bars && waste_allowed(problem, start) < 0) return {Packing::impossible, {}};
  BarState state = start;
  if (fill_each(problem, bars, state, effort)) return {Packing::found, std::move(state.chosen)};
  BarSearch search(problem, continuous, effort);
  const auto answer = search.solve(start);
  if (search.is_impossible(start, answer)) return {Packing::impossible, {}};
  Dive dive(search, continuous, effort);
  for (int turn = 0; turn < dives && effort > 0; ++turn) {
    state = start;
    if (dive.run(state, turn)) return {Packing::found, std::move(state.chosen)};
  }
  if (!bars) {
    PackedBars ripped = rip_boards(problem, mix, effort);
    // No plan without a third cut is no proof against one with it.
    if (problem.trim && ripped.outcome == Packing::impossible) ripped.outcome = Packing::unknown;
    return ripped;
  }
  // Near the first choices first, then everywhere.
  for (const std::size_t departures : {2U, 4U, 8U, 1000000U}) {
    state = start;
    const Packing outcome = search.search(state, departures);
    if (outcome == Packing::found) return {outcome, std::move(state.chosen)};
    if (outcome == Packing::impossible) return {outcome, {}};
  }
  return {};
}

}  // namespace strikeoff
