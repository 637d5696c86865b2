// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <set>
#include <vector>

#include "cutting/bar_state.h"
#include "cutting/bars.h"
#include "cutting/column_generation.h"
#include "cutting/dual_cut.h"

namespace strikeoff {

enum class Packing { found, impossible, unknown };

/// Complete search for a way to cut all pieces from a mix of bars of one width. The longest piece
/// left goes into every length of bar and there into every pattern that
///  - wastes no more than the mix can still afford,
///  - goes into no shorter bar left, with which the bar could change places,
///  - takes no further piece, and
///  - is not dominated: no few pieces of it could change places with one piece left that is as
///    long as they or longer and would still go in, since any plan with the pattern then gives one
///    with the fuller pattern (Martello and Toth, Knapsack Problems, 1990, chapter 8; from memory).
/// It is cut off where the continuous solution of the rest shows in integers (`dual_cut`) that the
/// rest does not fit, or such a cut found before does, and at states that failed before.
class BarSearch {
 public:
  /// `effort` is what may still be spent, in steps of `ColumnGeneration::work`.
  BarSearch(const BarProblem& problem, ColumnGeneration& continuous, long& effort);

  /// The continuous solution of what is left.
  [[nodiscard]] ColumnGeneration::Answer solve(const BarState& state);
  /// True when a continuous solution left nothing uncut.
  [[nodiscard]] bool cuts_all(const ColumnGeneration::Answer& answer) const;
  /// True when the rest surely does not fit.
  [[nodiscard]] bool is_impossible(const BarState& state, const ColumnGeneration::Answer& answer);

  /// Search from a state that departs from the first choice at most `departures` times in all, the
  /// second choice counting once, the third twice (limited discrepancy search: Harvey and Ginsberg,
  /// IJCAI 1995); `unknown` when that or the effort left something out.
  [[nodiscard]] Packing search(BarState& state, std::size_t departures);

 private:
  struct Found {
    std::int64_t waste = 0;
    double use = 0;  // in the continuous solution
    BarPattern pattern;
  };

  [[nodiscard]] bool pays_to_solve();
  [[nodiscard]] bool is_cut_off(const BarState& state);
  [[nodiscard]] std::vector<BarPattern> patterns_for(const BarState& state,
                                                     const ColumnGeneration::Answer& answer,
                                                     bool& complete);
  void extend(std::size_t at, std::int64_t room, BarPattern& pattern);
  void keep(std::int64_t room, const BarPattern& pattern);
  [[nodiscard]] bool is_dominated(std::int64_t room, const BarPattern& pattern) const;
  [[nodiscard]] bool sums_to(std::int64_t least, std::int64_t most, std::size_t from, int pieces,
                             const BarPattern& pattern) const;

  const BarProblem& problem_;
  ColumnGeneration& continuous_;
  long& effort_;
  std::vector<int> all_;         // the demand of the problem
  std::vector<double> penalty_;  // of a piece left uncut: its area
  double largest_ = 1;
  long nodes_ = 0, cut_off_ = 0;
  std::set<std::vector<int>> failed_;
  std::vector<DualCut> cuts_;  // that cut something off, the last used first

  // The node whose patterns are being listed.
  const BarState* at_ = nullptr;
  std::vector<std::size_t> order_;  // items wanted, longest first
  std::int64_t allowed_ = 0;        // waste of the bar being filled
  std::vector<Found> found_;
  bool complete_ = true;
};

}  // namespace strikeoff
