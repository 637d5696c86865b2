// SPDX-License-Identifier: MIT
#include "cutting/bar_search.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace strikeoff {
namespace {

constexpr std::size_t most_patterns = 3'000;  // at one place of the search
constexpr std::size_t most_cuts = 40;
constexpr std::size_t most_failed = 200'000;
constexpr int most_changed = 3;  // pieces that change places with one
// Steps as long as those of `ColumnGeneration::work`.
constexpr long pattern_work = 40, sum_work = 10;

std::vector<int> key(const BarState& state) {
  std::vector<int> key = state.demand;
  key.insert(key.end(), state.bars.begin(), state.bars.end());
  return key;
}

}  // namespace

BarSearch::BarSearch(const BarProblem& problem, ColumnGeneration& continuous, long& effort)
    : problem_(problem), continuous_(continuous), effort_(effort) {
  for (const BarItem& item : problem.items) {
    all_.push_back(item.demand);
    penalty_.push_back(static_cast<double>(item.length) * static_cast<double>(item.width));
  }
  largest_ = *std::max_element(penalty_.begin(), penalty_.end());
}

ColumnGeneration::Answer BarSearch::solve(const BarState& state) {
  const long before = continuous_.work();
  auto answer = continuous_.solve(
      {state.demand, std::vector<double>(problem_.stocks.size(), 0.0), state.bars, penalty_});
  effort_ -= continuous_.work() - before;
  return answer;
}

bool BarSearch::cuts_all(const ColumnGeneration::Answer& answer) const {
  return answer.uncut <= 1e-7 * largest_;
}

bool BarSearch::is_impossible(const BarState& state, const ColumnGeneration::Answer& answer) {
  if (cuts_all(answer)) return false;
  long work = 0;
  const auto cut = dual_cut(problem_, state.demand, answer.price, work);
  const bool impossible = cut && !satisfies(state.bars, *cut);
  if (impossible) {
    auto lasting = dual_cut(problem_, all_, answer.price, work);
    if (lasting && !satisfies(state.bars, *lasting, state.demand)) {
      if (cuts_.size() == most_cuts) cuts_.pop_back();
      cuts_.insert(cuts_.begin(), std::move(*lasting));
    }
  }
  effort_ -= work;
  return impossible;
}

/// True when a cut known shows that the rest does not fit.
bool BarSearch::is_cut_off(const BarState& state) {
  const auto hit = std::find_if(cuts_.begin(), cuts_.end(), [&](const DualCut& cut) {
    return !satisfies(state.bars, cut, state.demand);
  });
  effort_ -= static_cast<long>(cuts_.size() * (all_.size() + state.bars.size()));
  if (hit == cuts_.end()) return false;
  std::rotate(cuts_.begin(), hit, hit + 1);
  return true;
}

/// Where continuous solutions seldom cut anything off, most places do without.
bool BarSearch::pays_to_solve() {
  ++nodes_;
  return nodes_ < 500 || cut_off_ * 20 > nodes_ || nodes_ % 16 == 0;
}

Packing BarSearch::search(BarState& state, std::size_t departures) {
  if (state.is_done()) return Packing::found;
  if (waste_allowed(problem_, state) < 0 || is_cut_off(state)) return Packing::impossible;
  if (effort_ < 0) return Packing::unknown;
  if (failed_.count(key(state)) > 0) return Packing::impossible;
  const auto answer = pays_to_solve() ? solve(state) : ColumnGeneration::Answer{};
  effort_ -= node_work;
  const auto fail = [&] {
    if (failed_.size() < most_failed) failed_.insert(key(state));
    return Packing::impossible;
  };
  if (is_impossible(state, answer)) {
    ++cut_off_;
    return fail();
  }
  bool complete = true;
  std::size_t rank = 0;
  for (const BarPattern& pattern : patterns_for(state, answer, complete)) {
    if (rank > departures || effort_ < 0) {
      complete = false;
      break;
    }
    BarState next = state;
    next.use(pattern, 1);
    const Packing outcome = search(next, departures - rank++);
    if (outcome == Packing::found) {
      state = std::move(next);
      return outcome;
    }
    complete = complete && outcome == Packing::impossible;
  }
  return complete ? fail() : Packing::unknown;
}

