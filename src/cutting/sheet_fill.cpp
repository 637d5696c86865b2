// SPDX-License-Identifier: MIT
#include "cutting/sheet_fill.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>
#include <utility>

#include "core/shelves.h"
#include "cutting/box_table.h"
#include "cutting/exact_sheets.h"
#include "cutting/sheet_cuts.h"
#include "cutting/sheet_filling.h"

namespace strikeoff {
namespace {

/// Free sheets first, then by cost of area.
std::vector<std::size_t> by_cost(const std::vector<SheetStock>& stocks) {
  std::vector<std::size_t> order(stocks.size());
  std::iota(order.begin(), order.end(), std::size_t{});
  const auto per_area = [&](std::size_t s) {
    return static_cast<double>(stocks[s].cost) /
           (static_cast<double>(stocks[s].length) * static_cast<double>(stocks[s].width));
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return per_area(a) < per_area(b); });
  return order;
}

Length length_of(std::int64_t size) {
  return Length::nm(static_cast<double>(size));
}
std::int64_t size_of(Length length) {
  return std::llround(length.in_nm());
}

/// Some of the largest pieces left, so few that there are at most `most` choices of them, and the
/// items they stand for.
std::pair<GuillotineProblem, std::vector<std::size_t>> largest_of(const GuillotineProblem& problem,
                                                                  int most) {
  GuillotineProblem part{{}, problem.stocks};
  std::vector<std::size_t> origins;
  for (std::size_t i = problem.items.size(); i-- > 0 && most > 1;) {
    RectangleItem item = problem.items[i];
    item.demand = std::min({item.demand, most - 1, 7});
    if (item.demand == 0) continue;
    most /= item.demand + 1;
    part.items.push_back(item);
    origins.push_back(i);
  }
  return {std::move(part), std::move(origins)};
}

/// The choice of the largest area the sheet holds; nothing when it holds none.
std::optional<SheetFilling> fullest(const BoxTable& table, const GuillotineProblem& part,
                                    std::size_t stock) {
  std::optional<SheetFilling> best;
  double most = 0;
  for (const SheetFilling& filling : fillings_of(table, part.stocks[stock], stock)) {
    double area = 0;
    for (std::size_t i = 0; i < part.items.size(); ++i) {
      const RectangleItem& item = part.items[i];
      area += static_cast<double>(item.length) * static_cast<double>(item.width) *
              table.code.count(filling.counts, i);
    }
    if (best && area <= most) continue;
    best = filling;
    most = area;
  }
  return best;
}

/// One more sheet of the first stock in `order` that holds a piece; false when none does.
bool fill_next(std::vector<CutSheet>& sheets, GuillotineProblem& problem,
               const std::vector<std::size_t>& order, long& steps) {
  // Few choices once the effort is spent: every sheet still takes what it can.
  const auto [part, origins] = largest_of(problem, steps > 0 ? 256 : 8);
  if (part.items.empty()) return false;
  long unlimited = 1'000'000'000;
  const auto table = box_table(part, 256, unlimited);
  steps -= 1'000'000'000 - unlimited;
  if (!table) return false;
  for (const std::size_t s : order) {
    SheetStock& stock = problem.stocks[s];
    if (stock.available <= 0) continue;
    const auto best = fullest(*table, part, s);
    if (!best) continue;
    auto pieces = pieces_of(*table, part, best->choice, best->first, best->box);
    for (CutPiece& piece : pieces) {
      piece.item = origins[piece.item];
      --problem.items[piece.item].demand;
    }
    --stock.available;
    sheets.push_back(sawn(s, stock, std::move(pieces)));
    return true;
  }
  // None of these pieces goes on what is left of the stocks.
  for (const std::size_t i : origins) problem.items[i].demand = 0;
  return true;
}

/// Pieces of several sheets to be cut anew.
struct Window {
  std::vector<CutSheet> sheets;
  GuillotineProblem part;
  std::vector<std::size_t> origins;  // the items of its items
};

/// As many sheets from the `first` on as have few choices together.
Window window_at(const std::vector<CutSheet>& sheets, std::size_t first,
                 const GuillotineProblem& problem, long most) {
  Window window;
  std::map<std::size_t, int> counts;
  for (std::size_t k = first; k < sheets.size(); ++k) {
    std::map<std::size_t, int> more = counts;
    for (const CutPiece& piece : sheets[k].pieces) ++more[piece.item];
    long choices = 1;
    for (const auto& [item, count] : more) choices = std::min(choices * (count + 1), most + 1);
    if (choices > most) break;
    counts = std::move(more);
    window.sheets.push_back(sheets[k]);
  }
  window.part.stocks = problem.stocks;
  for (const CutSheet& sheet : sheets) --window.part.stocks[sheet.stock].available;
  for (const CutSheet& sheet : window.sheets) ++window.part.stocks[sheet.stock].available;
  for (const auto& [item, count] : counts) {
    window.part.items.push_back(problem.items[item]);
    window.part.items.back().demand = count;
    window.origins.push_back(item);
  }
  return window;
}

/// Emptiest first.
void sort_by_area(std::vector<CutSheet>& sheets, const std::vector<SheetStock>& stocks) {
  const auto share = [&](const CutSheet& sheet) {
    double area = 0;
    for (const CutPiece& p : sheet.pieces) {
      area += static_cast<double>(p.length) * static_cast<double>(p.width);
    }
    const SheetStock& stock = stocks[sheet.stock];
    return area / (static_cast<double>(stock.length) * static_cast<double>(stock.width));
  };
  std::stable_sort(sheets.begin(), sheets.end(),
                   [&](const CutSheet& a, const CutSheet& b) { return share(a) < share(b); });
}

}  // namespace

