// SPDX-License-Identifier: MIT
#include "cutting/sheet_dual.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

/// The counts of a filling as a list.
struct Row {
  std::size_t stock = 0;
  std::vector<std::pair<std::size_t, int>> counts;
};

template <class Weight>
Weight worth_of(const Row& row, const std::vector<Weight>& weights) {
  Weight sum = 0;
  for (const auto& [item, count] : row.counts) sum += weights[item] * static_cast<Weight>(count);
  return sum;
}

class DualAscent {
 public:
  DualAscent(const std::vector<std::vector<SheetFilling>>& fillings,
             const GuillotineProblem& problem, const ChoiceCode& code, long& steps)
      : problem_(problem), steps_(steps) {
    for (std::size_t s = 0; s < fillings.size(); ++s) {
      for (const SheetFilling& filling : fillings[s]) {
        if (!is_full(filling, code.all() - filling.counts, code)) continue;
        Row& row = rows_.emplace_back(Row{s, {}});
        for (std::size_t i = 0; i < code.items(); ++i) {
          const int count = code.count(filling.counts, i);
          if (count > 0) row.counts.emplace_back(i, count);
        }
      }
    }
    std::int64_t pieces = 0, dearest = 1;
    for (const RectangleItem& item : problem.items) pieces += item.demand;
    for (const SheetStock& stock : problem.stocks) {
      is_endless_.push_back(stock.available >= pieces);
      dearest = std::max(dearest, stock.cost);
    }
    // Sums of a million sheets stay below 2^60.
    best_.scale = std::max<std::int64_t>(1, (std::int64_t{1} << 40) / dearest);
    best_.weights.assign(problem.items.size(), 0);
    best_.extra.assign(problem.stocks.size(), 0);
  }

  SheetDual run() {
    // Without an endless stock every one that costs something holds the weights down.
    binding_ = is_endless_;
    if (std::find(binding_.begin(), binding_.end(), true) == binding_.end()) {
      for (std::size_t s = 0; s < binding_.size(); ++s) {
        binding_[s] = problem_.stocks[s].available > 0 && problem_.stocks[s].cost > 0;
      }
    }
    std::vector<double> weights;
    for (const RectangleItem& item : problem_.items) {
      weights.push_back(static_cast<double>(item.length) * static_cast<double>(item.width));
    }
    if (!scale_down(weights)) return best_;
    constexpr int rounds = 60;
    for (int round = 0; round < rounds && steps_ > 0; ++round) {
      keep_better(weights);
      for (double& weight : weights) weight *= 1 + 0.5 / (round + 2);
      cut_back(weights);
      steps_ -= static_cast<long>(rows_.size());
    }
    keep_better(weights);
    return best_;
  }

 private:
  [[nodiscard]] double cost(const Row& row) const {
    return static_cast<double>(problem_.stocks[row.stock].cost);
  }

  /// All by one factor, until no binding sheet is worth more than it costs. False: none binds, or
  /// one costs nothing.
  [[nodiscard]] bool scale_down(std::vector<double>& weights) const {
    double most = 0;
    for (const Row& row : rows_) {
      if (!binding_[row.stock]) continue;
      if (cost(row) <= 0) return false;
      most = std::max(most, worth_of(row, weights) / cost(row));
    }
    if (most <= 0) return false;
    for (double& weight : weights) weight /= most;
    return true;
  }

  /// SheetFilling by filling, only the pieces of those that are worth too much.
  void cut_back(std::vector<double>& weights) const {
    for (const Row& row : rows_) {
      if (!binding_[row.stock]) continue;
      const double worth = worth_of(row, weights);
      if (worth <= cost(row)) continue;
      for (const auto& entry : row.counts) weights[entry.first] *= cost(row) / worth;
    }
  }

  void keep_better(const std::vector<double>& weights) {
    SheetDual dual = best_;
    for (std::size_t i = 0; i < weights.size(); ++i) {
      // Less a margin far above the rounding of the sums.
      dual.weights[i] = static_cast<std::int64_t>(
          std::floor(weights[i] * static_cast<double>(dual.scale) * (1 - 1e-9)));
    }
    std::fill(dual.extra.begin(), dual.extra.end(), 0);
    for (const Row& row : rows_) {
      const std::int64_t over =
          worth_of(row, dual.weights) - problem_.stocks[row.stock].cost * dual.scale;
      if (over > 0 && is_endless_[row.stock]) return;
      dual.extra[row.stock] = std::max(dual.extra[row.stock], over);
    }
    std::int64_t worth = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
      worth += dual.weights[i] * problem_.items[i].demand;
    }
    for (std::size_t s = 0; s < dual.extra.size(); ++s) {
      if (dual.extra[s] > 0) worth -= dual.extra[s] * problem_.stocks[s].available;
    }
    if (worth <= best_worth_) return;
    best_worth_ = worth;
    dual.bound = dual.cost(worth);
    best_ = std::move(dual);
  }

  const GuillotineProblem& problem_;
  long& steps_;
  std::vector<Row> rows_;
  std::vector<bool> is_endless_, binding_;
  std::int64_t best_worth_ = 0;
  SheetDual best_;
};

}  // namespace

std::int64_t SheetDual::weight(Choice choice, const ChoiceCode& code) const {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * code.count(choice, i);
  return sum;
}

SheetDual sheet_dual(const std::vector<std::vector<SheetFilling>>& fillings,
                     const GuillotineProblem& problem, const ChoiceCode& code, long& steps) {
  return DualAscent(fillings, problem, code, steps).run();
}

}  // namespace strikeoff
