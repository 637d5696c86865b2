// SPDX-License-Identifier: MIT
#include "cutting/sheet_bound.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "cutting/bound.h"

namespace strikeoff {
namespace {

double area(std::int64_t length, std::int64_t width) {
  return static_cast<double>(length) * static_cast<double>(width);
}

/// The least cost of sheets of this area, parts of sheets allowed.
double cost_of_area(std::vector<SheetStock> stocks, double to_cover) {
  std::sort(stocks.begin(), stocks.end(), [](const SheetStock& a, const SheetStock& b) {
    const auto per_area = [](const SheetStock& s) {
      return static_cast<double>(s.cost) / area(s.length, s.width);
    };
    return per_area(a) < per_area(b);
  });
  double cost = 0;
  for (const SheetStock& stock : stocks) {
    if (to_cover <= 0) break;
    const double sheet = area(stock.length, stock.width);
    const double number = std::min<double>(to_cover / sheet, stock.available);
    cost += number * static_cast<double>(stock.cost);
    to_cover -= number * sheet;
  }
  return cost;
}

std::int64_t cost_of_number(std::vector<SheetStock> stocks, int number) {
  std::sort(stocks.begin(), stocks.end(),
            [](const SheetStock& a, const SheetStock& b) { return a.cost < b.cost; });
  std::int64_t cost = 0;
  for (const SheetStock& stock : stocks) {
    const int taken = std::min(number, stock.available);
    cost += taken * stock.cost;
    number -= taken;
  }
  return cost;
}

}  // namespace

std::pair<std::int64_t, int> bounds_of(const std::vector<CutSheet>& sheets,
                                       const GuillotineProblem& problem) {
  std::vector<int> placed(problem.items.size(), 0);
  for (const CutSheet& sheet : sheets) {
    for (const CutPiece& piece : sheet.pieces) ++placed[piece.item];
  }
  std::vector<BoundItem> items;
  double to_cover = 0;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    if (placed[i] == 0) continue;
    const RectangleItem& item = problem.items[i];
    items.push_back({Length::nm(static_cast<double>(item.length)),
                     Length::nm(static_cast<double>(item.width)), placed[i], item.may_turn});
    to_cover += area(item.length, item.width) * placed[i];
  }
  std::int64_t length = 1, width = 1;
  for (const SheetStock& stock : problem.stocks) {
    length = std::max(length, stock.length);
    width = std::max(width, stock.width);
  }
  const int number = boards_bound(items, Length::nm(static_cast<double>(length)),
                                  Length::nm(static_cast<double>(width)), {});
  // Less a margin far above the rounding of sums of thousands of terms.
  const double by_area = std::ceil(cost_of_area(problem.stocks, to_cover) * (1 - 1e-9) - 1e-9);
  return {std::max(static_cast<std::int64_t>(by_area), cost_of_number(problem.stocks, number)),
          number};
}

}  // namespace strikeoff
