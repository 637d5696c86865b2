// SPDX-License-Identifier: MIT
#include "cutting/verify.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "cutting/sheet_replay.h"

namespace strikeoff {
namespace {

using Report = std::vector<std::string>;

struct Counted {
  const Part* part;
  int cut = 0;
};

class Checker {
 public:
  Checker(const CutList& list, const Saw& saw) : list_(list), saw_(saw) {
    for (const Part& part : list.parts) {
      if (!counted_.try_emplace(part.mark, Counted{&part}).second) {
        say("mark " + part.mark + " stands on two parts");
      }
    }
  }

  void check_boards() {
    for (const Board& board : list_.boards) {
      Length across = -saw_.kerf;
      for (const Strip& strip : board.strips) {
        across += strip.width + saw_.kerf;
        check_strip(board, strip);
      }
      if (across > board.width + cut_rounding) say("a board of " + board.stock + " is too narrow");
      const Length left = std::max(board.width - across - saw_.kerf, Length{});
      if (differs(left, board.left_over_width)) {
        say("the width left over of a board of " + board.stock + " is wrong");
      }
      check_left_over(board);
    }
  }

  void check_sheets() {
    for (const Sheet& sheet : list_.sheets) {
      for (const SheetPiece& piece : sheet.pieces) {
        const Rectangle& at = piece.at;
        const Part* part = count(piece.mark);
        const bool straight =
            part && !differs(at.length, part->length) && !differs(at.depth, part->width);
        const bool turned =
            part && !differs(at.length, part->width) && !differs(at.depth, part->length);
        if (!straight && !turned) say("piece " + piece.mark + " is not as large as its part");
      }
      const Report wrong = saw_violations(sheet, saw_.kerf);
      report_.insert(report_.end(), wrong.begin(), wrong.end());
    }
  }

  void check_counts() {
    const std::set<std::string> unplaced(list_.unplaced.begin(), list_.unplaced.end());
    for (const auto& [mark, counted] : counted_) {
      const Part& part = *counted.part;
      const bool made = part.stock.empty() && part.role != "edge strip";
      const int wanted = made ? 0 : part.quantity;
      const bool short_of = counted.cut < wanted;
      if (counted.cut > wanted || short_of != (unplaced.count(mark) > 0)) {
        say("part " + mark + " is cut " + std::to_string(counted.cut) + " times, not " +
            std::to_string(wanted));
      }
    }
  }

  void say(std::string sentence) { report_.push_back(std::move(sentence)); }
  [[nodiscard]] Report take() { return std::move(report_); }

 private:
  const Part* count(const std::string& mark) {
    const auto known = counted_.find(mark);
    if (known == counted_.end()) {
      say("piece " + mark + " is no part");
      return nullptr;
    }
    ++known->second.cut;
    return known->second.part;
  }

  /// What is named to keep is there, large enough, and nothing large enough is missing.
  void check_left_over(const Board& board) {
    std::vector<std::pair<Length, Length>> there{{board.length, board.left_over_width}};
    for (const Strip& strip : board.strips) there.emplace_back(strip.left_over, strip.width);
    std::erase_if(there, [&](const auto& rest) {
      return rest.first < saw_.reusable.length || rest.second < saw_.reusable.width;
    });
    std::vector<std::pair<Length, Length>> named;
    for (const LeftOver& rest : board.left_over) named.emplace_back(rest.length, rest.width);
    std::sort(there.begin(), there.end());
    std::sort(named.begin(), named.end());
    const auto same = [](const auto& a, const auto& b) {
      return !differs(a.first, b.first) && !differs(a.second, b.second);
    };
    if (!std::equal(there.begin(), there.end(), named.begin(), named.end(), same)) {
      say("what a board of " + board.stock + " leaves to keep is wrong");
    }
  }

  void check_strip(const Board& board, const Strip& strip) {
    Length along = saw_.end_trim - saw_.kerf;
    for (const Piece& piece : strip.pieces) {
      along += piece.length + saw_.kerf;
      const Part* part = count(piece.mark);
      if (!part) continue;
      if (piece.length != part->length) say("piece " + piece.mark + " has a wrong length");
      if (piece.width.value_or(strip.width) != part->width) {
        say("piece " + piece.mark + " has a wrong width");
      }
      if (piece.width && *piece.width >= strip.width) {
        say("piece " + piece.mark + " cannot be ripped from its strip");
      }
    }
    const Length end = board.length - saw_.end_trim;
    if (along > end + cut_rounding) say("a strip of " + board.stock + " is too short");
    const Length left = std::max(end - along - saw_.kerf, Length{});
    if (differs(left, strip.left_over)) {
      say("the length left over of a strip of " + board.stock + " is wrong");
    }
  }

