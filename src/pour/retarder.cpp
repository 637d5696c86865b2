// SPDX-License-Identifier: MIT
#include "pour/retarder.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "mix/mix.h"
#include "pour/working_time.h"

namespace strikeoff {

bool covers(Duration usable, const Demand& demand) {
  return (usable - demand.usable()).si() >= minutes(-1e-9).si();
}

const Additive* auto_retarder(const Job& job) {
  for (const Additive& additive : job.additives) {
    if (additive.kind == AdditiveKind::retarder && !additive.per_bag && !additive.binder_percent)
      return &additive;
  }
  return nullptr;
}

double retarder_doses(const Job& job, double dose) {
  const std::vector<double> doses = doses_per_bag(job, dose);
  double sum = 0;
  for (std::size_t i = 0; i < doses.size(); ++i) {
    if (job.additives[i].kind == AdditiveKind::retarder) sum += doses[i];
  }
  return sum;
}

Duration retarded_by_all(const Job& job, Duration plain, double dose) {
  const std::vector<double> doses = doses_per_bag(job, dose);
  Duration time = plain;
  for (std::size_t i = 0; i < doses.size(); ++i) {
    if (job.additives[i].kind != AdditiveKind::retarder) continue;
    time += retarded(plain, job.additives[i], doses[i]) - plain;
  }
  return time;
}

double most_doses(const Additive& retarder) {
  if (retarder.most) return *retarder.most;
  return retarder.factors.empty() ? 4 : retarder.factors.back().doses;
}

double least_dose(const Job& job, Duration plain, double factor, const Demand& demand) {
  const Additive& retarder = *auto_retarder(job);
  const auto enough = [&](double steps) {
    const Duration time = retarded_by_all(job, plain, steps * retarder.step) * factor;
    return covers(time * job.crew.usable, demand);
  };
  if (enough(0)) return 0;
  // Whole steps, halving between one that fails and one that may do.
  double fails = 0, last = std::floor(most_doses(retarder) / retarder.step * (1 + 1e-9));
  if (!enough(last)) return last * retarder.step;
  while (last - fails > 1) {
    const double middle = std::floor((fails + last) / 2);
    (enough(middle) ? last : fails) = middle;
  }
  return last * retarder.step;
}

}  // namespace strikeoff
