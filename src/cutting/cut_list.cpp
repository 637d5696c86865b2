// SPDX-License-Identifier: MIT
#include "cutting/cut_list.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <utility>

#include "cutting/board_plan.h"
#include "cutting/bound.h"
#include "cutting/gather.h"
#include "cutting/guillotine.h"

namespace strikeoff {
namespace {

bool is_sheet_part(const Part& part) {
  return part.role == "backer panel";
}
bool is_board_part(const Part& part) {
  return !part.stock.empty() && !is_sheet_part(part);
}

/// True when either can stand for the other in a form: boards of one thickness, and no sheet for
/// rounded edges among them.
bool are_alike(const Stock& a, const Stock& b) {
  return a.thickness == b.thickness && a.bends_to.has_value() == b.bends_to.has_value();
}

/// The stocks in groups whose members are alike, in the order of their first members.
std::vector<std::vector<Stock>> alike(const std::vector<Stock>& stocks) {
  std::vector<std::vector<Stock>> groups;
  for (const Stock& stock : stocks) {
    const auto group = std::find_if(groups.begin(), groups.end(), [&](const auto& known) {
      return are_alike(known.front(), stock);
    });
    if (group == groups.end()) {
      groups.push_back({stock});
    } else {
      group->push_back(stock);
    }
  }
  return groups;
}

/// The parts cut from each group: that of their stock, or the first.
std::vector<std::vector<std::size_t>> parts_by_group(
    const std::vector<Part>& parts, const std::vector<std::vector<Stock>>& groups) {
  std::map<std::string, std::size_t> group_of;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    for (const Stock& stock : groups[g]) group_of.try_emplace(stock.id, g);
  }
  std::vector<std::vector<std::size_t>> by_group(groups.size());
  for (std::size_t p = 0; p < parts.size() && !groups.empty(); ++p) {
    if (!is_board_part(parts[p])) continue;
    const auto its = group_of.find(parts[p].stock);
    by_group[its == group_of.end() ? 0 : its->second].push_back(p);
  }
  return by_group;
}

bool is_of(const OnHand& on_hand, const Stock& stock) {
  return on_hand.item == stock.id || on_hand.item == stock.name;
}

/// The whole boards or sheets on hand: part of one is not a board.
std::vector<BoardSource> sources_on_hand(const std::vector<OnHand>& on_hand, const Stock& stock,
                                         std::size_t index) {
  std::vector<BoardSource> sources;
  for (const OnHand& piece : on_hand) {
    if (!is_of(piece, stock)) continue;
    sources.push_back({index, true, piece.length.value_or(stock.length),
                       piece.width.value_or(stock.width),
                       static_cast<int>(std::min(std::floor(piece.quantity), 1e6)), 0});
  }
  return sources;
}

bool are_priced(const std::vector<Stock>& stocks) {
  return std::all_of(stocks.begin(), stocks.end(),
                     [](const Stock& stock) { return stock.price.has_value(); });
}

/// What can be had, on hand before bought. Costs are prices, or areas where a price is missing.
std::vector<BoardSource> sources_of(const std::vector<Stock>& stocks,
                                    const std::vector<OnHand>& on_hand) {
  const bool priced = are_priced(stocks);
  std::vector<BoardSource> sources;
  for (std::size_t i = 0; i < stocks.size(); ++i) {
    const auto own = sources_on_hand(on_hand, stocks[i], i);
    sources.insert(sources.end(), own.begin(), own.end());
  }
  for (std::size_t i = 0; i < stocks.size(); ++i) {
    const Stock& s = stocks[i];
    const double cost = priced ? *s.price : (s.length * s.width).si();
    sources.push_back({i, false, s.length, s.width, s.quantity, cost});
  }
  return sources;
}

/// How many of each part are placed, in the order of the parts.
using Tally = std::vector<int>;

/// True when the part can only be cut from this stock.
bool is_captive(const Part& part, std::size_t stock, const std::vector<BoardSource>& sources,
                const Saw& saw) {
  return std::none_of(sources.begin(), sources.end(), [&](const BoardSource& s) {
    return s.stock != stock && part.width <= s.width && part.length <= s.length - saw.end_trim * 2;
  });
}

/// Boards of one stock that every plan needs: those for the parts that fit no other.
int bound_of(std::size_t stock, const std::vector<Part>& parts, const std::vector<std::size_t>& own,
             const Tally& tally, const std::vector<BoardSource>& sources, const Saw& saw) {
  Length length, width;
  for (const BoardSource& s : sources) {
    if (s.stock != stock) continue;
    length = std::max(length, s.length - saw.end_trim * 2);
    width = std::max(width, s.width);
  }
  std::vector<BoundItem> items;
  for (const std::size_t p : own) {
    if (tally[p] == 0) continue;
    if (is_captive(parts[p], stock, sources, saw)) {
      items.push_back({parts[p].length, parts[p].width, tally[p]});
    }
  }
  return boards_bound(items, length, width, saw.kerf);
}

const Stock* stock_of(const std::string& id, const std::vector<Stock>& stocks) {
  const auto found = std::find_if(stocks.begin(), stocks.end(),
                                  [&](const Stock& stock) { return stock.id == id; });
  return found == stocks.end() ? nullptr : &*found;
}

/// A plan that meets the bound uses the fewest pieces. Each board of the bound that is not on hand
/// must be bought; what is on hand is free.
void prove(StockTotal& total, const Stock& stock, const std::vector<OnHand>& on_hand) {
  total.buy = total.used - total.on_hand;
  total.proven = total.used == total.bound;
  int there = 0;
  for (const BoardSource& source : sources_on_hand(on_hand, stock, 0)) there += *source.count;
  total.buy_bound = std::max({total.buy_bound, total.bound - there, 0});
}

/// What buying that many of the stock costs at least, where it has a price.
void add_bound(const StockTotal& total, const Stock& stock, std::optional<Money>& bound) {
  if (!stock.price) return;
  bound = bound.value_or(Money{}) + Money::from_si(*stock.price * total.buy_bound);
}

/// Tells a plan at its bound from a dearer one; money is in sums of prices.
constexpr Money least_money = Money::from_si(1e-6);

/// What the plan costs beside its bound, if all that it buys has a price.
void set_cost(CutList& list, const std::vector<Stock>& boards, const std::vector<Stock>& sheets) {
  if (!list.cost_bound) return;
  Money cost;
  for (const StockTotal& total : list.totals) {
    if (total.buy == 0) continue;
    const Stock* stock = stock_of(total.stock, boards);
    if (stock == nullptr) stock = stock_of(total.stock, sheets);
    if (stock == nullptr || !stock->price) return;
    cost += Money::from_si(*stock->price * total.buy);
  }
  list.cost = cost;
  if (cost - *list.cost_bound < least_money) {
    list.cost_gap = 0;
  } else if (*list.cost_bound >= least_money) {
    list.cost_gap = cost / *list.cost_bound - 1;
  }
}

Board board_from(const PackedBoard& packed, const BoardSource& source, const Stock& stock,
                 const std::vector<Part>& parts, const Saw& saw) {
  Board board{stock.id, source.on_hand, source.length, source.width, {}, {}};
  const auto left_over = [&](Length rest) { return std::max(rest - saw.kerf, Length{}); };
  for (const PackedStrip& from : packed.strips) {
    Strip& strip = board.strips.emplace_back();
    strip.width = from.width;
    strip.left_over = left_over(from.rest);
    for (const std::size_t p : from.parts) {
      Piece& piece = strip.pieces.emplace_back(Piece{parts[p].mark, parts[p].length});
      if (parts[p].width != strip.width) piece.width = parts[p].width;
    }
  }
  board.left_over_width = left_over(packed.rest);
  board.left_over = left_over_of(packed, source, saw);
  return board;
}

/// How many boards that cost this much each a cost takes; a millionth less is rounding.
int boards_for(double cost, double each) {
  return each > 0 ? static_cast<int>(std::ceil(cost / each - 1e-6)) : 0;
}

/// Every piece to cut from boards, once each, in an order that the order of the parts does not
/// change.
std::vector<BoardItem> board_items(const std::vector<Part>& parts,
                                   const std::vector<std::size_t>& own) {
  std::vector<BoardItem> items;
  for (const std::size_t p : own) {
    const BoardItem item{parts[p].width, parts[p].length, p};
    items.insert(items.end(), static_cast<std::size_t>(parts[p].quantity), item);
  }
  std::stable_sort(items.begin(), items.end(), [&](const BoardItem& a, const BoardItem& b) {
    return std::tie(a.width, a.length, parts[a.part].mark) <
           std::tie(b.width, b.length, parts[b.part].mark);
  });
  return items;
}

/// Cuts the parts of `own` from stocks that are alike.
void cut_boards(CutList& list, const std::vector<Stock>& stocks,
                const std::vector<std::size_t>& own, const std::vector<OnHand>& on_hand,
                const Saw& saw, Tally& tally) {
  const auto sources = sources_of(stocks, on_hand);
  BoardPlan plan = plan_boards(board_items(list.parts, own), sources, stocks.size(), saw);
  BoardPacking& packing = plan.packing;
  std::stable_sort(packing.boards.begin(), packing.boards.end(),
                   [](const auto& a, const auto& b) { return a.source < b.source; });
  std::vector<StockTotal> totals(stocks.size());
  std::vector<std::optional<std::size_t>> cut_from(list.parts.size());
  for (const PackedBoard& packed : packing.boards) {
    const BoardSource& source = sources[packed.source];
    ++totals[source.stock].used;
    if (source.on_hand) ++totals[source.stock].on_hand;
    for (const PackedStrip& strip : packed.strips) {
      for (const std::size_t p : strip.parts) {
        ++tally[p];
        if (!cut_from[p]) cut_from[p] = source.stock;
      }
    }
    list.boards.push_back(board_from(packed, source, stocks[source.stock], list.parts, saw));
  }
  for (std::size_t p = 0; p < list.parts.size(); ++p) {
    if (cut_from[p]) list.parts[p].stock = stocks[*cut_from[p]].id;
  }
  std::optional<Money> least;
  for (std::size_t i = 0; i < stocks.size(); ++i) {
    if (totals[i].used == 0) continue;
    totals[i].stock = stocks[i].id;
    totals[i].bound =
        std::max(plan.stock_bounds[i], bound_of(i, list.parts, own, tally, sources, saw));
    if (stocks.size() == 1) totals[i].buy_bound = boards_for(plan.cost_bound, sources.back().cost);
    prove(totals[i], stocks[i], on_hand);
    add_bound(totals[i], stocks[i], least);
    list.totals.push_back(totals[i]);
  }
  if (!least) return;
  // Without all prices the plan's costs are areas.
  if (are_priced(stocks)) least = std::max(*least, Money::from_si(plan.cost_bound));
  list.cost_bound = list.cost_bound.value_or(Money{}) + *least;
}

/// The panels of one stock, largest first.
std::vector<std::size_t> panels_of(const std::vector<Part>& parts, const Stock& stock) {
  std::vector<std::size_t> order;
  for (std::size_t p = 0; p < parts.size(); ++p) {
    if (is_sheet_part(parts[p]) && parts[p].stock == stock.id) order.push_back(p);
  }
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::tie(parts[b].length, parts[b].width, parts[a].mark) <
           std::tie(parts[a].length, parts[a].width, parts[b].mark);
  });
  return order;
}

