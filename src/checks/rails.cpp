// SPDX-License-Identifier: MIT
#include "checks/rails.h"

namespace strikeoff {

std::optional<Rail> narrowest_rail(const SlabPlan& slab) {
  std::optional<Rail> narrowest;
  const auto consider = [&](Length width, std::size_t opening) {
    if (!narrowest || width < narrowest->width) narrowest = Rail{width, opening};
  };
  std::vector<Polygon> drawn;
  for (const OpeningPlan& opening : slab.openings) {
    drawn.push_back(chords(opening.edge, drawn_within));
  }
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    consider(distance(drawn[i], slab.outline), i);
    for (std::size_t j = i + 1; j < drawn.size(); ++j) consider(distance(drawn[i], drawn[j]), i);
  }
  return narrowest;
}

}  // namespace strikeoff
