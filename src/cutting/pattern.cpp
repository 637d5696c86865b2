// SPDX-License-Identifier: MIT
#include "cutting/pattern.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <set>

#include "cutting/knapsack.h"

namespace strikeoff {
namespace {

constexpr std::int64_t most_strips = 10'000;  // of one width on one board
constexpr long across_nodes = 20'000;
constexpr long across_node_work = 10;

/// True when a strip of this width may hold the piece.
bool is_held(const BarProblem& problem, const BarItem& item, std::int64_t width) {
  return item.width == width || (problem.trim && item.width < width);
}

/// The best strip of one width from what is wanted.
template <class Value>
KnapsackResult<Value> best_strip(const BarProblem& problem, std::int64_t width, std::int64_t length,
                                 std::span<const Value> value, std::span<const int> demand,
                                 long nodes) {
  std::vector<KnapsackItem<Value>> items;
  items.reserve(problem.items.size());
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    const BarItem& item = problem.items[i];
    items.push_back({item.length, value[i], is_held(problem, item, width) ? demand[i] : 0});
  }
  return best_fill(items, length, nodes);
}

/// What the first, the first two, ... strips of one width are worth.
template <class Value>
struct Ladder {
  std::int64_t width = 1;
  std::vector<Value> worth;  // rising by ever less
};

/// The most valuable number of strips of each width that lie side by side on the board.
template <class Value>
class Across {
 public:
  explicit Across(std::vector<Ladder<Value>> ladders) : ladders_(std::move(ladders)) {
    std::stable_sort(ladders_.begin(), ladders_.end(), [](const auto& a, const auto& b) {
      return static_cast<double>(a.worth.front()) * static_cast<double>(b.width) >
             static_cast<double>(b.worth.front()) * static_cast<double>(a.width);
    });
    counts_.resize(ladders_.size());
    best_counts_.resize(ladders_.size());
  }

  /// The most value found; see `upper`.
  Value run(std::int64_t width) {
    descend(0, width, 0);
    return best_;
  }
  /// No choice is worth more.
  [[nodiscard]] Value upper() const { return std::max(best_, missed_); }
  [[nodiscard]] long nodes() const { return nodes_; }
  [[nodiscard]] std::vector<std::pair<std::int64_t, int>> strips() const {
    std::vector<std::pair<std::int64_t, int>> out;
    for (std::size_t g = 0; g < ladders_.size(); ++g) {
      if (best_counts_[g] > 0) out.emplace_back(ladders_[g].width, best_counts_[g]);
    }
    return out;
  }

 private:
  void descend(std::size_t g, std::int64_t room, Value value) {
    if (value > best_) {
      best_ = value;
      best_counts_ = counts_;
    }
    if (g == ladders_.size()) return;
    const Ladder<Value>& ladder = ladders_[g];
    const double rate =
        static_cast<double>(ladder.worth.front()) / static_cast<double>(ladder.width);
    // Rounding must not cut off an equal choice from a better one.
    const double bound =
        static_cast<double>(value) + rate * static_cast<double>(room) * (1 + 1e-12);
    if (bound <= static_cast<double>(best_)) return;
    if (++nodes_ > across_nodes) {
      missed_ = std::max(missed_, static_cast<Value>(std::ceil(bound)));
      return;
    }
    const auto most =
        std::min<std::int64_t>(static_cast<std::int64_t>(ladder.worth.size()), room / ladder.width);
    for (std::int64_t n = most; n >= 0; --n) {
      counts_[g] = static_cast<int>(n);
      descend(g + 1, room - n * ladder.width,
              n == 0 ? value : value + ladder.worth[static_cast<std::size_t>(n - 1)]);
    }
    counts_[g] = 0;
  }

  std::vector<Ladder<Value>> ladders_;
  std::vector<int> counts_, best_counts_;
  Value best_ = 0, missed_ = 0;
  long nodes_ = 0;
};

}  // namespace

bool is_one_dimensional(const BarProblem& problem) {
  const std::int64_t width = problem.items.front().width;
  return std::all_of(problem.items.begin(), problem.items.end(),
                     [&](const BarItem& item) { return item.width == width; }) &&
         std::all_of(problem.stocks.begin(), problem.stocks.end(), [&](const BarStock& stock) {
           return stock.width >= width && stock.width < 2 * width;
         });
}

std::vector<std::int64_t> widths_of(const BarProblem& problem) {
  std::set<std::int64_t, std::greater<>> widths;
  for (const BarItem& item : problem.items) widths.insert(item.width);
  return {widths.begin(), widths.end()};
}

