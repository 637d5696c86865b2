// SPDX-License-Identifier: MIT
#include "cutting/guillotine.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <tuple>
#include <utility>

#include "cutting/box_table.h"
#include "cutting/sheet_bound.h"
#include "cutting/sheet_cuts.h"
#include "cutting/sheet_fill.h"
#include "cutting/sheet_mix.h"

namespace strikeoff {
namespace {

bool fits(const RectangleItem& item, const SheetStock& stock) {
  const bool straight = item.length <= stock.length && item.width <= stock.width;
  return straight || (item.may_turn && item.width <= stock.length && item.length <= stock.width);
}

/// Items of one size made one, smallest first, and the items of the problem they stand for.
struct Merged {
  GuillotineProblem problem;
  std::vector<std::vector<std::size_t>> origins;
};

Merged merge_equal(const GuillotineProblem& problem) {
  std::map<std::tuple<double, std::int64_t, std::int64_t, bool>, std::vector<std::size_t>> sizes;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    const RectangleItem& item = problem.items[i];
    const bool held = std::any_of(
        problem.stocks.begin(), problem.stocks.end(),
        [&](const SheetStock& stock) { return stock.available > 0 && fits(item, stock); });
    if (item.demand <= 0 || !held) continue;
    auto [length, width] = std::pair(item.length, item.width);
    if (item.may_turn && length < width) std::swap(length, width);
    const double area = static_cast<double>(length) * static_cast<double>(width);
    sizes[{area, length, width, item.may_turn && length != width}].push_back(i);
  }
  Merged result;
  result.problem.stocks = problem.stocks;
  for (auto& [size, origins] : sizes) {
    const auto& [area, length, width, may_turn] = size;
    int demand = 0;
    for (const std::size_t i : origins) demand += problem.items[i].demand;
    result.problem.items.push_back({length, width, demand, may_turn});
    result.origins.push_back(std::move(origins));
  }
  return result;
}

/// The plan as each of the problem's items is cut.
void restore(std::vector<CutSheet>& sheets, const GuillotineProblem& problem, const Merged& merged,
             std::vector<int>& unplaced) {
  for (const RectangleItem& item : problem.items) unplaced.push_back(std::max(0, item.demand));
  std::vector<std::size_t> next(merged.origins.size(), 0);
  for (CutSheet& sheet : sheets) {
    for (CutPiece& piece : sheet.pieces) {
      const auto& origins = merged.origins[piece.item];
      std::size_t& at = next[piece.item];
      while (unplaced[origins[at]] == 0) ++at;
      piece.item = origins[at];
      --unplaced[piece.item];
      piece.turned = piece.length != problem.items[piece.item].length;
    }
  }
}

std::vector<CutSheet> sheets_of(const SheetMix& mix, const BoxTable& table,
                                const std::vector<SheetStock>& stocks) {
  std::vector<CutSheet> sheets;
  for (const SheetLoad& load : mix.loads) {
    sheets.push_back(sawn(load.stock, stocks[load.stock], pieces_of(table, load.choice, load.box)));
  }
  return sheets;
}

std::int64_t cost_of(const std::vector<CutSheet>& sheets, const std::vector<SheetStock>& stocks) {
  return std::accumulate(
      sheets.begin(), sheets.end(), std::int64_t{},
      [&](std::int64_t sum, const CutSheet& s) { return sum + stocks[s.stock].cost; });
}

/// Less is better.
auto worth(const std::vector<CutSheet>& sheets, const std::vector<SheetStock>& stocks) {
  std::size_t pieces = 0;
  double rest = 0;
  int stages = 0;
  for (const CutSheet& sheet : sheets) {
    pieces += sheet.pieces.size();
    if (!sheet.rests.empty()) rest = std::max(rest, area_of(sheet.rests.front()));
    stages = std::max(stages, sheet.stages);
  }
  return std::make_tuple(-static_cast<std::int64_t>(pieces), cost_of(sheets, stocks), sheets.size(),
                         stages > 3, -rest, stages);
}

/// What the boxes prove, and the best plan of at most three stages or of any that meets it.
struct Exact {
  std::vector<CutSheet> sheets;
  std::int64_t cost = 0;
  int fewest = 0;  // sheets
};

std::optional<Exact> exact(const GuillotineProblem& problem, const GuillotineEffort& effort) {
  long steps = effort.steps;
  constexpr int any = 1000000;
  const auto table = box_table(problem, any, effort.pieces, steps);
  if (!table) return std::nullopt;
  const auto mix = best_mix(*table, problem.stocks, steps);
  std::vector<SheetStock> alike = problem.stocks;
  for (SheetStock& stock : alike) stock.cost = 1;
  const auto fewest = mix ? best_mix(*table, alike, steps) : std::nullopt;
  if (!fewest) return std::nullopt;
  Exact result{sheets_of(*mix, *table, problem.stocks), mix->cost,
               static_cast<int>(fewest->loads.size())};
  if (const auto easy = box_table(problem, 3, effort.pieces, steps)) {
    if (const auto easy_mix = best_mix(*easy, problem.stocks, steps)) {
      auto sheets = sheets_of(*easy_mix, *easy, problem.stocks);
      if (worth(sheets, problem.stocks) < worth(result.sheets, problem.stocks)) {
        result.sheets = std::move(sheets);
      }
    }
  }
  return result;
}

}  // namespace

GuillotinePlan cut_guillotine(const GuillotineProblem& problem, const GuillotineEffort& effort) {
  GuillotinePlan plan;
  const Merged merged = merge_equal(problem);
  if (auto best = exact(merged.problem, effort)) {
    plan.sheets = std::move(best->sheets);
    plan.cost_bound = best->cost;
    plan.sheet_bound = best->fewest;
    plan.proven = true;
  } else {
    plan.sheets = fill_on_shelves(merged.problem);
    auto others = fill_one_by_one(merged.problem, effort.steps);
    if (worth(others, problem.stocks) < worth(plan.sheets, problem.stocks)) {
      plan.sheets = std::move(others);
    }
    std::tie(plan.cost_bound, plan.sheet_bound) = bounds_of(plan.sheets, merged.problem);
  }
  std::stable_sort(plan.sheets.begin(), plan.sheets.end(),
                   [](const CutSheet& a, const CutSheet& b) { return a.stock < b.stock; });
  restore(plan.sheets, problem, merged, plan.unplaced);
  plan.cost = cost_of(plan.sheets, problem.stocks);
  const bool all =
      std::all_of(plan.unplaced.begin(), plan.unplaced.end(), [](int n) { return n == 0; });
  plan.proven = plan.proven || (all && plan.cost == plan.cost_bound);
  return plan;
}

}  // namespace strikeoff
