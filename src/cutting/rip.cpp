// SPDX-License-Identifier: MIT
#include "cutting/rip.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <utility>

#include "cutting/column_generation.h"
#include "cutting/pattern.h"

namespace strikeoff {
namespace {

/// The pieces of one width, and which mixes of strips hold them.
class Width {
 public:
  Width(const BarProblem& problem, std::int64_t width) : width_(width) {
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
      if (problem.items[i].width != width || problem.items[i].demand == 0) continue;
      bars_.items.push_back({problem.items[i].length, problem.items[i].demand, 1});
      index_.push_back(i);
    }
    for (const BarStock& stock : problem.stocks) bars_.stocks.push_back({stock.length, 1, 0, 1});
  }

  [[nodiscard]] std::int64_t width() const { return width_; }
  [[nodiscard]] const std::vector<std::size_t>& index() const { return index_; }

  const PackedBars& pack(const BarMix& strips, long& effort) {
    const auto [at, is_new] = known_.try_emplace(strips);
    if (is_new) {
      ColumnGeneration continuous(bars_);
      at->second = pack_bars(bars_, strips, continuous, effort);
    }
    return at->second;
  }

  /// The smallest mixes of strips within `most` that hold the pieces. `complete` turns false where
  /// one could not be decided.
  std::vector<BarMix> smallest(const BarMix& most, long& effort, bool& complete) {
    std::vector<BarMix> found;
    BarMix mix(most.size(), 0);
    descend(0, most, mix, effort, complete, found);
    return found;
  }

 private:
  void descend(std::size_t k, const BarMix& most, BarMix& mix, long& effort, bool& complete,
               std::vector<BarMix>& found) {
    effort -= node_work + static_cast<long>(found.size());
    if (effort < 0) {
      complete = false;
      return;
    }
    if (k == most.size()) {
      const Packing outcome = pack(mix, effort).outcome;
      if (outcome == Packing::unknown) complete = false;
      if (outcome != Packing::found) return;
      const bool is_smallest = std::none_of(found.begin(), found.end(), [&](const BarMix& other) {
        for (std::size_t s = 0; s < mix.size(); ++s) {
          if (other[s] > mix[s]) return false;
        }
        return true;
      });
      if (is_smallest) found.push_back(mix);
      return;
    }
    const std::size_t before = found.size();
    // The last stock holds at least what is missing.
    std::int64_t missing = 0;
    if (k + 1 == most.size()) {
      for (const BarItem& item : bars_.items) missing += item.length * item.demand;
      for (std::size_t s = 0; s < k; ++s) missing -= bars_.stocks[s].length * mix[s];
    }
    const std::int64_t length = bars_.stocks[k].length;
    const std::int64_t least = missing <= 0 ? 0 : (missing + length - 1) / length;
    for (std::int64_t n = least; n <= most[k] && effort >= 0; ++n) {
      mix[k] = static_cast<int>(n);
      descend(k + 1, most, mix, effort, complete, found);
      // More of the last stock cannot be smaller.
      if (k + 1 == most.size() && found.size() > before) break;
    }
    if (effort < 0) complete = false;
    mix[k] = 0;
  }

  std::int64_t width_;
  BarProblem bars_;
  std::vector<std::size_t> index_;  // of the problem's items
  std::map<BarMix, PackedBars> known_;
};

class Rip {
 public:
  Rip(const BarProblem& problem, const BarMix& mix, long& effort)
      : problem_(problem), mix_(mix), effort_(effort) {
    for (const std::int64_t width : widths_of(problem)) {
      Width pieces(problem, width);
      if (!pieces.index().empty()) widths_.push_back(std::move(pieces));
    }
    for (std::size_t k = 0; k < mix.size(); ++k) room_.push_back(problem.stocks[k].width * mix[k]);
  }

