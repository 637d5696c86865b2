// SPDX-License-Identifier: MIT
#include "cutting/board_plan.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numeric>
#include <optional>
#include <utility>

#include "cutting/bar_solver.h"
#include "cutting/board_problem.h"
#include "cutting/gather.h"
#include "cutting/pattern.h"

namespace strikeoff {
namespace {

// What a hopeless job may take: about a fifth of a second for the plan, less for each bound,
// optimised (assumption). A normal job needs a hundredth of that.
constexpr BarEffort for_plan{200'000'000, 400'000'000}, for_bound{20'000'000, 40'000'000};
// Doubles inside the search hold whole numbers exactly to 2^53.
constexpr double most_cost = 9e15;
constexpr double parts_of_unit = 1e6;  // of a unit of cost

/// Whole costs in which a unit of money outweighs any number of boards.
class Costs {
 public:
  Costs(const std::vector<BoardSource>& sources, std::size_t pieces)
      : boards_(static_cast<std::int64_t>(pieces) + 1) {
    for (const BoardSource& source : sources) {
      // Checked before the conversion: an absurd price is not a whole number of 64 bits.
      fits_ = fits_ && source.cost * parts_of_unit < most_cost;
      if (!fits_) return;
      money_.push_back(std::llround(source.cost * parts_of_unit));
      unit_ = std::gcd(unit_, money_.back());
    }
    unit_ = std::max<std::int64_t>(unit_, 1);
    for (std::size_t k = 0; k < sources.size(); ++k) {
      money_[k] /= unit_;
      const auto n = static_cast<double>(boards_);
      fits_ = fits_ && static_cast<double>(money_[k]) * n * n < most_cost;
      costs_.push_back(sources[k].on_hand || !fits_ ? 0 : money_[k] * boards_ + 1);
    }
  }

  [[nodiscard]] bool fits() const { return fits_; }
  [[nodiscard]] std::int64_t of(std::size_t source) const { return costs_[source]; }
  [[nodiscard]] std::int64_t of(const BoardPacking& packing) const {
    std::int64_t sum = 0;
    for (const PackedBoard& board : packing.boards) sum += costs_[board.source];
    return sum;
  }
  /// The money in it, in the unit of the sources.
  [[nodiscard]] double money(std::int64_t cost) const {
    return static_cast<double>(cost / boards_ * unit_) / parts_of_unit;
  }

 private:
  std::int64_t boards_, unit_ = 0;
  std::vector<std::int64_t> money_, costs_;
  bool fits_ = true;
};

class Planner {
 public:
  Planner(const std::vector<BoardItem>& items, const std::vector<BoardSource>& sources,
          const Saw& saw, BoardProblem problem)
      : items_(items), sources_(sources), saw_(saw), problem_(std::move(problem)) {
    several_widths_ = widths_of(problem_.bars).size() > 1;
  }

  /// Looks for a cheaper plan; returns what no plan can cost less than.
  std::int64_t improve(BoardPacking& packing, const Costs& costs) {
    for (std::size_t k = 0; k < sources_.size(); ++k) problem_.bars.stocks[k].cost = costs.of(k);
    std::int64_t known = costs.of(packing);
    const BarSolution trimmed = several_widths_ ? solve(true, for_bound, known) : BarSolution{};
    if (several_widths_ && trimmed.bound >= known) return known;
    const BarSolution two_stage = solve(false, for_plan, known);
    std::int64_t bound = several_widths_ ? trimmed.bound : two_stage.bound;
    const auto use = [&](const BarSolution& solution) {
      if (solution.patterns.empty() || solution.cost >= known) return;
      packing = packing_of(solution.patterns, problem_, items_, sources_, saw_);
      known = costs.of(packing);
    };
    use(two_stage);
    use(trimmed);
    return std::min(bound, known);
  }

  /// Cuts from fewer pieces on hand beside the boards bought.
  void spare_on_hand(BoardPacking& packing) {
    std::vector<int> used(sources_.size());
    for (const PackedBoard& board : packing.boards) ++used[board.source];
    BarProblem bars = problem_.bars;
    std::int64_t known = 0;
    for (std::size_t k = 0; k < sources_.size(); ++k) {
      bars.stocks[k].cost = int{sources_[k].on_hand};
      if (sources_[k].on_hand) {
        known += used[k];
      } else {
        bars.stocks[k].available = used[k];
      }
    }
    if (known == 0) return;
    const BarSolution fewer = cut_bars(bars, for_bound, known);
    if (fewer.patterns.empty() || fewer.cost >= known) return;
    packing = packing_of(fewer.patterns, problem_, items_, sources_, saw_);
  }

  /// Boards of one stock that every plan needs.
  [[nodiscard]] int least_of(std::size_t stock, const BoardPacking& packing) {
    std::int64_t used = 0;
    for (const PackedBoard& board : packing.boards) {
      used += int{sources_[board.source].stock == stock};
    }
    if (used == 0) return 0;
    for (std::size_t k = 0; k < sources_.size(); ++k) {
      problem_.bars.stocks[k].cost = int{sources_[k].stock == stock};
    }
    return static_cast<int>(solve(several_widths_, for_bound, used).bound);
  }

 private:
  BarSolution solve(bool trim, const BarEffort& effort, std::int64_t known) {
    problem_.bars.trim = trim;
    BarSolution solution = cut_bars(problem_.bars, effort, known);
    problem_.bars.trim = false;
    return solution;
  }

  const std::vector<BoardItem>& items_;
  const std::vector<BoardSource>& sources_;
  Saw saw_;
  BoardProblem problem_;
  bool several_widths_ = false;
};

}  // namespace

BoardPlan plan_boards(const std::vector<BoardItem>& items, const std::vector<BoardSource>& sources,
                      std::size_t stocks, const Saw& saw) {
  BoardPlan plan{pack_boards(items, sources, saw), 0, std::vector<int>(stocks, 0)};
  if (items.empty() || !plan.packing.unplaced.empty()) return plan;
  BoardProblem problem = board_problem(items, sources, saw);
  const Costs costs(sources, items.size());
  if (costs.fits()) {
    Planner planner(items, sources, saw, std::move(problem));
    plan.cost_bound = costs.money(planner.improve(plan.packing, costs));
    planner.spare_on_hand(plan.packing);
    for (std::size_t s = 0; s < stocks; ++s) {
      plan.stock_bounds[s] = planner.least_of(s, plan.packing);
    }
  }
  gather(plan.packing, items, sources, saw);
  return plan;
}

}  // namespace strikeoff
