// SPDX-License-Identifier: MIT
#include <variant>

#include "mix/mix.h"

namespace strikeoff {
namespace {

Mass binder_share(const Additive& additive, const Mix& mix) {
  return mix.bag * (mix.binder.value() * *additive.binder_percent);
}

bool is_auto(const Additive& additive) {
  return !additive.per_bag && !additive.binder_percent;
}

}  // namespace

Amount dose_size(const Additive& additive, const Mix& mix) {
  if (additive.binder_percent && !std::holds_alternative<Mass>(additive.dose_size)) {
    return binder_share(additive, mix);
  }
  return additive.dose_size;
}

Amount amount_of(double doses, const Amount& dose) {
  if (const Mass* mass = std::get_if<Mass>(&dose)) return *mass * doses;
  if (const Volume* volume = std::get_if<Volume>(&dose)) return *volume * doses;
  return {};
}

double doses_per_bag(const Additive& additive, const Mix& mix, double retarder) {
  if (additive.per_bag) return *additive.per_bag;
  if (is_auto(additive)) return retarder;
  return binder_share(additive, mix) / std::get<Mass>(dose_size(additive, mix));
}

std::vector<double> doses_per_bag(const Job& job, double retarder) {
  std::vector<double> doses;
  double left = retarder;
  for (const Additive& additive : job.additives) {
    doses.push_back(doses_per_bag(additive, job.mix, left));
    if (is_auto(additive)) left = 0;
  }
  return doses;
}

std::vector<DoseTotal> dose_totals(const Job& job, const MixPlan& mix, double retarder) {
  const double bags = batch_count(mix, job.crew.bags_per_batch) * job.crew.bags_per_batch;
  const std::vector<double> doses = doses_per_bag(job, retarder);
  std::vector<DoseTotal> totals;
  for (std::size_t i = 0; i < doses.size(); ++i) {
    const Additive& additive = job.additives[i];
    totals.push_back({additive.name, additive.kind, doses[i], doses[i] * bags,
                      amount_of(doses[i], dose_size(additive, job.mix))});
  }
  return totals;
}

}  // namespace strikeoff
