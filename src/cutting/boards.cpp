// SPDX-License-Identifier: MIT
#include "cutting/boards.h"

#include <algorithm>
#include <array>
#include <map>
#include <numeric>
#include <set>
#include <tuple>
#include <utility>

#include "cutting/fill.h"

namespace strikeoff {
namespace {

using Sources = std::vector<BoardSource>;
using Order = std::vector<std::size_t>;

Length usable(const BoardSource& source, const Saw& saw) {
  return source.length - saw.end_trim * 2;
}

bool fits(const BoardItem& item, const BoardSource& source, const Saw& saw) {
  return item.length <= usable(source, saw) && item.width <= source.width;
}

/// Best fit: an item goes on the fullest strip of its width that has room, else on a new strip of
/// the fullest board that has, else on the first new board that holds it.
class BestFit {
 public:
  BestFit(const Sources& sources, const Order& source_order, const Saw& saw)
      : sources_(sources), order_(source_order), saw_(saw) {
    for (const BoardSource& s : sources) left_.push_back(s.count);
  }

  void place(const BoardItem& item) {
    if (on_strip(item)) return;
    if (on_board(item) || on_new_board(item)) {
      on_strip(item);
    } else {
      packing_.unplaced.push_back(item.part);
    }
  }

  [[nodiscard]] BoardPacking take() { return std::move(packing_); }

 private:
  using StripId = std::pair<std::size_t, std::size_t>;

  bool on_strip(const BoardItem& item) {
    auto& strips = strips_[item.width];
    // `room` is what is left with one more kerf, so that the last part needs none.
    const auto fullest = strips.lower_bound({item.length + saw_.kerf, {}});
    if (fullest == strips.end()) return false;
    const auto [room, id] = *fullest;
    strips.erase(fullest);
    packing_.boards[id.first].strips[id.second].parts.push_back(item.part);
    const Length less = room - item.length - saw_.kerf;
    packing_.boards[id.first].strips[id.second].rest = less;
    strips.insert({less, id});
    return true;
  }

  bool on_board(const BoardItem& item) {
    for (auto it = boards_.lower_bound({item.width + saw_.kerf, 0}); it != boards_.end(); ++it) {
      const auto [room, board] = *it;
      if (!fits(item, sources_[packing_.boards[board].source], saw_)) continue;
      boards_.erase(it);
      open_strip(item.width, board, room);
      return true;
    }
    return false;
  }

  bool on_new_board(const BoardItem& item) {
    for (const std::size_t source : order_) {
      if (!fits(item, sources_[source], saw_)) continue;
      if (left_[source] && *left_[source] <= 0) continue;
      if (left_[source]) --*left_[source];
      packing_.boards.push_back({source, {}, {}});
      open_strip(item.width, packing_.boards.size() - 1, sources_[source].width + saw_.kerf);
      return true;
    }
    return false;
  }

  void open_strip(Length width, std::size_t board, Length room) {
    PackedBoard& opened = packing_.boards[board];
    opened.rest = room - width - saw_.kerf;
    boards_.insert({opened.rest, board});
    strips_[width].insert(
        {usable(sources_[opened.source], saw_) + saw_.kerf, {board, opened.strips.size()}});
    opened.strips.push_back({width, {}, {}});
  }

