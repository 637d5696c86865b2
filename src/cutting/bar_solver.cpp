// SPDX-License-Identifier: MIT
#include "cutting/bar_solver.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <numeric>
#include <optional>

#include "cutting/bar_packing.h"
#include "cutting/column_generation.h"
#include "cutting/dual_cut.h"
#include "cutting/pattern.h"

namespace strikeoff {
namespace {

constexpr std::int64_t no_cost = std::numeric_limits<std::int64_t>::max();

std::int64_t up(std::int64_t a, std::int64_t b) {
  return a <= 0 ? 0 : (a + b - 1) / b;
}

/// The cheapest mix that satisfies every cut and is no part of a mix known not to pack.
class MixSearch {
 public:
  MixSearch(const BarProblem& problem, const BarMix& most) : problem_(problem), most_(most) {
    // The dearest first: few of them are needed, and the cheap ones then follow.
    for (std::size_t k = 0; k < most.size(); ++k) {
      if (problem.stocks[k].cost > 0) order_.push_back(k);
    }
    std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
      return problem.stocks[a].cost > problem.stocks[b].cost;
    });
  }

  std::vector<DualCut> cuts;
  std::vector<BarMix> not_packed;

  /// Of equal cost the one found first in a fixed order; nothing when there is none.
  std::optional<BarMix> cheapest() {
    best_cost_ = no_cost;
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

 private:
  /// The least that the stocks from `at` on can cost to fill what one cut still misses.
  [[nodiscard]] bool may_improve(std::size_t at, std::int64_t cost,
                                 const std::vector<std::int64_t>& missing) const {
    if (cost >= best_cost_) return false;
    for (std::size_t j = 0; j < cuts.size(); ++j) {
      if (missing[j] <= 0) continue;
      double rate = 0;  // most worth for one unit of cost
      for (std::size_t a = at; a < order_.size(); ++a) {
        const std::size_t k = order_[a];
        rate = std::max(rate, static_cast<double>(cuts[j].worth[k]) /
                                  static_cast<double>(problem_.stocks[k].cost));
      }
      if (rate <= 0) return false;
      // 1e-9: rounding must not prune an equal one away from a better one.
      const double least = static_cast<double>(missing[j]) / rate;
      if (static_cast<double>(cost) + least * (1 - 1e-9) > static_cast<double>(best_cost_) - 1) {
        return false;
      }
    }
    return true;
  }

  void descend(std::size_t at, std::int64_t cost, const std::vector<std::int64_t>& missing) {
    if (at == order_.size()) {
      if (cost >= best_cost_) return;
      if (std::any_of(missing.begin(), missing.end(), [](auto m) { return m > 0; })) return;
      if (is_ruled_out()) return;
      best_cost_ = cost;
      best_ = mix_;
      return;
    }
    if (!may_improve(at, cost, missing)) return;
    const std::size_t k = order_[at];
    std::int64_t least = 0, most = 0;
    for (std::size_t j = 0; j < cuts.size(); ++j) {
      if (cuts[j].worth[k] <= 0) continue;
      most = std::max(most, up(missing[j], cuts[j].worth[k]));
    }
    // The last stock fills whatever is missing; more of it is of use only past a mix ruled out.
    if (at + 1 == order_.size()) least = most;
    if (!not_packed.empty()) most += 1 + most / 8;
    most = std::min<std::int64_t>(most, most_[k]);
    for (std::int64_t n = least; n <= most; ++n) {
      mix_[k] = static_cast<int>(n);
      std::vector<std::int64_t> rest = missing;
      for (std::size_t j = 0; j < cuts.size(); ++j) rest[j] -= cuts[j].worth[k] * n;
      descend(at + 1, cost + n * problem_.stocks[k].cost, rest);
    }
    mix_[k] = 0;
  }

  [[nodiscard]] bool is_ruled_out() const {
    return std::any_of(not_packed.begin(), not_packed.end(), [&](const BarMix& known) {
      for (std::size_t k = 0; k < known.size(); ++k) {
        if (mix_[k] > known[k]) return false;
      }
      return true;
    });
  }

  const BarProblem& problem_;
  const BarMix& most_;
  std::vector<std::size_t> order_;
  BarMix mix_, best_;
  std::int64_t best_cost_ = no_cost;
};

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
  std::vector<std::vector<BarStrip>> strips;  // [width]
  bool proven = true;
  for (const std::int64_t width : widths_of(problem)) {
    BarProblem along;
    along.stocks.push_back({stock.length, 1, std::numeric_limits<int>::max(), 1});
    for (const BarItem& item : problem.items) {
      along.items.push_back({item.length, item.width == width ? item.demand : 0, 1});
    }
    const BarSolution cut = cut_bars(along, effort);
    std::vector<BarStrip>& own = strips.emplace_back();
    for (const BarPattern& bar : cut.patterns) {
      for (int n = 0; n < bar.times; ++n) own.push_back({width, bar.counts});
    }
    proven = proven && cut.proven;
    across.items.push_back({width, static_cast<int>(own.size()), 1});
  }
  const BarSolution boards = cut_bars(across, effort);
  BarSolution solution{{}, boards.cost * stock.cost, 0, proven && boards.proven};
  // Strips that are not proven fewest prove no number of boards.
  solution.bound = proven ? boards.bound * stock.cost : 0;
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

bool fits(const BarItem& item, const BarStock& stock) {
  return item.length <= stock.length && item.width <= stock.width;
}

}  // namespace