/// Whole nanometres. Each piece is off by half of one at most, and so neighbours by one.
std::int64_t grown(Length length, Length kerf) {
  return std::llround((length + kerf).in_nm());
}

bool is_reusable(const Rectangle& rest, const Reusable& least) {
  const auto holds = [&](Length a, Length b) { return a >= least.length && b >= least.width; };
  return holds(rest.length, rest.depth) || holds(rest.depth, rest.length);
}

/// What a part of the sheet is called.
std::string name_of(const SawnPart& part, const std::vector<SheetPiece>& pieces) {
  if (part.piece) return pieces[*part.piece].mark;
  return part.strip > 0 ? "strip " + std::to_string(part.strip) : "";
}

/// The sheet as sawn, with the parts of `order` that its pieces are.
Sheet sheet_from(const CutSheet& cut, const BoardSource& source, const Stock& stock,
                 const std::vector<Part>& parts, const std::vector<std::size_t>& order,
                 const Saw& saw) {
  Sheet sheet{stock.id, source.on_hand, source.length, source.width, {}, {}, {}, cut.stages};
  const auto at = [](std::int64_t x, std::int64_t y) {
    return Point{Length::nm(static_cast<double>(x)), Length::nm(static_cast<double>(y))};
  };
  for (const CutPiece& piece : cut.pieces) {
    const Part& part = parts[order[piece.item]];
    Rectangle place{at(piece.x, piece.y), part.length, part.width};
    if (piece.turned) std::swap(place.length, place.depth);
    sheet.pieces.push_back({part.mark, place});
  }
  for (const CutRest& rest : cut.rests) {
    const Point size = at(rest.length, rest.width);
    const Rectangle left{at(rest.x, rest.y), size.x - saw.kerf, size.y - saw.kerf};
    if (is_reusable(left, saw.reusable)) sheet.left_over.push_back(left);
  }
  for (const SawPass& pass : cut.passes) {
    sheet.cuts.push_back({pass.stage, !pass.across_x, name_of(pass.from, sheet.pieces),
                          at(pass.size, 0).x - saw.kerf, name_of(pass.off, sheet.pieces),
                          name_of(pass.rest, sheet.pieces)});
  }
  return sheet;
}

