// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "strikeoff/quantity.h"

namespace strikeoff {

/// Groups sizes, given from large to small and none above `capacity`, so that each group's sum is
/// at most `capacity`: each group takes the largest size left and then the subset of the rest that
/// leaves least, searched for a bounded number of steps (minimum bin slack: Gupta and Ho, Prod.
/// Plan. Control 10, 1999, from memory). Indices into `sizes`.
[[nodiscard]] std::vector<std::vector<std::size_t>> fill_bins(const std::vector<Length>& sizes,
                                                              Length capacity);

}  // namespace strikeoff
