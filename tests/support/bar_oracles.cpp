// SPDX-License-Identifier: MIT
#include "support/bar_oracles.h"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

namespace strikeoff::test {
namespace {

using Counts = std::vector<int>;
constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max() / 4;

/// Every choice of these pieces that has at least one of the first kind there is.
std::vector<Counts> choices_with_first(const Counts& pieces) {
  const auto first = std::find_if(pieces.begin(), pieces.end(), [](int n) { return n > 0; });
  std::vector<Counts> all{Counts(pieces.size(), 0)};
  all.front()[static_cast<std::size_t>(first - pieces.begin())] = 1;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const std::size_t so_far = all.size();
    for (std::size_t c = 0; c < so_far; ++c) {
      for (int n = all[c][i] + 1; n <= pieces[i]; ++n) {
        all.push_back(all[c]);
        all.back()[i] = n;
      }
    }
  }
  return all;
}

Counts without(Counts pieces, const Counts& taken) {
  for (std::size_t i = 0; i < pieces.size(); ++i) pieces[i] -= taken[i];
  return pieces;
}

bool is_none(const Counts& pieces) {
  return std::all_of(pieces.begin(), pieces.end(), [](int n) { return n == 0; });
}

class Trying {
 public:
  explicit Trying(const BarProblem& problem) : problem_(problem) {}

  std::int64_t cheapest(const Counts& pieces, const Counts& boards) {
    if (is_none(pieces)) return 0;
    const auto known = costs_.find({pieces, boards});
    if (known != costs_.end()) return known->second;
    std::int64_t best = never;
    for (const Counts& choice : choices_with_first(pieces)) {
      for (std::size_t k = 0; k < boards.size(); ++k) {
        const BarStock& stock = problem_.stocks[k];
        if (boards[k] == 0 || width_for(choice, stock.length) > stock.width) continue;
        Counts left = boards;
        --left[k];
        best = std::min(best, stock.cost + cheapest(without(pieces, choice), left));
      }
    }
    return costs_[{pieces, boards}] = best;
  }

 private:
  /// The narrowest board of this length that takes the pieces.
  std::int64_t width_for(const Counts& pieces, std::int64_t length) {
    if (is_none(pieces)) return 0;
    const auto known = widths_.find({pieces, length});
    if (known != widths_.end()) return known->second;
    std::int64_t best = never;
    for (const Counts& strip : choices_with_first(pieces)) {
      const std::int64_t width = strip_width(strip, length);
      if (width < never) best = std::min(best, width + width_for(without(pieces, strip), length));
    }
    return widths_[{pieces, length}] = best;
  }

  /// Of one strip with these pieces; never when they do not go into one.
  [[nodiscard]] std::int64_t strip_width(const Counts& pieces, std::int64_t length) const {
    std::int64_t sum = 0, widest = 0, narrowest = never;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      if (pieces[i] == 0) continue;
      sum += problem_.items[i].length * pieces[i];
      widest = std::max(widest, problem_.items[i].width);
      narrowest = std::min(narrowest, problem_.items[i].width);
    }
    return sum > length || (widest != narrowest && !problem_.trim) ? never : widest;
  }

  const BarProblem& problem_;
  std::map<std::pair<Counts, Counts>, std::int64_t> costs_;
  std::map<std::pair<Counts, std::int64_t>, std::int64_t> widths_;
};

/// The strips of a board. A bar has none of its own: it is one strip.
std::vector<BarStrip> strips_of(const BarPattern& pattern, const BarProblem& problem) {
  if (!pattern.strips.empty()) return pattern.strips;
  BarStrip bar{0, pattern.counts};
  for (std::size_t i = 0; i < pattern.counts.size(); ++i) {
    if (pattern.counts[i] > 0) bar.width = std::max(bar.width, problem.items[i].width);
  }
  return {bar};
}

/// What is wrong with one board cut in this way.
std::string fault_of(const BarPattern& pattern, const BarProblem& problem) {
  if (pattern.stock >= problem.stocks.size() || pattern.times < 1) return "no such board";
  const BarStock& stock = problem.stocks[pattern.stock];
  Counts in_strips(problem.items.size(), 0);
  std::int64_t width = 0;
  for (const BarStrip& strip : strips_of(pattern, problem)) {
    std::int64_t length = 0;
    width += strip.width;
    for (std::size_t i = 0; i < strip.counts.size(); ++i) {
      const BarItem& item = problem.items[i];
      if (strip.counts[i] < 0) return "fewer than no pieces";
      in_strips[i] += strip.counts[i];
      length += item.length * strip.counts[i];
      const bool held = item.width == strip.width || (problem.trim && item.width < strip.width);
      if (strip.counts[i] > 0 && !held) return "a piece in a strip of another width";
    }
    if (length > stock.length) return "a strip longer than its board";
  }
  if (width > stock.width) return "strips wider than their board";
  return in_strips == pattern.counts ? "" : "other pieces than its strips hold";
}

}  // namespace

std::optional<std::int64_t> cheapest_by_trying(const BarProblem& problem) {
  Counts pieces, boards;
  int sum = 0;
  for (const BarItem& item : problem.items) {
    pieces.push_back(item.demand);
    sum += item.demand;
  }
  for (const BarStock& stock : problem.stocks) boards.push_back(std::min(stock.available, sum));
  const std::int64_t cost = Trying(problem).cheapest(pieces, boards);
  return cost < never ? std::optional(cost) : std::nullopt;
}

std::vector<std::string> faults_of(const BarSolution& solution, const BarProblem& problem) {
  std::vector<std::string> faults;
  std::vector<std::int64_t> cut(problem.items.size(), 0), used(problem.stocks.size(), 0);
  std::int64_t cost = 0;
  for (const BarPattern& pattern : solution.patterns) {
    const std::string fault = fault_of(pattern, problem);
    if (!fault.empty()) {
      faults.push_back(fault);
      continue;
    }
    used[pattern.stock] += pattern.times;
    cost += problem.stocks[pattern.stock].cost * pattern.times;
    for (std::size_t i = 0; i < cut.size(); ++i) {
      cut[i] += std::int64_t{pattern.counts[i]} * pattern.times;
    }
  }
  for (std::size_t i = 0; i < cut.size(); ++i) {
    if (cut[i] < problem.items[i].demand) faults.push_back("too few of item " + std::to_string(i));
  }
  for (std::size_t k = 0; k < used.size(); ++k) {
    if (used[k] > problem.stocks[k].available) {
      faults.push_back("too many of stock " + std::to_string(k));
    }
  }
  // Bars that cost nothing are offered, and may be counted though none is cut: no cost either way.
  if (cost != solution.cost) faults.push_back("the cost is " + std::to_string(cost));
  if (solution.bound > solution.cost) faults.push_back("the bound is above the cost");
  if (solution.proven && solution.bound != solution.cost) faults.push_back("proven with a gap");
  return faults;
}

std::string text_of(const BarProblem& problem) {
  std::string text = problem.trim ? "trim;" : "";
  for (const BarStock& s : problem.stocks) {
    text += " stock " + std::to_string(s.length) + "x" + std::to_string(s.width) + " at " +
            std::to_string(s.cost) + " of " + std::to_string(s.available) + ";";
  }
  for (const BarItem& i : problem.items) {
    text += " " + std::to_string(i.demand) + " of " + std::to_string(i.length) + "x" +
            std::to_string(i.width) + ";";
  }
  return text;
}

}  // namespace strikeoff::test
