// SPDX-License-Identifier: MIT
#include "cutting/column_generation.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

#include "cutting/pattern.h"

namespace strikeoff {
namespace {

constexpr double eps = 1e-9;
constexpr long pricing_nodes = 20'000;
constexpr int most_pivots = 20'000;
constexpr int fresh_prices = 50;  // pivots after which prices are computed anew, against rounding

/// One column of the linear program: a pattern, a piece over what is wanted, a piece left uncut, or
/// a bar left over.
struct Column {
  enum class Kind { pattern, over, uncut, spare } kind = Kind::uncut;
  std::size_t index = 0;
};

/// Minimise over columns whose rows are: pieces wanted (>=), then limited stocks (<=).
class Simplex {
 public:
  Simplex(const BarProblem& problem, const ColumnGeneration::Question& question, PatternPool& pool,
          long& work)
      : problem_(problem),
        question_(question),
        pool_(pool),
        work_(work),
        items_(problem.items.size()) {
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
    for (const double c : question.cost) scale_ = std::max(scale_, c);
    for (const double c : question.penalty) scale_ = std::max(scale_, c);
    for (std::size_t p = 0; p < pool.patterns.size(); ++p) {
      if (is_proper(p)) usable_.push_back(p);
    }
    work_ += static_cast<long>(rows * rows + pool.pieces.size() + pool.patterns.size());
  }

  ColumnGeneration::Answer run(long most_work) {
    set_prices();
    const long start = work_;
    for (int pivots = 0; pivots < most_pivots && work_ - start < most_work; ++pivots) {
      if (pivots % fresh_prices == fresh_prices - 1) set_prices();
      Column column;
      if (!cheapest_known(column) && !cheapest_new(column)) break;
      if (!enter(column)) break;
    }
    return answer();
  }

 private:
  static constexpr std::size_t npos = static_cast<std::size_t>(-1);

  /// Takes no more of a piece than is wanted, from a stock there is.
  [[nodiscard]] bool is_proper(std::size_t pattern) const {
    if (question_.available[pool_.patterns[pattern].stock] == 0) return false;
    const auto pieces = pool_.pieces_of(pattern);
    return std::all_of(pieces.begin(), pieces.end(), [&](const PatternPool::Pieces& p) {
      return p.count <= question_.demand[p.item];
    });
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
    double least = -eps * scale_;
    const auto offer = [&](double cost, Column::Kind kind, std::size_t index) {
      if (cost < least) {
        least = cost;
        best = {kind, index};
      }
    };
    std::vector<double> start(question_.cost);
    for (std::size_t k = 0; k < start.size(); ++k) start[k] -= stock_price(k);
    for (const std::size_t p : usable_) {
      double cost = start[pool_.patterns[p].stock];
      const auto pieces = pool_.pieces_of(p);
      for (const PatternPool::Pieces& piece : pieces) cost -= piece.count * price_[piece.item];
      work_ += static_cast<long>(pieces.size());
      offer(cost, Column::Kind::pattern, p);
    }
    for (std::size_t i = 0; i < items_; ++i) {
      offer(price_[i], Column::Kind::over, i);
      offer(question_.penalty[i] - price_[i], Column::Kind::uncut, i);
    }
    for (std::size_t k = 0; k < stock_row_.size(); ++k) {
      offer(-stock_price(k), Column::Kind::spare, k);
    }
    reduced_ = least;
    return least < -eps * scale_;
  }

  bool cheapest_new(Column& best) {
    double least = -eps * scale_;
    for (std::size_t k = 0; k < problem_.stocks.size(); ++k) {
      if (question_.available[k] == 0) continue;
      BarPattern pattern = best_pattern(problem_, k, std::span(price_).first(items_),
                                        question_.demand, pricing_nodes, work_);
      const double cost = reduced_cost(pattern);
      if (cost >= least) continue;
      // A pattern that is known was priced already; a hair of rounding must not add it again.
      if (cost > -1e-7 * scale_ && std::find(pool_.patterns.begin(), pool_.patterns.end(),
                                             pattern) != pool_.patterns.end()) {
        continue;
      }
      least = cost;
      best = {Column::Kind::pattern, pool_.patterns.size()};
      fresh_ = std::move(pattern);
    }
    if (least >= -eps * scale_) return false;
    reduced_ = least;
    usable_.push_back(pool_.patterns.size());
    pool_.add(std::move(fresh_));
    return true;
  }

  void set_entering(const Column& column) {
    const auto set = [&](std::size_t at, double sign) {
      for (std::size_t r = 0; r < rows_; ++r) entering_[r] = sign * inverse_[r * rows_ + at];
    };
    switch (column.kind) {
      case Column::Kind::pattern: {
        const auto pieces = pool_.pieces_of(column.index);
        const std::size_t stock_row = stock_row_[pool_.patterns[column.index].stock];
        for (std::size_t r = 0; r < rows_; ++r) {
          const double* row = &inverse_[r * rows_];
          double sum = stock_row == npos ? 0 : row[stock_row];
          for (const PatternPool::Pieces& piece : pieces) sum += row[piece.item] * piece.count;
          entering_[r] = sum;
        }
        break;
      }
      case Column::Kind::over:
        set(column.index, -1);
        break;
      case Column::Kind::uncut:
        set(column.index, 1);
        break;
      case Column::Kind::spare:
        set(stock_row_[column.index], 1);
        break;
    }
  }

  [[nodiscard]] double cost_of(const Column& column) const {
    if (column.kind == Column::Kind::pattern) {
      return question_.cost[pool_.patterns[column.index].stock];
    }
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
    for (std::size_t c = 0; c < rows_; ++c) price_[c] += reduced_ * pivot_row[c];
    work_ += static_cast<long>(rows_ * rows_);
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
  PatternPool& pool_;
  long& work_;
  std::size_t items_, rows_ = 0;
  std::vector<std::size_t> stock_row_;
  std::vector<double> inverse_, level_, cost_, price_, entering_;
  std::vector<Column> basis_;
  std::vector<std::size_t> usable_;  // patterns of the pool that are proper here
  BarPattern fresh_;
  double scale_ = 1;    // the largest cost, beside which costs are compared
  double reduced_ = 0;  // reduced cost of the column found
};

}  // namespace

void PatternPool::add(BarPattern pattern) {
  for (std::size_t i = 0; i < pattern.counts.size(); ++i) {
    if (pattern.counts[i] > 0) pieces.push_back({i, pattern.counts[i]});
  }
  ends.push_back(pieces.size());
  patterns.push_back(std::move(pattern));
}

std::span<const PatternPool::Pieces> PatternPool::pieces_of(std::size_t pattern) const {
  const std::size_t begin = pattern == 0 ? 0 : ends[pattern - 1];
  return std::span(pieces).subspan(begin, ends[pattern] - begin);
}

ColumnGeneration::ColumnGeneration(const BarProblem& problem) : problem_(&problem) {}

ColumnGeneration::Answer ColumnGeneration::solve(const Question& question, long most_work) {
  return Simplex(*problem_, question, pool_, work_).run(most_work);
}

}  // namespace strikeoff
