// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <vector>

#include "odds/correlations.h"
#include "odds/trial.h"
#include "strikeoff/odds.h"

namespace strikeoff {

/// How often each went wrong.
struct Counts {
  std::int64_t cold = 0, stiff = 0, late = 0, overrun = 0, empty = 0, empty_with_spare = 0;
};

/// Beyond what a pour is too long, or its bags do not fill the forms.
struct PourBounds {
  double end = 0;  // seconds; infinite where the job sets no limit
  double bags = 0, bags_with_spare = 0;
};

/// All pours: their figures in the order of their numbers, and what they add up to.
struct Runs {
  std::vector<double> end, wait, margin, bags;
  std::vector<double> severity;      // the largest of wait and age over working time
  std::vector<std::uint32_t> worst;  // pair
  Counts counts;
  Correlations correlations;
};

/// Pours in blocks whose size does not depend on the number of threads, and adds the blocks up in
/// their order.
[[nodiscard]] Runs pour_all(const TrialModel& model, const PourBounds& bounds,
                            const OddsOptions& options);

}  // namespace strikeoff
