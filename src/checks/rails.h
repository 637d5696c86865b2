// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>

#include "strikeoff/plan.h"

namespace strikeoff {

/// The narrowest piece of slab between an opening and the outline or another opening.
struct Rail {
  Length width;
  std::size_t opening = 0;  // 0-based
};

/// Nothing when the slab has no opening.
[[nodiscard]] std::optional<Rail> narrowest_rail(const SlabPlan& slab);

}  // namespace strikeoff
