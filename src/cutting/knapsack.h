// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace strikeoff {

/// One kind of thing to put into a bar: how long it is, what it is worth, and how many there are.
template <class Value>
struct KnapsackItem {
  std::int64_t length = 1;  // positive
  Value value = 0;
  int most = 0;
};

template <class Value>
struct KnapsackResult {
  Value value = 0;  // of `counts`
  Value upper = 0;  // no choice is worth more; equal to `value` when the search was complete
  std::vector<int> counts;  // one an item
  long work = 0;            // steps taken
};

/// The most valuable choice of items whose lengths add up to at most `capacity` (bounded knapsack).
/// Short capacities by dynamic programming; long ones depth first over the items by value per
/// length, pruned with the continuous bound, at most `nodes` of them, after which `upper` says what
/// may have been missed (Martello and Toth, Knapsack Problems, 1990, chapter 3; from memory).
[[nodiscard]] KnapsackResult<double> best_fill(std::span<const KnapsackItem<double>> items,
                                               std::int64_t capacity, long nodes);
/// The same in integers, where `upper` is a proof.
[[nodiscard]] KnapsackResult<std::int64_t> best_fill(
    std::span<const KnapsackItem<std::int64_t>> items, std::int64_t capacity, long nodes);

}  // namespace strikeoff
