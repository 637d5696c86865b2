// SPDX-License-Identifier: MIT
#include "cutting/knapsack.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <numeric>

namespace strikeoff {
namespace {

constexpr long step_work = 10;      // of a node of the search, beside one of the table
constexpr long start_work = 1'500;  // of a search of no nodes

/// What `length` more could be worth at this item's rate, rounded up where values are whole.
double rate_bound(const KnapsackItem<double>& item, std::int64_t length) {
  return item.value * (static_cast<double>(length) / static_cast<double>(item.length));
}
std::int64_t rate_bound(const KnapsackItem<std::int64_t>& item, std::int64_t length) {
  // 128 bits: a value of 1e9 times a length of 1e11 nanometres does not fit 64.
  __extension__ using Wide = __int128;
  return static_cast<std::int64_t>(Wide{item.value} * length / item.length);
}

template <class Value>
class DepthFirst {
 public:
  DepthFirst(std::span<const KnapsackItem<Value>> items, std::int64_t capacity, long nodes)
      : size_(items.size()),
        capacity_(capacity),
        nodes_(nodes),
        nodes_left_(nodes),
        best_(items.size()),
        counts_(items.size()) {
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (items[i].value > 0 && items[i].most > 0 && items[i].length <= capacity) {
        order_.push_back(i);
        items_.push_back(items[i]);
      }
    }
    std::vector<std::size_t> rank(order_.size());
    std::iota(rank.begin(), rank.end(), std::size_t{0});
    std::sort(rank.begin(), rank.end(), [&](std::size_t a, std::size_t b) {
      const double one =
          static_cast<double>(items_[a].value) * static_cast<double>(items_[b].length);
      const double two =
          static_cast<double>(items_[b].value) * static_cast<double>(items_[a].length);
      return one != two ? one > two : order_[a] < order_[b];
    });
    std::vector<std::size_t> order;
    std::vector<KnapsackItem<Value>> sorted;
    for (const std::size_t r : rank) {
      order.push_back(order_[r]);
      sorted.push_back(items_[r]);
    }
    order_ = std::move(order);
    items_ = std::move(sorted);
    shortest_.assign(items_.size() + 1, std::numeric_limits<std::int64_t>::max());
    for (std::size_t i = items_.size(); i-- > 0;) {
      shortest_[i] = std::min(shortest_[i + 1], items_[i].length);
    }
  }

  KnapsackResult<Value> run() {
    search(0, capacity_, 0);
    KnapsackResult<Value> result{best_value_, std::max(best_value_, missed_),
                                 std::vector<int>(size_, 0),
                                 start_work + step_work * (nodes_ - nodes_left_)};
    for (std::size_t i = 0; i < order_.size(); ++i) result.counts[order_[i]] = best_[i];
    return result;
  }

 private:
  void search(std::size_t i, std::int64_t room, Value value) {
    if (i == items_.size() || room < shortest_[i]) {
      if (value <= best_value_) return;
      best_value_ = value;
      best_.assign(counts_.begin(), counts_.end());
      return;
    }
    const Value bound = value + rate_bound(items_[i], room);
    if (bound <= best_value_) return;
    if (--nodes_left_ < 0) {
      missed_ = std::max(missed_, bound);
      if (value > best_value_) {
        best_value_ = value;
        best_.assign(counts_.begin(), counts_.end());
      }
      return;
    }
    const auto fits =
        static_cast<int>(std::min<std::int64_t>(items_[i].most, room / items_[i].length));
    for (int n = fits; n >= 0; --n) {
      counts_[i] = n;
      search(i + 1, room - n * items_[i].length, value + static_cast<Value>(n) * items_[i].value);
    }
    counts_[i] = 0;
  }

  std::size_t size_;
  std::int64_t capacity_;
  long nodes_, nodes_left_;
  std::vector<KnapsackItem<Value>> items_;
  std::vector<std::size_t> order_;
  std::vector<std::int64_t> shortest_;
  std::vector<int> best_, counts_;
  Value best_value_ = 0, missed_ = 0;
};

/// Best value for every room up to the capacity, item by item, remembering how many of each.
template <class Value>
KnapsackResult<Value> by_table(std::span<const KnapsackItem<Value>> items, std::size_t room,
                               std::int64_t unit) {
  std::vector<Value> best(room + 1, Value{}), next(room + 1);
  std::vector<std::vector<int>> taken(items.size());
  for (std::size_t i = 0; i < items.size(); ++i) {
    const auto length = static_cast<std::size_t>(items[i].length / unit);
    if (items[i].value <= 0 || items[i].most <= 0 || length > room) continue;
    taken[i].assign(room + 1, 0);
    next = best;
    for (std::size_t c = length; c <= room; ++c) {
      const int most = static_cast<int>(
          std::min<std::size_t>(static_cast<std::size_t>(items[i].most), c / length));
      for (int n = 1; n <= most; ++n) {
        const Value value =
            best[c - static_cast<std::size_t>(n) * length] + static_cast<Value>(n) * items[i].value;
        if (value > next[c]) {
          next[c] = value;
          taken[i][c] = n;
        }
      }
    }
    std::swap(best, next);
  }
  KnapsackResult<Value> result{best[room], best[room], std::vector<int>(items.size(), 0), 0};
  std::size_t c = room;
  for (std::size_t i = items.size(); i-- > 0;) {
    if (taken[i].empty()) continue;
    result.counts[i] = taken[i][c];
    c -= static_cast<std::size_t>(taken[i][c]) * static_cast<std::size_t>(items[i].length / unit);
  }
  return result;
}

template <class Value>
KnapsackResult<Value> fill(std::span<const KnapsackItem<Value>> items, std::int64_t capacity,
                           long nodes) {
  std::int64_t unit = 0;
  std::int64_t copies = 0;
  for (const KnapsackItem<Value>& item : items) {
    if (item.most <= 0 || item.length > capacity) continue;
    unit = std::gcd(unit, item.length);
    copies += std::min<std::int64_t>(item.most, capacity / item.length);
  }
  if (unit == 0) return {0, 0, std::vector<int>(items.size(), 0), 0};
  const std::int64_t room = capacity / unit;
  // Mostly the search is quicker than any table; where it is not, a table of short bars is.
  constexpr std::int64_t table_work = 2'000'000;
  constexpr long try_nodes = 1'500;
  const bool has_table = room <= table_work / copies;
  auto result =
      DepthFirst<Value>(items, capacity, has_table ? std::min(nodes, try_nodes) : nodes).run();
  if (result.upper > result.value && has_table) {
    const long work = result.work + room * copies;
    result = by_table(items, static_cast<std::size_t>(room), unit);
    result.work = work;
  }
  return result;
}

}  // namespace

KnapsackResult<double> best_fill(std::span<const KnapsackItem<double>> items, std::int64_t capacity,
                                 long nodes) {
  return fill(items, capacity, nodes);
}

KnapsackResult<std::int64_t> best_fill(std::span<const KnapsackItem<std::int64_t>> items,
                                       std::int64_t capacity, long nodes) {
  return fill(items, capacity, nodes);
}

}  // namespace strikeoff
