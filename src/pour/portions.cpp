// SPDX-License-Identifier: MIT
#include "pour/portions.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace strikeoff {
namespace {

/// A slab's end or a batch's within this part of a batch of another is the same.
constexpr double same = 1e-9;

std::vector<double> ends_of(const std::vector<SlabShare>& slabs) {
  std::vector<double> ends;
  double sum = 0;
  for (const SlabShare& slab : slabs) ends.push_back(sum += slab.volume);
  return ends;
}

Portions between_ends(const std::vector<SlabShare>& slabs, const std::vector<double>& batch_ends) {
  const std::vector<double> slab_ends = ends_of(slabs);
  Portions portions;
  portions.of.resize(slabs.size());
  double from = 0;
  std::size_t k = 0;
  for (std::size_t i = 0; i < batch_ends.size(); ++i) {
    double end = batch_ends[i];
    const double near = same * (end - from);
    const auto slab_end = std::lower_bound(slab_ends.begin(), slab_ends.end(), end - near);
    if (slab_end != slab_ends.end() && *slab_end <= end + near) end = *slab_end;
    while (from < end && k < slabs.size()) {
      const double to = std::min(end, slab_ends[k]);
      if (to > from) {
        portions.of[k].push_back({static_cast<int>(i) + 1, to - from});
        const bool is_whole = to - from >= slabs[k].volume * (1 - same);
        if (to - from < slabs[k].narrow * (1 - 1e-6) && !is_whole) ++portions.narrow;
      }
      from = to;
      if (to == slab_ends[k]) ++k;
    }
  }
  return portions;
}

/// Batch ends, some of them fixed; equal batches between those.
class Ends {
 public:
  Ends(double whole, int count) : whole_(whole), fixed_{{0, 0.0}}, count_(count) {}

  [[nodiscard]] int last_fixed() const { return fixed_.back().first; }
  [[nodiscard]] double at(int batch) const {
    const auto [from, volume] = fixed_.back();
    return volume + (whole_ - volume) * (batch - from) / (count_ - from);
  }
  /// Fixes a batch's end where none before and after it then holds more than `most`.
  bool fix(int batch, double at, double most) {
    const auto [from, volume] = fixed_.back();
    if (batch <= from || batch >= count_ || at <= volume || at >= whole_) return false;
    const double enough = most * (1 + 1e-12);
    if (at - volume > enough * (batch - from) || whole_ - at > enough * (count_ - batch)) {
      return false;
    }
    fixed_.emplace_back(batch, at);
    return true;
  }
  [[nodiscard]] std::vector<double> all() const {
    std::vector<double> ends;
    auto next = fixed_.begin();
    for (int batch = 1; batch <= count_; ++batch) {
      while (next + 1 != fixed_.end() && (next + 1)->first < batch) ++next;
      const bool is_last = next + 1 == fixed_.end();
      const int to = is_last ? count_ : (next + 1)->first;
      const double end = is_last ? whole_ : (next + 1)->second;
      ends.push_back(next->second +
                     (end - next->second) * (batch - next->first) / (to - next->first));
    }
    ends.back() = whole_;
    return ends;
  }

 private:
  double whole_;
  std::vector<std::pair<int, double>> fixed_;  // batch, where it ends
  int count_;
};

}  // namespace

Portions portions_of(const std::vector<SlabShare>& slabs, const std::vector<double>& batches) {
  const double volume = ends_of(slabs).back();
  const double all = std::accumulate(batches.begin(), batches.end(), 0.0);
  std::vector<double> ends;
  double sum = 0;
  for (const double batch : batches) ends.push_back(volume * ((sum += batch) / all));
  ends.back() = volume;
  return between_ends(slabs, ends);
}

Portions equal_portions(const std::vector<SlabShare>& slabs, int count, double room,
                        double more_room) {
  const std::vector<double> slab_ends = ends_of(slabs);
  const double whole = slab_ends.back(), usual = whole / count;
  Ends ends(whole, count);
  for (std::size_t k = 0; k + 1 < slabs.size() && ends.last_fixed() + 1 < count; ++k) {
    const double slab_end = slab_ends[k];
    // The batch that ends nearest to the slab's end.
    int batch = ends.last_fixed() + 1;
    while (batch + 1 < count && std::abs(ends.at(batch + 1) - slab_end) <
                                    std::abs(ends.at(batch) - slab_end) - same * usual) {
      ++batch;
    }
    const double over = ends.at(batch) - slab_end;
    const double spare = room * usual;
    if (over >= std::max(slabs[k + 1].narrow, spare) || -over >= slabs[k].narrow) continue;
    for (const double most : {usual * (1 + room), usual * (1 + more_room)}) {
      if (ends.fix(batch, slab_end, most)) break;
      const double into_next = slab_end + slabs[k + 1].narrow, short_of = slab_end - slabs[k].narrow;
      const double nearer = over > 0 ? into_next : short_of, other = over > 0 ? short_of : into_next;
      if (ends.fix(batch, nearer, most) || ends.fix(batch, other, most)) break;
    }
  }
  return between_ends(slabs, ends.all());
}

}  // namespace strikeoff
