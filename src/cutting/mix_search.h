// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "cutting/bars.h"
#include "cutting/dual_cut.h"

namespace strikeoff {

/// The cheapest mix that satisfies every cut and is no part of a mix known not to pack: depth first
/// over the stocks that cost something, dearest first, cut off by what each cut alone still costs.
class MixSearch {
 public:
  static constexpr std::int64_t no_cost = std::numeric_limits<std::int64_t>::max();

  /// `most` of each stock. Both must outlive the search.
  MixSearch(const BarProblem& problem, const BarMix& most);

  std::vector<DualCut> cuts;
  std::vector<BarMix> not_packed;

  /// Of equal cost the one found first in a fixed order; nothing when there is none, or none was
  /// found within a number of nodes. No mix is known to cost less than `at_least`.
  [[nodiscard]] std::optional<BarMix> cheapest(std::int64_t at_least);
  /// What every mix that the last search left out costs at least; `no_cost` when it was complete.
  [[nodiscard]] std::int64_t missed() const { return missed_; }
  /// Steps of the last search, as long as those of `ColumnGeneration::work`.
  [[nodiscard]] long work() const;

 private:
  [[nodiscard]] std::int64_t least_cost(std::size_t at, std::int64_t cost,
                                        const std::vector<std::int64_t>& missing) const;
  void descend(std::size_t at, std::int64_t cost, const std::vector<std::int64_t>& missing);
  [[nodiscard]] bool is_ruled_out() const;

  const BarProblem& problem_;
  const BarMix& most_;
  std::vector<std::size_t> order_;
  std::vector<std::vector<double>> rates_;  // [cut][place in order]: most worth for a unit of cost
  BarMix mix_, best_;
  std::int64_t best_cost_ = no_cost, at_least_ = 0, missed_ = no_cost;
  long nodes_ = 0;
};

}  // namespace strikeoff