/// The panels to cut and the sheets to cut them from: on hand for nothing, bought for one each.
GuillotineProblem sheet_problem(const std::vector<Part>& parts,
                                const std::vector<std::size_t>& order,
                                const std::vector<BoardSource>& sources, Length kerf) {
  GuillotineProblem problem;
  for (const std::size_t p : order) {
    problem.items.push_back(
        {grown(parts[p].length, kerf), grown(parts[p].width, kerf), parts[p].quantity, true});
  }
  for (const BoardSource& s : sources) {
    problem.stocks.push_back({grown(s.length, kerf), grown(s.width, kerf), s.on_hand ? 0 : 1,
                              s.count.value_or(std::numeric_limits<int>::max())});
  }
  return problem;
}

void cut_sheets(CutList& list, const Stock& stock, const std::vector<OnHand>& on_hand,
                const Saw& saw, Tally& tally) {
  const auto order = panels_of(list.parts, stock);
  if (order.empty()) return;
  std::vector<BoardSource> sources = sources_on_hand(on_hand, stock, 0);
  sources.push_back({0, false, stock.length, stock.width, stock.quantity, 1});
  const GuillotinePlan plan = cut_guillotine(sheet_problem(list.parts, order, sources, saw.kerf));
  if (plan.sheets.empty()) return;
  StockTotal total;
  total.stock = stock.id;
  for (const CutSheet& cut : plan.sheets) {
    for (const CutPiece& piece : cut.pieces) ++tally[order[piece.item]];
    list.sheets.push_back(sheet_from(cut, sources[cut.stock], stock, list.parts, order, saw));
    ++total.used;
    if (list.sheets.back().on_hand) ++total.on_hand;
  }
  total.bound = plan.sheet_bound;
  total.buy_bound = static_cast<int>(plan.cost_bound);
  prove(total, stock, on_hand);
  add_bound(total, stock, list.cost_bound);
  list.totals.push_back(std::move(total));
}

}  // namespace

