// SPDX-License-Identifier: MIT
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "cutting/bars.h"

namespace strikeoff {

/// The effort of one node of a search, in steps as long as those of `ColumnGeneration::work`.
inline constexpr long node_work = 2'000;

/// Patterns and, side by side in memory, the pieces in each.
struct PatternPool {
  struct Pieces {
    std::size_t item = 0;
    int count = 0;
  };
  std::vector<BarPattern> patterns;
  std::vector<Pieces> pieces;     // of all patterns
  std::vector<std::size_t> ends;  // of each pattern in `pieces`

  void add(BarPattern pattern);
  [[nodiscard]] std::span<const Pieces> pieces_of(std::size_t pattern) const;
};

/// The continuous relaxation of cutting: patterns may be used a fraction of a time, and a piece may
/// be left uncut at a penalty. Solved by column generation (Gilmore and Gomory, Operations Research
/// 9, 1961) with a dense inverse of the basis, which is small: a row a piece length and a row a
/// stock of which there is a limited number. Patterns found stay for later calls.
class ColumnGeneration {
 public:
  explicit ColumnGeneration(const BarProblem& problem);

  struct Question {
    std::vector<int> demand;      // one an item
    std::vector<double> cost;     // one a stock
    std::vector<int> available;   // one a stock
    std::vector<double> penalty;  // one an item, for a piece left uncut
  };
  struct Use {
    std::size_t pattern = 0;  // of `patterns()`
    double times = 0;
  };
  struct Answer {
    double value = 0;
    std::vector<double> price;  // dual of each item
    std::vector<Use> uses;      // patterns used
    double uncut = 0;           // penalty paid
  };
  /// In floating point: what must be proven is checked in integers by the caller. Stops after
  /// `most_work`, or a number of pivots that only odd data reaches; the answer is then feasible but
  /// not optimal.
  [[nodiscard]] Answer solve(const Question& question,
                             long most_work = std::numeric_limits<long>::max());

  [[nodiscard]] const std::vector<BarPattern>& patterns() const { return pool_.patterns; }
  [[nodiscard]] const PatternPool& pool() const { return pool_; }
  /// Steps taken by all calls so far, each about a nanosecond; what efforts are counted in.
  [[nodiscard]] long work() const { return work_; }

 private:
  const BarProblem* problem_;
  PatternPool pool_;
  long work_ = 0;
};

}  // namespace strikeoff