  PackedBars run() {
    for (Width& width : widths_) {
      BarMix most;
      for (std::size_t k = 0; k < mix_.size(); ++k) {
        most.push_back(static_cast<int>(
            std::min<std::int64_t>(problem_.stocks[k].width / width.width() * mix_[k], 10'000)));
      }
      choices_.push_back(width.smallest(most, effort_, complete_));
      if (choices_.back().empty()) return {missing(), {}};
    }
    if (choose(0)) return {Packing::found, patterns()};
    return {missing(), {}};
  }

 private:
  [[nodiscard]] Packing missing() const {
    return complete_ ? Packing::impossible : Packing::unknown;
  }

  /// Chooses the strips of each width, widest first, while they leave room side by side.
  bool choose(std::size_t w) {
    effort_ -= node_work;
    if (effort_ < 0) {
      complete_ = false;
      return false;
    }
    if (w == widths_.size()) return lie_side_by_side();
    for (const BarMix& strips : choices_[w]) {
      bool fits = true;
      for (std::size_t k = 0; k < room_.size(); ++k) {
        room_[k] -= widths_[w].width() * strips[k];
        fits = fits && room_[k] >= 0;
      }
      chosen_.push_back(&strips);
      if (fits && choose(w + 1)) return true;
      chosen_.pop_back();
      for (std::size_t k = 0; k < room_.size(); ++k) room_[k] += widths_[w].width() * strips[k];
    }
    return false;
  }

  /// Puts the chosen strips on the boards of each stock, if they go.
  bool lie_side_by_side() {
    across_.clear();
    for (std::size_t k = 0; k < mix_.size(); ++k) {
      BarProblem bars;
      bars.stocks.push_back({problem_.stocks[k].width, 1, 0, 1});
      int strips = 0;
      for (std::size_t w = 0; w < widths_.size(); ++w) {
        bars.items.push_back({widths_[w].width(), (*chosen_[w])[k], 1});
        strips += (*chosen_[w])[k];
      }
      across_.emplace_back();
      if (strips == 0) continue;
      auto [at, is_new] = side_by_side_.try_emplace({k, counts_of(bars)});
      if (is_new) {
        ColumnGeneration continuous(bars);
        at->second = pack_bars(bars, {mix_[k]}, continuous, effort_);
      }
      if (at->second.outcome == Packing::unknown) complete_ = false;
      if (at->second.outcome != Packing::found) return false;
      across_.back() = at->second.patterns;
    }
    return true;
  }

  [[nodiscard]] static std::vector<int> counts_of(const BarProblem& bars) {
    std::vector<int> counts;
    for (const BarItem& item : bars.items) counts.push_back(item.demand);
    return counts;
  }

  /// Hands the strips of each width to the places across the boards.
  [[nodiscard]] std::vector<BarPattern> patterns() {
    std::vector<std::vector<std::vector<BarStrip>>> ready(widths_.size());  // [width][stock]
    for (std::size_t w = 0; w < widths_.size(); ++w) {
      ready[w].resize(mix_.size());
      for (const BarPattern& bar : widths_[w].pack(*chosen_[w], effort_).patterns) {
        BarStrip strip{widths_[w].width(), std::vector<int>(problem_.items.size(), 0)};
        for (std::size_t i = 0; i < bar.counts.size(); ++i) {
          strip.counts[widths_[w].index()[i]] = bar.counts[i];
        }
        for (int n = 0; n < bar.times; ++n) ready[w][bar.stock].push_back(strip);
      }
    }
    std::vector<BarPattern> out;
    for (std::size_t k = 0; k < mix_.size(); ++k) {
      for (const BarPattern& row : across_[k]) {
        for (int n = 0; n < row.times; ++n) {
          BarPattern board{k, std::vector<int>(problem_.items.size(), 0), {}, 1};
          for (std::size_t w = 0; w < widths_.size(); ++w) {
            for (int s = 0; s < row.counts[w] && !ready[w][k].empty(); ++s) {
              board.strips.push_back(std::move(ready[w][k].back()));
              ready[w][k].pop_back();
              for (std::size_t i = 0; i < board.counts.size(); ++i) {
                board.counts[i] += board.strips.back().counts[i];
              }
            }
          }
          out.push_back(std::move(board));
        }
      }
    }
    return out;
  }

  const BarProblem& problem_;
  const BarMix& mix_;
  long& effort_;
  std::vector<Width> widths_;
  std::vector<std::int64_t> room_;
  std::vector<std::vector<BarMix>> choices_;
  std::vector<const BarMix*> chosen_;
  std::vector<std::vector<BarPattern>> across_;
  std::map<std::pair<std::size_t, std::vector<int>>, PackedBars> side_by_side_;
  bool complete_ = true;
};

}  // namespace

PackedBars rip_boards(const BarProblem& problem, const BarMix& mix, long& effort) {
  return Rip(problem, mix, effort).run();
}

}  // namespace strikeoff
