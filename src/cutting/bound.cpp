// SPDX-License-Identifier: MIT
#include "cutting/bound.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>

namespace strikeoff {
namespace {

/// A size as a share of the board, `part/whole`, both whole nanometres. Parts round down and
/// boards up, so that lengths with fractions of a nanometre can only lower the bound.
struct Share {
  double part, whole;
};

/// A dual feasible function: shares that add up to at most 1 keep doing so.
using Dual = std::function<double(const Share&)>;

double identity(const Share& x) {
  return x.part / x.whole;
}

/// u(k): items of just over 1/(k+1) count as 1/k. Products of nanometres and small k are exact.
double stepped(const Share& x, double k) {
  const double scaled = x.part * (k + 1);
  const double steps = std::floor(scaled / x.whole);
  return steps * x.whole == scaled ? identity(x) : steps / k;
}

/// U(e): all but the whole board is counted as the whole, less than e as nothing.
double all_or_nothing(const Share& x, double e) {
  if (x.part > x.whole - e) return 1;
  return x.part < e ? 0 : identity(x);
}

/// phi(e): how many e still fit beside the item.
double beside(const Share& x, double e) {
  const double most = std::floor(x.whole / e);
  if (x.part * 2 > x.whole) return 1 - std::floor((x.whole - x.part) / e) / most;
  return x.part < e ? 0 : 1 / most;
}

/// The functions worth trying for these sizes: the steps of all change only at sizes present.
std::vector<Dual> duals_for(std::vector<double> parts, double whole) {
  std::vector<Dual> duals{identity};
  for (const double k : {1., 2., 3., 4., 5.}) {
    duals.emplace_back([k](const Share& x) { return stepped(x, k); });
  }
  std::sort(parts.begin(), parts.end());
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  std::vector<double> small;
  for (const double part : parts) {
    if (part > 0 && part * 2 <= whole) small.push_back(part);
    if (part * 2 > whole && part < whole) small.push_back(whole - part);
  }
  std::sort(small.begin(), small.end());
  // Twelve, spread evenly, keep thousands of sizes quick.
  const std::size_t tried = std::min<std::size_t>(small.size(), 12);
  for (std::size_t i = 0; i < tried; ++i) {
    const double e = small[i * small.size() / tried];
    duals.emplace_back([e](const Share& x) { return all_or_nothing(x, e); });
    duals.emplace_back([e](const Share& x) { return beside(x, e); });
  }
  return duals;
}

/// Each function's value for each item, function by function.
std::vector<std::vector<double>> values(const std::vector<double>& parts, double whole) {
  std::vector<std::vector<double>> table;
  for (const Dual& dual : duals_for(parts, whole)) {
    std::vector<double>& row = table.emplace_back();
    for (const double part : parts) row.push_back(dual({part, whole}));
  }
  return table;
}

/// The next whole number, less a margin far above the rounding of a sum of thousands of terms.
int round_up(double boards) {
  return static_cast<int>(std::ceil(boards * (1 - 1e-9) - 1e-9));
}

double with_kerf(Length part, Length kerf) {
  return std::floor((part + kerf).in_nm());
}

}  // namespace

int boards_bound(const std::vector<BoundItem>& items, Length length, Length width, Length kerf) {
  if (items.empty()) return 0;
  // Straight sizes, then the same turned.
  std::vector<double> lengths, widths;
  for (const BoundItem& item : items) {
    lengths.push_back(with_kerf(item.length, kerf));
    widths.push_back(with_kerf(item.width, kerf));
  }
  const std::size_t count = items.size();
  const std::vector<double> straight = lengths;
  lengths.insert(lengths.end(), widths.begin(), widths.end());
  widths.insert(widths.end(), straight.begin(), straight.end());
  const double board_length = std::ceil((length + kerf).in_nm());
  const double board_width = std::ceil((width + kerf).in_nm());
  const auto fits = [&](std::size_t i) {
    return lengths[i] <= board_length && widths[i] <= board_width;
  };
  const auto by_length = values(lengths, board_length);
  const auto by_width = values(widths, board_width);
  double most = 0;
  for (const auto& f : by_length) {
    for (const auto& g : by_width) {
      double sum = 0;
      for (std::size_t i = 0; i < count; ++i) {
        double share = f[i] * g[i];
        if (items[i].may_turn && fits(count + i)) {
          const double turned = f[count + i] * g[count + i];
          share = fits(i) ? std::min(share, turned) : turned;
        }
        sum += share * items[i].quantity;
      }
      most = std::max(most, sum);
    }
  }
  return std::max(1, round_up(most));
}

}  // namespace strikeoff
