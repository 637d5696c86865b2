// SPDX-License-Identifier: MIT
#include "cutting/column_generation.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

#include "cutting/pattern.h"

namespace strikeoff {
namespace {

constexpr double eps = 1e-9;
constexpr long pricing_nodes = 20'000;

/// One column of the linear program: a pattern, a piece over what is wanted, a piece left uncut, or
/// a bar left over.
struct Column {
  enum class Kind { pattern, over, uncut, spare } kind = Kind::uncut;
  std::size_t index = 0;
};

/// Minimise over columns whose rows are: pieces wanted (>=), then limited stocks (<=).
class Simplex {
 public:
  Simplex(const BarProblem& problem, const ColumnGeneration::Question& question,
          std::vector<BarPattern>& patterns)
      : problem_(problem), question_(question), patterns_(patterns), items_(problem.items.size()) {
    stock_row_.assign(problem.stocks.size(), npos);
    std::size_t rows = items_;
    for (std::size_t k = 0; k < problem.stocks.size(); ++k) {
      if (question.available[k] < std::numeric_limits<int>::max()) stock_row_[k] = rows++;
    }
    rows_ = rows;
    inverse_.assign(rows * rows, 0.0);
    for (std::size_t r = 0; r < rows; ++r) inverse_[r * rows + r] = 1;
    level_.resize(rows);
    basis_.resize(rows);
    cost_.resize(rows);
    for (std::size_t i = 0; i < items_; ++i) {
      level_[i] = question.demand[i];
      basis_[i] = {Column::Kind::uncut, i};
      cost_[i] = question.penalty[i];
    }
    for (std::size_t k = 0; k < stock_row_.size(); ++k) {
      if (stock_row_[k] == npos) continue;
      level_[stock_row_[k]] = question.available[k];
      basis_[stock_row_[k]] = {Column::Kind::spare, k};
      cost_[stock_row_[k]] = 0;
    }
    price_.resize(rows);
    entering_.resize(rows);
    usable_.resize(patterns.size());
    for (std::size_t p = 0; p < patterns.size(); ++p) usable_[p] = is_proper(patterns[p]);
  }

  ColumnGeneration::Answer run() {
    for (int pivots = 0; pivots < 20'000; ++pivots) {
      set_prices();
      Column column;
      if (!cheapest_known(column) && !cheapest_new(column)) break;
      if (!enter(column)) break;
    }
    return answer();
  }

 private:
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);

  /// Takes no more of a piece than is wanted, from a stock there is.
  [[nodiscard]] bool is_proper(const BarPattern& pattern) const {
    if (question_.available[pattern.stock] == 0) return false;
    for (std::size_t i = 0; i < items_; ++i) {
      if (pattern.counts[i] > question_.demand[i]) return false;
    }
    return true;
  }

  void set_prices() {
    std::fill(price_.begin(), price_.end(), 0.0);
    for (std::size_t r = 0; r < rows_; ++r) {
      if (cost_[r] == 0) continue;
      const double* row = &inverse_[r * rows_];
      for (std::size_t c = 0; c < rows_; ++c) price_[c] += cost_[r] * row[c];
    }
  }

  [[nodiscard]] double stock_price(std::size_t k) const {
    return stock_row_[k] == npos ? 0 : price_[stock_row_[k]];
  }

  [[nodiscard]] double reduced_cost(const BarPattern& pattern) const {
    double cost = question_.cost[pattern.stock] - stock_price(pattern.stock);
    for (std::size_t i = 0; i < items_; ++i) cost -= pattern.counts[i] * price_[i];
    return cost;
  }

  bool cheapest_known(Column& best) {
    double least = -eps * scale();
    const auto offer = [&](double cost, Column::Kind kind, std::size_t index) {
      if (cost < least) {
        least = cost;
        best = {kind, index};
      }
    };
    for (std::size_t p = 0; p < patterns_.size(); ++p) {
      if (usable_[p]) offer(reduced_cost(patterns_[p]), Column::Kind::pattern, p);
    }
    for (std::size_t i = 0; i < items_; ++i) {
      offer(price_[i], Column::Kind::over, i);
      offer(question_.penalty[i] - price_[i], Column::Kind::uncut, i);
    }
    for (std::size_t k = 0; k < stock_row_.size(); ++k) {
      offer(-stock_price(k), Column::Kind::spare, k);
    }
    return least < -eps * scale();
  }

