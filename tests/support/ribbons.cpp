// SPDX-License-Identifier: MIT
#include "support/ribbons.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include "support/plan_parts.h"

namespace strikeoff::test {
namespace {

/// A slab as the model sees it, m3.
struct Crossing {
  double volume = 0, least_piece = 0;
};

Crossing crossing(const PourSlab& slab, double volume, double least_m) {
  const double thick = slab.thickness * metres_in_sixteenth;
  double front = widest(slab) * metres_in_sixteenth;
  if (!slab.arms.empty()) {
    front *= 1.42;
    least_m = std::max({least_m, 2 * thick, 0.1});
  }
  return {volume, thick * front * least_m};
}

/// Batches of this size poured into the slabs in this order.
bool runs_on(const std::vector<Crossing>& slabs, const std::vector<std::size_t>& order,
             double batch) {
  const double rounding = 1e-9 * batch;
  double left = batch;  // of the batch in hand
  for (const std::size_t k : order) {
    double room = slabs[k].volume;
    while (room > rounding) {
      const double piece = std::min(left, room);
      const bool whole_slab = piece >= slabs[k].volume - rounding;
      if (!whole_slab && piece < slabs[k].least_piece) return false;
      room -= piece;
      left -= piece;
      if (left <= rounding) left = batch;
    }
  }
  return true;
}

bool runs_on_in_some_order(const std::vector<Crossing>& slabs, double batch) {
  std::vector<std::size_t> order(slabs.size());
  std::iota(order.begin(), order.end(), 0);
  do {
    if (runs_on(slabs, order, batch)) return true;
  } while (std::next_permutation(order.begin(), order.end()));
  return false;
}

/// Every slab in batches of its own, no larger than `mixed`, so many in all.
bool can_be_told_apart(const std::vector<Crossing>& slabs, double mixed, int batches) {
  int fewest = 0, most = 0;
  for (const Crossing& slab : slabs) {
    const int at_least = static_cast<int>(std::ceil(slab.volume / mixed * (1 - 1e-9)));
    const int at_most = std::max(1, static_cast<int>(slab.volume / slab.least_piece));
    if (at_least > at_most) return false;
    fewest += at_least;
    most += at_most;
  }
  return fewest <= batches && batches <= most;
}

}  // namespace

std::optional<RibbonPour> ribbon_pour(const RandomPour& pour, const Plan& plan, double least_m) {
  const double grain = pour.grain * metres_in_sixteenth;
  const double least = std::max({least_m, 0.04, 3 * grain});
  std::vector<Crossing> slabs;
  RibbonPour promised;
  double split_min = 0, net = 0;
  for (const PourSlab& slab : pour.slabs) {
    if (slab.thickness * metres_in_sixteenth > 0.15) return std::nullopt;
    if (slab.shape == PourShape::tee) promised.gap = 2;
    if (!slab.openings.empty()) split_min = 2;
    const double volume = slab_of(plan, slab.name).concrete.si();
    net += volume;
    slabs.push_back(crossing(slab, volume, least));
  }
  const int batches = (plan.mix.bags + pour.bags_per_batch - 1) / pour.bags_per_batch;
  const double mixed = pour.yield_l * pour.bags_per_batch / 1000;
  if (!runs_on_in_some_order(slabs, net / batches) && !can_be_told_apart(slabs, mixed, batches)) {
    return std::nullopt;
  }
  const Beat beat = beat_of(pour);
  promised.wait_min = promised.gap * beat.takt_min + beat.lead_min + split_min;
  return promised;
}

}  // namespace strikeoff::test