CutList cut_parts(std::vector<Part> parts, const std::vector<Stock>& boards,
                  const std::vector<Stock>& sheets, const std::vector<OnHand>& on_hand,
                  const Saw& saw) {
  CutList list;
  list.kerf = saw.kerf;
  list.end_trim = saw.end_trim;
  list.reusable = saw.reusable;
  list.parts = std::move(parts);
  Tally tally(list.parts.size());
  const auto groups = alike(boards);
  const auto own = parts_by_group(list.parts, groups);
  for (std::size_t g = 0; g < groups.size(); ++g) {
    cut_boards(list, groups[g], own[g], on_hand, saw, tally);
  }
  std::set<std::string> known;
  for (const Stock& sheet : sheets) {
    if (known.insert(sheet.id).second) cut_sheets(list, sheet, on_hand, saw, tally);
  }
  for (std::size_t p = 0; p < list.parts.size(); ++p) {
    const Part& part = list.parts[p];
    // An edge strip without a stock has no room where it goes.
    const bool to_cut = is_sheet_part(part) || is_board_part(part) || part.role == "edge strip";
    if (to_cut && tally[p] < part.quantity) list.unplaced.push_back(part.mark);
  }
  // A plan that leaves parts out proves nothing about the job.
  if (!list.unplaced.empty()) {
    for (StockTotal& total : list.totals) {
      total.proven = false;
      total.buy_bound = 0;
    }
  }
  set_cost(list, boards, sheets);
  return list;
}

}  // namespace strikeoff
