// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "strikeoff/plan.h"

namespace strikeoff {

/// A board across the slab that ends a pour where a joint is planned.
struct PlannedStop {
  int after = 0;  // the batch before it
  Length length;  // of all joints between batches up to it and later ones
  Joint longest;  // of them
  Duration wait;  // the longest of the joints on both sides
};

/// The shortest board with which every other joint waits no longer than `allowed`; of equals the
/// first. Nothing where no single board does.
[[nodiscard]] std::optional<PlannedStop> stop_end(const std::vector<Joint>& joints, int batches,
                                                  Duration allowed);

}  // namespace strikeoff