/// The patterns to try, those of the continuous solution first, then by waste.
std::vector<BarPattern> BarSearch::patterns_for(const BarState& state,
                                                const ColumnGeneration::Answer& answer,
                                                bool& complete) {
  at_ = &state;
  found_.clear();
  complete_ = true;
  order_.clear();
  for (std::size_t i = 0; i < problem_.items.size(); ++i) {
    if (state.demand[i] > 0) order_.push_back(i);
  }
  std::stable_sort(order_.begin(), order_.end(), [&](std::size_t a, std::size_t b) {
    return problem_.items[a].length > problem_.items[b].length;
  });
  const std::size_t first = order_.front();
  std::vector<std::size_t> stocks;
  for (std::size_t k = 0; k < problem_.stocks.size(); ++k) {
    if (state.bars[k] > 0) stocks.push_back(k);
  }
  std::stable_sort(stocks.begin(), stocks.end(), [&](std::size_t a, std::size_t b) {
    return problem_.stocks[a].length < problem_.stocks[b].length;
  });
  const std::int64_t waste = waste_allowed(problem_, state);
  std::int64_t shorter = 0;
  for (const std::size_t k : stocks) {
    const std::int64_t length = problem_.stocks[k].length;
    allowed_ = std::min(waste, length - shorter - 1);
    shorter = length;
    // Two stocks of one length make the same choices.
    if (allowed_ < 0 || length < problem_.items[first].length) continue;
    BarPattern pattern{k, std::vector<int>(problem_.items.size(), 0), {}, 1};
    pattern.counts[first] = 1;
    extend(0, length - problem_.items[first].length, pattern);
  }
  for (Found& found : found_) {
    for (const auto& use : answer.uses) {
      const BarPattern& known = continuous_.patterns()[use.pattern];
      if (known.stock == found.pattern.stock && known.counts == found.pattern.counts) {
        found.use = std::max(found.use, use.times);
      }
    }
  }
  effort_ -= static_cast<long>(found_.size()) * node_work / 4;
  std::sort(found_.begin(), found_.end(), [](const Found& a, const Found& b) {
    if (a.use != b.use) return a.use > b.use;
    if (a.waste != b.waste) return a.waste < b.waste;
    return a.pattern.counts != b.pattern.counts ? a.pattern.counts > b.pattern.counts
                                                : a.pattern.stock < b.pattern.stock;
  });
  std::vector<BarPattern> patterns;
  for (Found& found : found_) patterns.push_back(std::move(found.pattern));
  complete = complete_;
  return patterns;
}

void BarSearch::extend(std::size_t at, std::int64_t room, BarPattern& pattern) {
  effort_ -= pattern_work;
  if (found_.size() >= most_patterns || effort_ < 0) {
    complete_ = false;
    return;
  }
  if (at == order_.size()) {
    keep(room, pattern);
    return;
  }
  // Even all that is left of the shorter pieces must be able to fill the bar.
  std::int64_t fillable = 0;
  for (std::size_t a = at; a < order_.size() && fillable < room; ++a) {
    const std::size_t i = order_[a];
    fillable += problem_.items[i].length * (at_->demand[i] - pattern.counts[i]);
  }
  if (room - fillable > allowed_) return;
  const std::size_t i = order_[at];
  const int already = pattern.counts[i];
  const int more = static_cast<int>(
      std::min<std::int64_t>(at_->demand[i] - already, room / problem_.items[i].length));
  for (int n = more; n >= 0; --n) {
    pattern.counts[i] = already + n;
    extend(at + 1, room - n * problem_.items[i].length, pattern);
  }
  pattern.counts[i] = already;
}

void BarSearch::keep(std::int64_t room, const BarPattern& pattern) {
  if (room > allowed_ || is_dominated(room, pattern)) return;
  found_.push_back({room, 0, pattern});
}

/// True when a piece left goes into the room, or into the place of few pieces that are no longer.
bool BarSearch::is_dominated(std::int64_t room, const BarPattern& pattern) const {
  return std::any_of(order_.begin(), order_.end(), [&](std::size_t i) {
    if (pattern.counts[i] >= at_->demand[i]) return false;
    const std::int64_t length = problem_.items[i].length;
    return length <= room || sums_to(length - room, length, 0, 0, pattern);
  });
}

/// True when some of the pieces from `from` on, with `pieces` taken before, are together from
/// `least` to `most` long; a single piece must be shorter than `most`. The first piece of the
/// pattern is the longest there is and stays.
bool BarSearch::sums_to(std::int64_t least, std::int64_t most, std::size_t from, int pieces,
                        const BarPattern& pattern) const {
  for (std::size_t a = from; a < order_.size(); ++a) {
    const std::size_t i = order_[a];
    const std::int64_t length = problem_.items[i].length;
    std::int64_t sum = 0;
    effort_ -= sum_work;
    for (int n = 1; n <= pattern.counts[i] - int{a == 0} && pieces + n <= most_changed; ++n) {
      sum += length;
      if (sum > most || (sum == most && pieces + n == 1)) break;
      if (sum >= least) return true;
      if (sums_to(least - sum, most - sum, a + 1, pieces + n, pattern)) return true;
    }
  }
  return false;
}

}  // namespace strikeoff
