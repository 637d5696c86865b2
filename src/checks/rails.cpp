// SPDX-License-Identifier: MIT
#include "checks/rails.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
std::optional<Rail> narrowest_rail(const SlabPlan& slab) {
  std::optional<Rail> narrowest;
  const auto consider = [&](Length width, std::size_t opening) {
    if (!narrowest || width < narrowest->width) narrowest = Rail{width, opening};
  };
  for (std::size_t i = 0; i < slab.openings.size(); ++i) {
    const Polygon opening = chords(slab.openings[i].edge, drawn_within);
    consider(distance(opening, slab.outline), i);
    for (std::size_t j = i + 1; j < slab.openings.size(); ++j) {
      consider(distance(opening, chords(slab.openings[j].edge, drawn_within)), i);
    }
  }
  return narrowest;
}

}  // namespace strikeoff