std::vector<CutSheet> fill_on_shelves(const GuillotineProblem& problem) {
  std::vector<SheetItem> items;
  for (const RectangleItem& item : problem.items) {
    if (!item.may_turn && item.length != item.width) return {};
    items.push_back({length_of(item.length), length_of(item.width), item.demand});
  }
  const auto order = by_cost(problem.stocks);
  std::vector<SheetSource> sources;
  for (const std::size_t s : order) {
    const SheetStock& stock = problem.stocks[s];
    sources.push_back({length_of(stock.length), length_of(stock.width), stock.available});
  }
  std::vector<CutSheet> sheets;
  for (const PackedSheet& packed : pack_on_shelves(items, sources, {}).sheets) {
    std::vector<CutPiece> pieces;
    for (const PackedItem& item : packed.items) {
      pieces.push_back({item.item, size_of(item.at.at.x), size_of(item.at.at.y),
                        size_of(item.at.length), size_of(item.at.depth), false});
    }
    const std::size_t s = order[packed.source];
    sheets.push_back(sawn(s, problem.stocks[s], std::move(pieces)));
  }
  return sheets;
}

std::vector<CutSheet> fill_one_by_one(GuillotineProblem problem, long steps) {
  const auto order = by_cost(problem.stocks);
  std::vector<CutSheet> sheets;
  while (fill_next(sheets, problem, order, steps)) {
  }
  return sheets;
}

std::vector<CutSheet> refill(std::vector<CutSheet> sheets, const GuillotineProblem& problem,
                             long steps) {
  constexpr std::size_t choices = 2000;
  constexpr long a_window = 200'000;
  const auto saved = [&](const std::vector<CutSheet>& all) {
    return std::pair(cost_of(all, problem.stocks), all.size());
  };
  sort_by_area(sheets, problem.stocks);
  for (std::size_t first = 0; first + 1 < sheets.size() && steps > 0;) {
    steps -= static_cast<long>(sheets.size());
    const Window window = window_at(sheets, first, problem, choices);
    ++first;
    if (window.sheets.size() < 2) continue;
    long left = a_window;
    auto better = cut_exactly(window.part, window.sheets, choices, left);
    steps -= a_window - left;
    if (!better || saved(better->sheets) >= saved(window.sheets)) continue;
    const auto begin = sheets.begin() + static_cast<std::ptrdiff_t>(first) - 1;
    sheets.erase(begin, begin + static_cast<std::ptrdiff_t>(window.sheets.size()));
    for (CutSheet& sheet : better->sheets) {
      for (CutPiece& piece : sheet.pieces) piece.item = window.origins[piece.item];
      sheets.push_back(std::move(sheet));
    }
    sort_by_area(sheets, problem.stocks);
    first = 0;
  }
  return sheets;
}

}  // namespace strikeoff
