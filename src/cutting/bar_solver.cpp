// SPDX-License-Identifier: MIT
#include "cutting/bar_solver.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <numeric>
#include <optional>

#include "cutting/bar_packing.h"
#include "cutting/bar_state.h"
#include "cutting/column_generation.h"
#include "cutting/dual_cut.h"
#include "cutting/mix_search.h"
#include "cutting/pattern.h"

namespace strikeoff {
namespace {

std::int64_t cost_of(const BarProblem& problem, const BarMix& mix) {
  std::int64_t sum = 0;
  for (std::size_t k = 0; k < mix.size(); ++k) sum += problem.stocks[k].cost * mix[k];
  return sum;
}

/// One stock that takes several strips: the fewest strips of each width, then the fewest boards for
/// these strips. Boards needed by every plan: those that the strips needed by every plan need.
BarSolution cut_by_width(const BarProblem& problem, const BarEffort& effort) {
  const BarStock& stock = problem.stocks.front();
  BarProblem across;
  across.stocks.push_back({stock.width, 1, stock.available, 1});
  BarProblem across_at_least = across;        // with the strips that every plan has
  std::vector<std::vector<BarStrip>> strips;  // [width]
  bool proven = true;
  // Half of what is left for each width and for the boards.
  long left = effort.in_all;
  const auto cut = [&](const BarProblem& bars) {
    const BarEffort half{std::min(effort.a_mix, left / 2), left / 2};
    BarSolution solution = cut_bars(bars, half);
    left = std::max(left - solution.work, effort.in_all / 8);
    return solution;
  };
  for (const std::int64_t width : widths_of(problem)) {
    BarProblem along;
    along.stocks.push_back({stock.length, 1, std::numeric_limits<int>::max(), 1});
    for (const BarItem& item : problem.items) {
      along.items.push_back({item.length, item.width == width ? item.demand : 0, 1});
    }
    const BarSolution fewest = cut(along);
    std::vector<BarStrip>& own = strips.emplace_back();
    for (const BarPattern& bar : fewest.patterns) {
      for (int n = 0; n < bar.times; ++n) own.push_back({width, bar.counts});
    }
    proven = proven && fewest.proven;
    across.items.push_back({width, static_cast<int>(own.size()), 1});
    across_at_least.items.push_back({width, static_cast<int>(fewest.bound), 1});
  }
  const BarSolution boards = cut(across);
  const std::int64_t least = proven ? boards.bound : cut(across_at_least).bound;
  BarSolution solution{{}, boards.cost * stock.cost, least * stock.cost, false};
  solution.proven = !boards.patterns.empty() && solution.cost == solution.bound;
  solution.work = effort.in_all - left;
  for (const BarPattern& row : boards.patterns) {
    for (int n = 0; n < row.times; ++n) {
      BarPattern board{0, std::vector<int>(problem.items.size(), 0), {}, 1};
      for (std::size_t w = 0; w < strips.size(); ++w) {
        for (int s = 0; s < row.counts[w]; ++s) {
          board.strips.push_back(std::move(strips[w].back()));
          strips[w].pop_back();
          for (std::size_t i = 0; i < board.counts.size(); ++i) {
            board.counts[i] += board.strips.back().counts[i];
          }
        }
      }
      solution.patterns.push_back(std::move(board));
    }
  }
  return solution;
}

/// More kinds of pieces than this are not searched: the continuous solution has a row for each
/// (assumption; a second or so).
constexpr std::size_t most_kinds = 400;

bool fits(const BarItem& item, const BarStock& stock) {
  return item.length <= stock.length && item.width <= stock.width;
}

/// The mixes of one problem, tried by rising cost.
class Solver {
  /// What one continuous solution may take even when the effort is used up (assumption).
  static constexpr long least_effort = 2'000'000;

 public:
  Solver(const BarProblem& problem, int pieces, const BarEffort& effort)
      : problem_(problem),
        effort_(effort),
        left_(effort.in_all),
        most_(most_of(problem, pieces)),
        continuous_(problem),
        mixes_(problem, most_),
        free_(problem.stocks.size(), 0.0) {
    double dearest = 0;
    for (const BarStock& stock : problem.stocks) {
      cost_.push_back(static_cast<double>(stock.cost));
      dearest = std::max(dearest, cost_.back());
    }
    for (const BarItem& item : problem.items) {
      demand_.push_back(item.demand);
      areas_.push_back(static_cast<double>(item.length) * static_cast<double>(item.width));
      penalty_.push_back(2 * dearest + 1);
    }
  }

  BarSolution run(std::int64_t below) {
    add_cut(areas_);
    if (problem_.items.size() > most_kinds) {
      bound_by_area(below);
    } else {
      search(below);
    }
    solution_.work = effort_.in_all - left_;
    return std::move(solution_);
  }

 private:
  /// No plan, only what none can cost less than.
  void bound_by_area(std::int64_t below) {
    const auto mix = mixes_.cheapest(0);
    left_ -= mixes_.work();
    const std::int64_t price = mix ? cost_of(problem_, *mix) : MixSearch::no_cost;
    const std::int64_t least = std::min({price, mixes_.missed(), below});
    if (least < MixSearch::no_cost) solution_.bound = least;
  }