BarSolution cut_bars(const BarProblem& problem, const BarEffort& effort, std::int64_t below) {
  BarSolution solution;
  const bool all_fit =
      std::all_of(problem.items.begin(), problem.items.end(), [&](const BarItem& item) {
        return item.demand == 0 ||
               std::any_of(problem.stocks.begin(), problem.stocks.end(),
                           [&](const BarStock& stock) { return fits(item, stock); });
      });
  if (!all_fit) return solution;
  if (problem.stocks.size() == 1 && !problem.trim && !is_one_dimensional(problem)) {
    return cut_by_width(problem, effort);
  }
  int pieces = 0;
  std::vector<int> demand;
  for (const BarItem& item : problem.items) {
    pieces += item.demand;
    demand.push_back(item.demand);
  }
  if (pieces == 0) {
    solution.proven = true;
    return solution;
  }
  BarMix most;
  for (const BarStock& stock : problem.stocks) most.push_back(std::min(stock.available, pieces));

  ColumnGeneration continuous(problem);
  MixSearch mixes(problem, most);
  // By length alone, and by the prices of the continuous solution.
  std::vector<double> lengths, penalty, cost;
  double dearest = 0;
  for (const BarStock& stock : problem.stocks) {
    cost.push_back(static_cast<double>(stock.cost));
    dearest = std::max(dearest, cost.back());
  }
  for (const BarItem& item : problem.items) {
    lengths.push_back(static_cast<double>(item.length) * static_cast<double>(item.width));
    penalty.push_back(2 * dearest + 1);
  }
  long work = 0;
  mixes.cuts.push_back(*dual_cut(problem, demand, lengths, work));
  const auto whole = continuous.solve({demand, cost, most, penalty});
  if (auto cut = dual_cut(problem, demand, whole.price, work)) mixes.cuts.push_back(std::move(*cut));

  long left = effort.in_all;
  std::vector<double> free(problem.stocks.size(), 0.0);
  bool bound_is_final = false;  // a mix was given up, so the bound stays at its cost
  while (const auto mix = mixes.cheapest()) {
    const std::int64_t price = cost_of(problem, *mix);
    if (!bound_is_final) solution.bound = std::min(price, below);
    if (price >= below) return solution;
    const auto answer = continuous.solve({demand, free, *mix, lengths});
    if (answer.uncut > 0) {
      auto cut = dual_cut(problem, demand, answer.price, work);
      if (cut && !satisfies(*mix, *cut)) {
        mixes.cuts.push_back(std::move(*cut));
        continue;
      }
    }
    long a_mix = std::min(effort.a_mix, left);
    const long before = a_mix;
    PackedBars packed = pack_bars(problem, *mix, continuous, a_mix);
    left -= before - a_mix;
    if (packed.outcome == Packing::found) {
      solution.patterns = std::move(packed.patterns);
      solution.cost = price;
      solution.proven = !bound_is_final;
      return solution;
    }
    if (packed.outcome == Packing::unknown) bound_is_final = true;
    mixes.not_packed.push_back(*mix);
  }
  return solution;
}

}  // namespace strikeoff
