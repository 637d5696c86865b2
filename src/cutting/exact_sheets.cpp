// SPDX-License-Identifier: MIT
#include "cutting/exact_sheets.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "cutting/box_table.h"
#include "cutting/sheet_cuts.h"
#include "cutting/sheet_mix.h"

namespace strikeoff {
namespace {

MixWorth worth_of(const std::vector<CutSheet>& sheets, const GuillotineProblem& problem) {
  MixWorth worth{0, cost_of(sheets, problem.stocks), static_cast<std::int64_t>(sheets.size())};
  for (const RectangleItem& item : problem.items) worth.unplaced += item.demand;
  for (const CutSheet& sheet : sheets) {
    worth.unplaced -= static_cast<std::int64_t>(sheet.pieces.size());
  }
  return worth;
}

std::vector<CutSheet> sheets_of(const SheetMix& mix, const BoxTable& table,
                                const GuillotineProblem& problem) {
  std::vector<CutSheet> sheets;
  for (const SheetFilling* filling : mix.loads) {
    sheets.push_back(
        sawn(filling->stock, problem.stocks[filling->stock],
             pieces_of(table, problem, filling->choice, filling->first, filling->box)));
  }
  return sheets;
}

/// Sheets that cost one each.
GuillotineProblem counted(GuillotineProblem problem) {
  for (SheetStock& stock : problem.stocks) stock.cost = 1;
  return problem;
}

bool have_one_cost(const std::vector<SheetStock>& stocks) {
  return std::all_of(stocks.begin(), stocks.end(),
                     [&](const SheetStock& s) { return s.cost == stocks.front().cost; });
}

/// The fewest sheets of any plan, whatever they cost: less than `known`, or that, or the bound.
std::int64_t fewest(const MixProblem& mix, const GuillotineProblem& each_one, MixWorth known,
                    long& steps) {
  known.cost = known.sheets;
  const MixProblem counting{each_one, mix.code, mix.fillings, mix.number, mix.number};
  if (known.cost == mix.number.bound && known.unplaced == 0) return known.sheets;
  const auto fewer = better_mix(counting, known, false, steps);
  if (steps < 0) return known.unplaced == 0 ? mix.number.bound : 0;
  return fewer ? fewer->worth.sheets : known.sheets;
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
  std::size_t settings = 0;
  for (const CutSheet& sheet : sheets) {
    pieces += static_cast<std::int64_t>(sheet.pieces.size());
    if (!sheet.rests.empty()) rest = std::max(rest, area_of(sheet.rests.front()));
    stages = std::max(stages, sheet.stages);
    settings += settings_of(sheet);
  }
  return {-pieces, cost_of(sheets, stocks), sheets.size(), -rest, stages, settings};
}

std::optional<ExactSheets> cut_exactly(const GuillotineProblem& problem,
                                       std::vector<CutSheet> known, std::size_t choices,
                                       long& steps) {
  const auto table = box_table(problem, choices, steps);
  if (!table) return std::nullopt;
  MixProblem mix{problem, table->code, {}, {}, {}};
  for (std::size_t s = 0; s < problem.stocks.size(); ++s) {
    auto& fillings = mix.fillings.emplace_back();
    if (problem.stocks[s].available > 0) fillings = fillings_of(*table, problem.stocks[s], s);
  }
  const GuillotineProblem each_one = counted(problem);
  mix.cost = sheet_dual(mix.fillings, problem, table->code, steps);
  mix.number = have_one_cost(problem.stocks) && problem.stocks.front().cost == 1
                   ? mix.cost
                   : sheet_dual(mix.fillings, each_one, table->code, steps);
  ExactSheets result{std::move(known), 0, 0, false};
  MixWorth best = worth_of(result.sheets, problem);
  if (steps >= 0) {
    if (const auto better = better_mix(mix, best, false, steps)) {
      result.sheets = sheets_of(*better, *table, problem);
      best = better->worth;
    }
  }
  result.proven = steps >= 0;
  if (best.unplaced == 0) {
    result.cost_bound = mix.cost.bound;
    result.number_bound = mix.number.bound;
  }
  if (result.proven) {
    result.cost_bound = best.cost;
    result.number_bound =
        have_one_cost(problem.stocks) ? best.sheets : fewest(mix, each_one, best, steps);
    constexpr long most_for_rest = 200'000;
    long for_rest = std::min(steps, most_for_rest);
    if (const auto alike = better_mix(mix, best, true, for_rest)) {
      auto sheets = sheets_of(*alike, *table, problem);
      if (worth(sheets, problem.stocks) < worth(result.sheets, problem.stocks)) {
        result.sheets = std::move(sheets);
      }
    }
  }
  return result;
}

}  // namespace strikeoff
