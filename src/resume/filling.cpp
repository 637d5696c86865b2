// SPDX-License-Identifier: MIT
#include "resume/filling.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <optional>

#include "mix/mix.h"
#include "slab/heights.h"

namespace strikeoff {
namespace {

/// A batch more or less is not worth it for less than this of it: bags do not yield more exactly
/// than that (assumption).
constexpr double not_worth = 0.05;
/// Less than this of a batch is rounding.
constexpr double nothing = 1e-9;

/// How deep the form is at one place by the plan: to the panel, where there is one, else to the
/// base.
Length planned_depth(const Slab& slab, const SlabPlan& shape, const Heights& heights,
                     const Point& at) {
  const bool on_panel = slab.panel && !shape.panel.empty() && contains(shape.panel, at);
  return slab.thickness - (on_panel ? slab.panel->thickness : Length{}) + heights.low.at(at) +
         heights.rise.at(at);
}

/// The mean difference over the area that is left; the area is taken to be left in proportion to
/// the volume (assumption).
std::optional<DepthFound> depth_found(const Slab& slab, const SlabPlan& shape,
                                      const std::vector<DepthReading>& readings, Volume left) {
  const Heights heights(slab);
  Length sum;
  int count = 0;
  for (const DepthReading& reading : readings) {
    if (reading.slab != slab.name) continue;
    sum += reading.depth - planned_depth(slab, shape, heights, reading.at);
    ++count;
  }
  if (count == 0) return std::nullopt;
  DepthFound found{slab.name, sum / count, {}};
  found.more = std::max(shape.top_area * (left / shape.concrete) * found.deeper, -left);
  return found;
}

/// What is left of each slab: by the plan, and as deep as measured.
struct Left {
  std::vector<Volume> planned, measured;
};

/// The slabs as the pour takes them.
std::vector<std::size_t> order_of_pour(const Plan& plan) {
  std::vector<std::size_t> order;
  for (const Sweep& sweep : plan.pour.sweeps) {
    for (std::size_t k = 0; k < plan.slabs.size(); ++k) {
      if (plan.slabs[k].name == sweep.slab) order.push_back(k);
    }
  }
  return order;
}

Left left_of(const Job& job, const Plan& plan, const PourLog& log, Volume filled,
             std::vector<DepthFound>& depths) {
  Left left;
  for (const std::size_t k : order_of_pour(plan)) {
    const Volume taken = std::min(filled, plan.slabs[k].concrete);
    filled = filled - taken;
    left.planned.push_back(plan.slabs[k].concrete - taken);
    left.measured.push_back(left.planned.back());
    if (left.planned.back() <= Volume{}) continue;
    const auto found = depth_found(job.slabs[k], plan.slabs[k], log.depths, left.planned.back());
    if (!found) continue;
    left.measured.back() += found->more;
    depths.push_back(*found);
  }
  return left;
}

/// Batches that bring the whole up to the waste planned. The plan's own number stands as long as
/// it is within what is not worth a batch.
int batches_left(const Plan& plan, double needed, int begun) {
  const int planned = std::max(0, plan.pour.batches - begun);
  const int most = std::max(0, whole_up(needed - nothing)),
            least = std::max(0, whole_up(needed - not_worth));
  return std::clamp(planned, least, most);
}

/// Shares of what is left, measured: what each is of the planned volume. As the plan shares it out
/// while its batches are as many, else equal.
std::vector<double> shares_of(const Left& left, const Plan& plan, int begun, int batches) {
  std::vector<double> weights(static_cast<std::size_t>(batches), 1.0);
  if (begun + batches == plan.pour.batches) {
    for (int i = 0; i < batches; ++i) {
      weights[static_cast<std::size_t>(i)] =
          plan.batches[static_cast<std::size_t>(begun + i)].zone.si();
    }
  }
  const double all_weights = std::accumulate(weights.begin(), weights.end(), 0.0);
  const Volume all = std::accumulate(left.measured.begin(), left.measured.end(), Volume{});
  std::vector<double> shares;
  std::size_t k = 0;
  Volume used;  // of slab k, measured
  for (int i = 0; i < batches; ++i) {
    Volume share = all * (weights[static_cast<std::size_t>(i)] / all_weights);
    double planned = 0;
    while (k < left.planned.size()) {
      const bool is_last = i + 1 == batches;
      const Volume here = left.measured[k] - used;
      if (!is_last && share < here) {
        planned += left.planned[k].si() * (share / left.measured[k]);
        used += share;
        break;
      }
      const double rest = left.measured[k] > Volume{} ? here / left.measured[k] : 1;
      planned += left.planned[k].si() * rest;
      share = share - here;
      used = {};
      ++k;
    }
    shares.push_back(planned);
  }
  return shares;
}

}  // namespace

double bags_of(const LoggedBatch& batch, const Plan& plan) {
  return batch.bags.value_or(plan.batches.front().bags);
}

Volume water_of(const LoggedBatch& batch, const Plan& plan) {
  return batch.water.value_or(plan.mix.water_per_bag * bags_of(batch, plan));
}

Filling fill(const Job& job, const Plan& plan, const PourLog& log) {
  Filling filling;
  const Batch& usual = plan.batches.front();
  Volume mixed, net;
  for (const SlabPlan& slab : plan.slabs) net += slab.concrete;
  for (const LoggedBatch& batch : log.batches) {
    const double bags = bags_of(batch, plan);
    const Batch& planned = plan.batches[std::min(filling.shares.size(), plan.batches.size() - 1)];
    // Hardly any water in it: no less than nothing.
    const Volume volume =
        std::max(yield_of_bag(job.mix, water_of(batch, plan) / bags) * bags, Volume{});
    filling.volumes.push_back(volume);
    mixed += volume;
    const Volume fills = std::min(volume * (planned.zone / planned.volume), net - filling.filled);
    filling.filled += fills;
    // Nothing is left for a batch too many; a cut needs some share.
    filling.shares.push_back(std::max(fills, net * 1e-6).si());
  }
  Left left = left_of(job, plan, log, filling.filled, filling.depths);
  Volume more;
  for (const DepthFound& depth : filling.depths) more += depth.more;
  const double needed = ((net + more) * (1 + job.waste) - mixed) / (plan.mix.yield * usual.bags);
  filling.batches_left = batches_left(plan, needed, static_cast<int>(log.batches.size()));
  if (filling.batches_left == 0) {
    filling.shares.back() += (net - filling.filled).si();  // the last one filled it up
    filling.filled = net;
    return filling;
  }
  filling.left = std::accumulate(left.measured.begin(), left.measured.end(), Volume{});
  const std::vector<double> shares =
      shares_of(left, plan, static_cast<int>(log.batches.size()), filling.batches_left);
  filling.shares.insert(filling.shares.end(), shares.begin(), shares.end());
  return filling;
}

}  // namespace strikeoff
