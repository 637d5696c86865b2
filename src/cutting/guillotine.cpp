// SPDX-License-Identifier: MIT
#include "cutting/guillotine.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <tuple>
#include <utility>

#include "cutting/exact_sheets.h"
#include "cutting/sheet_bound.h"
#include "cutting/sheet_fill.h"

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

std::size_t first_item(const CutSheet& sheet) {
  std::size_t first = sheet.pieces.front().item;
  for (const CutPiece& piece : sheet.pieces) first = std::min(first, piece.item);
  return first;
}

bool holds_all(const std::vector<CutSheet>& sheets, const GuillotineProblem& problem) {
  std::int64_t missing = 0;
  for (const RectangleItem& item : problem.items) missing += item.demand;
  for (const CutSheet& sheet : sheets) missing -= static_cast<std::int64_t>(sheet.pieces.size());
  return missing == 0;
}

}  // namespace

GuillotinePlan cut_guillotine(const GuillotineProblem& problem, const GuillotineEffort& effort) {
  GuillotinePlan plan;
  const Merged merged = merge_equal(problem);
  const GuillotineProblem& job = merged.problem;
  if (job.items.empty()) {
    for (const RectangleItem& item : problem.items)
      plan.unplaced.push_back(std::max(0, item.demand));
    plan.proven = true;
    return plan;
  }
  plan.sheets = fill_on_shelves(job);
  std::tie(plan.cost_bound, plan.sheet_bound) = bounds_of(plan.sheets, job);
  const auto is_met = [&] {
    return holds_all(plan.sheets, job) && cost_of(plan.sheets, job.stocks) == plan.cost_bound &&
           static_cast<int>(plan.sheets.size()) == plan.sheet_bound;
  };
  if (!is_met()) {
    auto others = fill_one_by_one(job, effort.steps / 4);
    if (worth(others, job.stocks) < worth(plan.sheets, job.stocks)) plan.sheets = std::move(others);
    std::tie(plan.cost_bound, plan.sheet_bound) = bounds_of(plan.sheets, job);
  }
  // Where shelves are proven by area already, the boxes can only keep a larger rectangle whole.
  long steps = is_met() ? effort.steps / 10 : effort.steps;
  if (auto exact = cut_exactly(job, plan.sheets, effort.choices, steps)) {
    plan.sheets = std::move(exact->sheets);
    plan.proven = exact->proven;
    const auto number_bound = static_cast<int>(exact->number_bound);
    plan.cost_bound = std::max(plan.cost_bound, exact->cost_bound);
    plan.sheet_bound = std::max(plan.sheet_bound, number_bound);
    if (exact->proven)
      std::tie(plan.cost_bound, plan.sheet_bound) = std::pair(exact->cost_bound, number_bound);
  }
  if (!plan.proven && !is_met())
    plan.sheets = refill(std::move(plan.sheets), job, effort.steps / 2);
  plan.cost = cost_of(plan.sheets, job.stocks);
  plan.proven = plan.proven || (holds_all(plan.sheets, job) && plan.cost == plan.cost_bound);
  const auto by_stock = [](const CutSheet& a, const CutSheet& b) { return a.stock < b.stock; };
  std::stable_sort(plan.sheets.begin(), plan.sheets.end(), by_stock);
  restore(plan.sheets, problem, merged, plan.unplaced);
  std::stable_sort(plan.sheets.begin(), plan.sheets.end(),
                   [](const CutSheet& a, const CutSheet& b) {
                     return std::pair(a.stock, first_item(a)) < std::pair(b.stock, first_item(b));
                   });
  return plan;
}

}  // namespace strikeoff
