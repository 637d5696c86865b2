// SPDX-License-Identifier: MIT
#include "cutting/exact_sheets.h"

#include <algorithm>
#include <numeric>

#include "cutting/box_table.h"
#include "cutting/sheet_cuts.h"
#include "cutting/sheet_mix.h"

namespace strikeoff {
namespace {

std::vector<CutSheet> sheets_of(const SheetMix& mix, const BoxTable& table,
                                const std::vector<SheetStock>& stocks) {
  std::vector<CutSheet> sheets;
  for (const SheetLoad& load : mix.loads) {
    sheets.push_back(sawn(load.stock, stocks[load.stock], pieces_of(table, load.choice, load.box)));
  }
  return sheets;
}

/// The fewest sheets of any plan, whatever they cost.
std::optional<int> fewest(const BoxTable& table, std::vector<SheetStock> stocks,
                          const SheetMix& cheapest, long& steps) {
  const bool one_cost = std::all_of(stocks.begin(), stocks.end(), [&](const SheetStock& s) {
    return s.cost == stocks.front().cost;
  });
  if (one_cost) return static_cast<int>(cheapest.loads.size());
  for (SheetStock& stock : stocks) stock.cost = 1;
  const auto mix = best_mix(table, stocks, steps);
  if (!mix) return std::nullopt;
  return static_cast<int>(mix->loads.size());
}

}  // namespace

std::int64_t cost_of(const std::vector<CutSheet>& sheets, const std::vector<SheetStock>& stocks) {
  return std::accumulate(
      sheets.begin(), sheets.end(), std::int64_t{},
      [&](std::int64_t sum, const CutSheet& s) { return sum + stocks[s.stock].cost; });
}

PlanWorth worth(const std::vector<CutSheet>& sheets, const std::vector<SheetStock>& stocks) {
  std::int64_t pieces = 0;
  double rest = 0;
  int stages = 0;
  for (const CutSheet& sheet : sheets) {
    pieces += static_cast<std::int64_t>(sheet.pieces.size());
    if (!sheet.rests.empty()) rest = std::max(rest, area_of(sheet.rests.front()));
    stages = std::max(stages, sheet.stages);
  }
  return {-pieces, cost_of(sheets, stocks), sheets.size(), stages > 3, -rest, stages};
}

std::optional<ExactSheets> cut_exactly(const GuillotineProblem& problem, long choices,
                                       long& steps) {
  const auto& stocks = problem.stocks;
  constexpr int any = 1'000'000;
  const auto table = box_table(problem, any, choices, steps);
  if (!table) return std::nullopt;
  const auto mix = best_mix(*table, stocks, steps);
  if (!mix) return std::nullopt;
  const auto number = fewest(*table, stocks, *mix, steps);
  if (!number) return std::nullopt;
  ExactSheets result{sheets_of(*mix, *table, stocks), mix->cost, *number};
  const bool easy = std::all_of(result.sheets.begin(), result.sheets.end(),
                                [](const CutSheet& s) { return s.stages <= 3; });
  if (easy) return result;
  if (const auto few = box_table(problem, 3, choices, steps)) {
    if (const auto few_mix = best_mix(*few, stocks, steps)) {
      auto sheets = sheets_of(*few_mix, *few, stocks);
      if (worth(sheets, stocks) < worth(result.sheets, stocks)) result.sheets = std::move(sheets);
    }
  }
  return result;
}

}  // namespace strikeoff
