// SPDX-License-Identifier: MIT
#include "pour/taper.h"

#include "pour/retarder.h"

namespace strikeoff {

std::vector<double> tapered_doses(const Job& job, Duration plain, double factor,
                                  const std::vector<Duration>& contacts, double last) {
  const Duration of_last = retarded_by_all(job, plain, last) * factor;
  std::vector<double> doses;
  for (const Duration& contact : contacts) {
    const Duration needed = of_last + (contacts.back() - contact);
    doses.push_back(least_dose(job, plain, factor, {needed * job.crew.usable, {}, {}}));
  }
  return doses;
}

}  // namespace strikeoff