BarPattern best_pattern(const BarProblem& problem, std::size_t stock, std::span<const double> value,
                        std::span<const int> demand, long nodes, long& work) {
  const BarStock& board = problem.stocks[stock];
  std::vector<Ladder<double>> ladders;
  std::vector<std::vector<std::vector<int>>> pieces;  // [ladder][strip][item]
  std::vector<std::int64_t> width_of;
  for (const std::int64_t width : widths_of(problem)) {
    if (width > board.width) continue;
    Ladder<double> ladder{width, {}};
    std::vector<std::vector<int>> strips;
    std::vector<int> left(demand.begin(), demand.end());
    for (std::int64_t n = 0; n < std::min(board.width / width, most_strips); ++n) {
      auto strip = best_strip<double>(problem, width, board.length, value, left, nodes);
      work += strip.work;
      if (!(strip.value > 0)) break;
      for (std::size_t i = 0; i < left.size(); ++i) left[i] -= strip.counts[i];
      ladder.worth.push_back((n == 0 ? 0 : ladder.worth.back()) + strip.value);
      strips.push_back(std::move(strip.counts));
    }
    if (ladder.worth.empty()) continue;
    ladders.push_back(std::move(ladder));
    pieces.push_back(std::move(strips));
    width_of.push_back(width);
  }
  BarPattern pattern{stock, std::vector<int>(problem.items.size(), 0), {}, 1};
  if (ladders.empty()) return pattern;
  Across<double> across(std::move(ladders));
  across.run(board.width);
  work += across.nodes() * across_node_work;
  std::vector<int> wanted(demand.begin(), demand.end());
  for (const auto& [width, number] : across.strips()) {
    const auto at = static_cast<std::size_t>(std::find(width_of.begin(), width_of.end(), width) -
                                             width_of.begin());
    for (std::size_t s = 0; s < static_cast<std::size_t>(number); ++s) {
      for (std::size_t i = 0; i < pattern.counts.size(); ++i) {
        // Strips of two widths may have chosen the same piece.
        pieces[at][s][i] = std::min(pieces[at][s][i], wanted[i]);
        wanted[i] -= pieces[at][s][i];
        pattern.counts[i] += pieces[at][s][i];
      }
      pattern.strips.push_back({width, std::move(pieces[at][s])});
    }
  }
  return pattern;
}

void fill_up(const BarProblem& problem, std::span<const double> value, std::span<const int> demand,
             long nodes, BarPattern& pattern, long& work) {
  std::vector<int> wanted(demand.begin(), demand.end());
  for (std::size_t i = 0; i < wanted.size(); ++i) wanted[i] -= pattern.counts[i];
  for (BarStrip& strip : pattern.strips) {
    std::int64_t room = problem.stocks[pattern.stock].length;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      room -= problem.items[i].length * strip.counts[i];
    }
    const auto more = best_strip<double>(problem, strip.width, room, value, wanted, nodes);
    work += more.work;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      strip.counts[i] += more.counts[i];
      pattern.counts[i] += more.counts[i];
      wanted[i] -= more.counts[i];
    }
  }
}

std::int64_t pattern_bound(const BarProblem& problem, std::size_t stock,
                           std::span<const std::int64_t> value, std::span<const int> demand,
                           long nodes, long& work) {
  const BarStock& board = problem.stocks[stock];
  std::vector<Ladder<std::int64_t>> ladders;
  for (const std::int64_t width : widths_of(problem)) {
    if (width > board.width) continue;
    const auto strip = best_strip<std::int64_t>(problem, width, board.length, value, demand, nodes);
    const std::int64_t best = strip.upper;
    work += strip.work;
    std::int64_t all = 0;
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
      const BarItem& item = problem.items[i];
      if (is_held(problem, item, width) && item.length <= board.length) all += value[i] * demand[i];
    }
    if (best <= 0) continue;
    Ladder<std::int64_t> ladder{width, {}};
    const std::int64_t most = board.width / width;
    for (std::int64_t n = 1; n <= std::min(most, most_strips); ++n) {
      ladder.worth.push_back(n < most_strips ? std::min(n * best, all) : all);
      if (ladder.worth.back() == all) break;
    }
    ladders.push_back(std::move(ladder));
  }
  if (ladders.empty()) return 0;
  Across<std::int64_t> across(std::move(ladders));
  across.run(board.width);
  work += across.nodes() * across_node_work;
  return across.upper();
}

}  // namespace strikeoff
