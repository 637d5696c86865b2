// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"
#include "strikeoff/pour_log.h"

namespace strikeoff {

/// How the forms found differ from the plan's, in one slab.
struct DepthFound {
  std::string slab;
  Length deeper;  // mean of the readings less the plan there
  Volume more;    // over what is left of the slab; negative: less
};

/// What has been filled, and what is left.
struct Filling {
  std::vector<Volume> volumes;  // of the batches begun: bags x yield at their water
  Volume filled, left;          // net; what is left in forms as deep as measured
  int batches_left = 0;
  std::vector<double> shares;  // of every batch, of the planned net volume: for ZoneCutter::cut
  std::vector<DepthFound> depths;
};

/// Bags and water of a batch, as logged or as planned.
[[nodiscard]] double bags_of(const LoggedBatch& batch, const Plan& plan);
[[nodiscard]] Volume water_of(const LoggedBatch& batch, const Plan& plan);

[[nodiscard]] Filling fill(const Job& job, const Plan& plan, const PourLog& log);

}  // namespace strikeoff