  const Sources& sources_;
  const Order& order_;
  Saw saw_;
  std::vector<std::optional<int>> left_;
  std::map<Length, std::set<std::pair<Length, StripId>>> strips_;
  std::set<std::pair<Length, std::size_t>> boards_;
  BoardPacking packing_;
};

/// Strips of one kind of board, each filled as far as it goes, then boards filled with strips.
/// Nothing when an item does not fit the board or there are not enough of them.
std::optional<BoardPacking> fill_boards(const std::vector<BoardItem>& items, const Sources& sources,
                                        std::size_t source, const Saw& saw) {
  const BoardSource& board = sources[source];
  std::map<Length, std::vector<BoardItem>, std::greater<>> by_width;
  for (const BoardItem& item : items) {
    if (!fits(item, board, saw)) return std::nullopt;
    by_width[item.width].push_back(item);
  }
  std::vector<PackedStrip> strips;
  for (const auto& [width, alike] : by_width) {
    std::vector<Length> lengths;
    for (const BoardItem& item : alike) lengths.push_back(item.length + saw.kerf);
    const Length room = usable(board, saw) + saw.kerf;
    for (const auto& group : fill_bins(lengths, room)) {
      PackedStrip& strip = strips.emplace_back(PackedStrip{width, {}, room});
      for (const std::size_t i : group) {
        strip.parts.push_back(alike[i].part);
        strip.rest -= lengths[i];
      }
    }
  }
  std::vector<Length> widths;
  for (const PackedStrip& strip : strips) widths.push_back(strip.width + saw.kerf);
  BoardPacking packing;
  for (const auto& group : fill_bins(widths, board.width + saw.kerf)) {
    PackedBoard& packed = packing.boards.emplace_back();
    packed.source = source;
    packed.rest = board.width + saw.kerf;
    for (const std::size_t i : group) {
      packed.rest -= widths[i];
      packed.strips.push_back(std::move(strips[i]));
    }
  }
  if (board.count && packing.boards.size() > static_cast<std::size_t>(*board.count)) {
    return std::nullopt;
  }
  return packing;
}

/// Changes each bought board for the cheapest that still holds its strips.
void change_boards(BoardPacking& packing, const Sources& sources, const Order& cheapest_first,
                   const Saw& saw) {
  std::vector<int> used(sources.size());
  for (const PackedBoard& board : packing.boards) ++used[board.source];
  for (PackedBoard& board : packing.boards) {
    const BoardSource& was = sources[board.source];
    if (was.on_hand) continue;
    Length unused = usable(was, saw) + saw.kerf;
    for (const PackedStrip& strip : board.strips) unused = std::min(unused, strip.rest);
    for (const std::size_t source : cheapest_first) {
      const BoardSource& is = sources[source];
      if (is.cost >= was.cost) break;
      if (is.count && used[source] >= *is.count) continue;
      const Length shorter = was.length - is.length, narrower = was.width - is.width;
      if (shorter > unused || narrower > board.rest) continue;
      --used[board.source];
      ++used[source];
      board.source = source;
      board.rest -= narrower;
      for (PackedStrip& strip : board.strips) strip.rest -= shorter;
      break;
    }
  }
}

Order bought_by(const Sources& sources, bool per_area) {
  Order order;
  for (std::size_t i = 0; i < sources.size(); ++i) {
    if (!sources[i].on_hand) order.push_back(i);
  }
  const auto key = [&](std::size_t i) {
    const BoardSource& s = sources[i];
    return std::tuple(per_area ? s.cost / (s.length * s.width).si() : s.cost, s.stock);
  };
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  return order;
}

/// Smallest first, so that what is large stays whole.
Order on_hand_of(const Sources& sources) {
  Order order;
  for (std::size_t i = 0; i < sources.size(); ++i) {
    if (sources[i].on_hand) order.push_back(i);
  }
  const auto key = [&](std::size_t i) {
    const BoardSource& s = sources[i];
    return std::tuple(s.length * s.width, s.length, s.stock);
  };
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  return order;
}

/// Left over, cost, boards: less is better.
std::tuple<std::size_t, double, std::size_t> worth(const BoardPacking& packing,
                                                   const Sources& sources) {
  std::vector<int> used(sources.size());
  for (const PackedBoard& board : packing.boards) ++used[board.source];
  double cost = 0;
  for (std::size_t i = 0; i < sources.size(); ++i) cost += used[i] * sources[i].cost;
  return {packing.unplaced.size(), cost, packing.boards.size()};
}

/// The items by falling width, length, or area.
std::array<std::vector<BoardItem>, 3> orders(const std::vector<BoardItem>& items) {
  std::array<std::vector<BoardItem>, 3> sorted{items, items, items};
  const auto sort_by = [](std::vector<BoardItem>& list, auto key) {
    std::stable_sort(list.begin(), list.end(),
                     [&](const BoardItem& a, const BoardItem& b) { return key(b) < key(a); });
  };
  sort_by(sorted[0], [](const BoardItem& i) { return std::pair(i.width, i.length); });
  sort_by(sorted[1], [](const BoardItem& i) { return std::pair(i.length, i.width); });
  sort_by(sorted[2], [](const BoardItem& i) { return std::pair(i.length * i.width, i.length); });
  return sorted;
}

}  // namespace

BoardPacking pack_boards(const std::vector<BoardItem>& items, const Sources& sources,
                         const Saw& saw) {
  const Order on_hand = on_hand_of(sources);
  const Order cheapest = bought_by(sources, false), best_value = bought_by(sources, true);
  const auto sorted = orders(items);
  BoardPacking best;
  for (const BoardItem& item : items) best.unplaced.push_back(item.part);
  const auto keep_better = [&](BoardPacking packing) {
    change_boards(packing, sources, cheapest, saw);
    if (worth(packing, sources) < worth(best, sources)) best = std::move(packing);
  };
  for (const std::size_t preferred : best_value) {
    Order bought{preferred};
    for (const std::size_t other : best_value) {
      if (other != preferred) bought.push_back(other);
    }
    // What is on hand goes first among equals; last is better where it would only add a board.
    Order on_hand_first = on_hand, on_hand_last = bought;
    on_hand_first.insert(on_hand_first.end(), bought.begin(), bought.end());
    on_hand_last.insert(on_hand_last.end(), on_hand.begin(), on_hand.end());
    for (const Order& order : {on_hand_first, on_hand_last}) {
      for (const auto& list : sorted) {
        BestFit plan(sources, order, saw);
        for (const BoardItem& item : list) plan.place(item);
        keep_better(plan.take());
      }
    }
    if (auto filled = fill_boards(sorted[0], sources, preferred, saw)) keep_better(*filled);
  }
  return best;
}

}  // namespace strikeoff