  void search(std::int64_t below) {
    // By area alone, and by the prices of the continuous solution.
    add_cut(solve(demand_, cost_, most_, penalty_).price);
    bool bound_is_final = false;  // a mix was given up, so the bound stays at its cost
    do {
      const auto mix = mixes_.cheapest(solution_.bound);
      left_ -= mixes_.work();
      const std::int64_t price = mix ? cost_of(problem_, *mix) : MixSearch::no_cost;
      const std::int64_t least = std::min({price, mixes_.missed(), below});
      if (!bound_is_final && least < MixSearch::no_cost) solution_.bound = least;
      // A search that was cut short has not shown this mix to be the cheapest.
      bound_is_final = bound_is_final || mixes_.missed() < price;
      if (!mix && least < below) break;  // cut short
      if (!mix || price >= below) return;
      if (is_cut_off(*mix)) continue;
      long a_mix = std::min(effort_.a_mix, left_);
      const long before = a_mix;
      PackedBars packed = pack_bars(problem_, *mix, continuous_, a_mix);
      left_ -= before - a_mix;
      if (packed.outcome == Packing::found) {
        solution_.patterns = std::move(packed.patterns);
        solution_.cost = price;
        solution_.proven = price == solution_.bound;
        return;
      }
      bound_is_final = bound_is_final || packed.outcome == Packing::unknown;
      mixes_.not_packed.push_back(*mix);
    } while (left_ > 0);
    round(below);
  }

  static BarMix most_of(const BarProblem& problem, int pieces) {
    BarMix most;
    for (const BarStock& stock : problem.stocks) {
      most.push_back(std::clamp(stock.available, 0, pieces));
    }
    return most;
  }

  ColumnGeneration::Answer solve(const std::vector<int>& demand, const std::vector<double>& cost,
                                 const BarMix& bars, const std::vector<double>& penalty) {
    const long before = continuous_.work();
    auto answer = continuous_.solve({demand, cost, bars, penalty}, std::max(left_, least_effort));
    left_ -= continuous_.work() - before;
    return answer;
  }

  void add_cut(const std::vector<double>& price) {
    long work = 0;
    if (auto cut = dual_cut(problem_, demand_, price, work)) mixes_.cuts.push_back(std::move(*cut));
    left_ -= work;
  }

  /// True when the continuous solution cannot pack a mix, which then violates a new cut.
  bool is_cut_off(const BarMix& mix) {
    const auto answer = solve(demand_, free_, mix, areas_);
    if (answer.uncut <= 0) return false;
    add_cut(answer.price);
    if (!satisfies(mix, mixes_.cuts.back())) return true;
    mixes_.cuts.pop_back();
    return false;
  }

  /// A plan without proof: the continuous solution rounded down, again and again, until few pieces
  /// are left, which are then cut exactly.
  void round(std::int64_t below) {
    BarState state{demand_, most_, {}};
    const auto pieces_left = [&] {
      return std::accumulate(state.demand.begin(), state.demand.end(), 0);
    };
    const int few = std::min(60, pieces_left() / 2);
    while (pieces_left() > few) {
      auto uses = solve(state.demand, cost_, state.bars, penalty_).uses;
      std::sort(uses.begin(), uses.end(), [](const auto& a, const auto& b) {
        return a.times != b.times ? a.times > b.times : a.pattern < b.pattern;
      });
      bool used = false;
      for (const auto& use : uses) {
        const BarPattern& pattern = continuous_.patterns()[use.pattern];
        // Where nothing is whole, the one used most.
        const int whole = static_cast<int>(use.times + 1e-6);
        const int times = state.room_for(pattern, used ? whole : std::max(whole, 1));
        if (times < 1) continue;
        state.use(pattern, times);
        used = true;
      }
      if (!used) return;
    }
    BarProblem rest = problem_;
    for (std::size_t i = 0; i < rest.items.size(); ++i) rest.items[i].demand = state.demand[i];
    for (std::size_t k = 0; k < rest.stocks.size(); ++k) {
      rest.stocks[k].available = state.bars[k];
    }
    const BarSolution last = cut_bars(rest, {effort_.a_mix / 10, effort_.in_all / 10});
    left_ -= last.work;
    if (last.patterns.empty() && pieces_left() > 0) return;
    std::int64_t cost = last.cost;
    for (const BarPattern& pattern : state.chosen) {
      cost += problem_.stocks[pattern.stock].cost * pattern.times;
    }
    if (cost >= below) return;
    solution_.cost = cost;
    solution_.proven = cost == solution_.bound;
    solution_.patterns = std::move(state.chosen);
    solution_.patterns.insert(solution_.patterns.end(), last.patterns.begin(), last.patterns.end());
  }

  const BarProblem& problem_;
  BarEffort effort_;
  long left_;
  BarMix most_;
  ColumnGeneration continuous_;
  MixSearch mixes_;
  std::vector<double> free_, cost_, areas_, penalty_;
  std::vector<int> demand_;
  BarSolution solution_;
};

}  // namespace

BarSolution cut_bars(const BarProblem& problem, const BarEffort& effort, std::int64_t below) {
  BarSolution solution;
  std::int64_t pieces = 0;
  for (const BarItem& item : problem.items) {
    pieces += item.demand;
    const bool has_stock = std::any_of(
        problem.stocks.begin(), problem.stocks.end(),
        [&](const BarStock& stock) { return stock.available > 0 && fits(item, stock); });
    if (item.demand > 0 && !has_stock) return solution;
  }
  if (pieces > std::numeric_limits<int>::max() / 2) return solution;
  if (pieces == 0) {
    solution.proven = true;
    return solution;
  }
  if (problem.stocks.size() == 1 && !problem.trim && !is_one_dimensional(problem) &&
      problem.items.size() <= most_kinds) {
    return cut_by_width(problem, effort);
  }
  return Solver(problem, static_cast<int>(pieces), effort).run(below);
}

}  // namespace strikeoff