  bool cheapest_new(Column& best) {
    double least = -eps * scale();
    for (std::size_t k = 0; k < problem_.stocks.size(); ++k) {
      if (question_.available[k] == 0) continue;
      BarPattern pattern = best_pattern(problem_, k, std::span(price_).first(items_),
                                        question_.demand, pricing_nodes);
      const double cost = reduced_cost(pattern);
      if (cost >= least) continue;
      // A pattern that is known was priced already; a hair of rounding must not add it again.
      if (cost > -1e-7 * scale() &&
          std::find(patterns_.begin(), patterns_.end(), pattern) != patterns_.end()) {
        continue;
      }
      least = cost;
      best = {Column::Kind::pattern, patterns_.size()};
      fresh_ = std::move(pattern);
    }
    if (least >= -eps * scale()) return false;
    patterns_.push_back(fresh_);
    usable_.push_back(true);
    return true;
  }

  /// Costs are compared beside the largest in the problem.
  [[nodiscard]] double scale() {
    if (scale_ == 0) {
      scale_ = 1;
      for (const double c : question_.cost) scale_ = std::max(scale_, c);
      for (const double c : question_.penalty) scale_ = std::max(scale_, c);
    }
    return scale_;
  }

  void set_entering(const Column& column) {
    for (std::size_t r = 0; r < rows_; ++r) {
      const double* row = &inverse_[r * rows_];
      double sum = 0;
      switch (column.kind) {
        case Column::Kind::pattern: {
          const BarPattern& p = patterns_[column.index];
          for (std::size_t i = 0; i < items_; ++i) sum += row[i] * p.counts[i];
          if (stock_row_[p.stock] != npos) sum += row[stock_row_[p.stock]];
          break;
        }
        case Column::Kind::over:
          sum = -row[column.index];
          break;
        case Column::Kind::uncut:
          sum = row[column.index];
          break;
        case Column::Kind::spare:
          sum = row[stock_row_[column.index]];
          break;
      }
      entering_[r] = sum;
    }
  }

  [[nodiscard]] double cost_of(const Column& column) const {
    if (column.kind == Column::Kind::pattern) return question_.cost[patterns_[column.index].stock];
    return column.kind == Column::Kind::uncut ? question_.penalty[column.index] : 0;
  }

  bool enter(const Column& column) {
    set_entering(column);
    std::size_t leaving = npos;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t r = 0; r < rows_; ++r) {
      if (entering_[r] <= eps) continue;
      const double ratio = std::max(0.0, level_[r]) / entering_[r];
      // Of equal ratios the largest pivot, for the numbers' sake.
      if (ratio < least - 1e-12 || (ratio <= least + 1e-12 && entering_[r] > entering_[leaving])) {
        least = std::min(least, ratio);
        leaving = r;
      }
    }
    if (leaving == npos) return false;
    const double pivot = entering_[leaving];
    double* pivot_row = &inverse_[leaving * rows_];
    for (std::size_t c = 0; c < rows_; ++c) pivot_row[c] /= pivot;
    level_[leaving] /= pivot;
    for (std::size_t r = 0; r < rows_; ++r) {
      if (r == leaving || entering_[r] == 0) continue;
      double* row = &inverse_[r * rows_];
      const double factor = entering_[r];
      for (std::size_t c = 0; c < rows_; ++c) row[c] -= factor * pivot_row[c];
      level_[r] -= factor * level_[leaving];
    }
    basis_[leaving] = column;
    cost_[leaving] = cost_of(column);
    return true;
  }

  [[nodiscard]] ColumnGeneration::Answer answer() {
    set_prices();
    ColumnGeneration::Answer result;
    result.price.assign(price_.begin(), price_.begin() + static_cast<std::ptrdiff_t>(items_));
    for (std::size_t r = 0; r < rows_; ++r) {
      result.value += cost_[r] * level_[r];
      if (basis_[r].kind == Column::Kind::uncut)
        result.uncut += cost_[r] * std::max(0.0, level_[r]);
      if (basis_[r].kind == Column::Kind::pattern && level_[r] > eps) {
        result.uses.push_back({basis_[r].index, level_[r]});
      }
    }
    return result;
  }

  const BarProblem& problem_;
  const ColumnGeneration::Question& question_;
  std::vector<BarPattern>& patterns_;
  std::size_t items_, rows_ = 0;
  std::vector<std::size_t> stock_row_;
  std::vector<double> inverse_, level_, cost_, price_, entering_;
  std::vector<Column> basis_;
  std::vector<bool> usable_;
  BarPattern fresh_;
  double scale_ = 0;
};

}  // namespace

ColumnGeneration::ColumnGeneration(const BarProblem& problem) : problem_(&problem) {}

ColumnGeneration::Answer ColumnGeneration::solve(const Question& question) {
  return Simplex(*problem_, question, patterns_).run();
}

}  // namespace strikeoff
