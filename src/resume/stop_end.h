// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/resume.h"

namespace strikeoff {

/// What decides whether a pour can go on.
struct Prospect {
  int begun = 0, placed = 0, batches = 0;
  int with_bags = 0;            // batches for which there are bags
  std::optional<int> too_late;  // the first batch that cannot be placed while all still knits
  const std::vector<Joint>* joints = nullptr;
};

/// Where the slab should end today; nothing when the pour can go on to its end. Batches that have
/// their water go in while they can. From there up to the last batch that can still be placed the
/// shortest front, and of equal ones the latest: that makes the shortest joint.
[[nodiscard]] std::optional<StopEnd> find_stop_end(const Prospect& prospect);

}  // namespace strikeoff