  const CutList& list_;
  Saw saw_;
  std::map<std::string, Counted> counted_;
  Report report_;
};

/// How many boards of these stocks, and of what size, the list uses.
using Use = std::map<std::tuple<std::string, bool, Length, Length>, int>;

Use use_of(const CutList& list) {
  Use use;
  for (const Board& b : list.boards) ++use[{b.stock, b.on_hand, b.length, b.width}];
  for (const Sheet& s : list.sheets) ++use[{s.stock, s.on_hand, s.length, s.width}];
  return use;
}

/// Every piece comes from a stock that can stand for its part's: of one thickness, and bending only
/// where that does.
void check_kinds(const CutList& list, const std::vector<Stock>& boards, Checker& checker) {
  std::map<std::string, const Stock*> stock_of;
  for (const Stock& board : boards) stock_of.try_emplace(board.id, &board);
  std::map<std::string, const Stock*> meant;  // by mark
  for (const Part& part : list.parts) {
    const auto stock = stock_of.find(part.stock);
    if (stock != stock_of.end()) meant[part.mark] = stock->second;
  }
  for (const Board& board : list.boards) {
    const auto stock = stock_of.find(board.stock);
    if (stock == stock_of.end()) continue;  // told elsewhere
    for (const Strip& strip : board.strips) {
      for (const Piece& piece : strip.pieces) {
        const auto its = meant.find(piece.mark);
        if (its != meant.end() && its->second->thickness == stock->second->thickness &&
            its->second->bends_to.has_value() == stock->second->bends_to.has_value()) {
          continue;
        }
        checker.say("piece " + piece.mark + " is cut from the wrong kind of board");
      }
    }
  }
}

/// How many of that size can be had; nothing: as many as needed.
std::optional<double> supply(const Stock& stock, bool on_hand, Length length, Length width,
                             const std::vector<OnHand>& owned) {
  if (!on_hand) {
    if (length != stock.length || width != stock.width) return 0;
    if (!stock.quantity) return std::nullopt;
    return *stock.quantity;
  }
  double sum = 0;
  for (const OnHand& piece : owned) {
    const bool same = piece.item == stock.id || piece.item == stock.name;
    if (same && piece.length.value_or(stock.length) == length &&
        piece.width.value_or(stock.width) == width) {
      sum += std::floor(piece.quantity);
    }
  }
  return sum;
}

void check_stock(const CutList& list, const std::vector<Stock>& stocks,
                 const std::vector<OnHand>& on_hand, Checker& checker) {
  for (const auto& [kind, used] : use_of(list)) {
    const auto& [id, is_on_hand, length, width] = kind;
    const auto stock = std::find_if(stocks.begin(), stocks.end(),
                                    [&, &name = id](const Stock& s) { return s.id == name; });
    if (stock == stocks.end()) {
      checker.say("stock " + id + " is not offered");
      continue;
    }
    const auto most = supply(*stock, is_on_hand, length, width, on_hand);
    if (most && used > *most) checker.say("there is not so much of " + id);
  }
}

void check_totals(const CutList& list, Checker& checker) {
  std::map<std::string, std::pair<int, int>> used;  // all, on hand
  for (const auto& [kind, number] : use_of(list)) {
    auto& [all, on_hand] = used[std::get<0>(kind)];
    all += number;
    if (std::get<1>(kind)) on_hand += number;
  }
  for (const StockTotal& total : list.totals) {
    const auto [all, on_hand] = used[total.stock];
    used.erase(total.stock);
    if (total.used != all || total.on_hand != on_hand || total.buy != all - on_hand) {
      checker.say("the total of " + total.stock + " is wrong");
    }
    if (total.buy_bound > total.buy) {
      checker.say("fewer of " + total.stock + " are bought than the bound");
    }
    if (total.bound > total.used) checker.say("fewer of " + total.stock + " than the bound");
    if (total.proven && total.bound != total.used) {
      checker.say("nothing proves the total of " + total.stock);
    }
  }
  for (const auto& [stock, number] : used) checker.say("stock " + stock + " has no total");
}

}  // namespace

std::vector<std::string> cut_violations(const CutList& list, const std::vector<Stock>& boards,
                                        const std::vector<Stock>& sheets,
                                        const std::vector<OnHand>& on_hand, const Saw& saw) {
  Checker checker(list, saw);
  checker.check_boards();
  checker.check_sheets();
  checker.check_counts();
  std::vector<Stock> stocks = boards;
  stocks.insert(stocks.end(), sheets.begin(), sheets.end());
  check_stock(list, stocks, on_hand, checker);
  check_kinds(list, boards, checker);
  check_totals(list, checker);
  if (list.cost && list.cost_bound && *list.cost_bound - *list.cost > Money::from_si(1e-6)) {
    checker.say("the plan costs less than its bound");
  }
  return checker.take();
}

}  // namespace strikeoff
