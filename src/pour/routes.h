// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "pour/passage.h"
#include "pour/slab_volume.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// One way for a pour to cross a slab.
struct Route {
  std::string from, towards;  // in words
  /// The stretch from the start to the end; empty: straight fronts across `along` wherever they
  /// meet the slab, which can be done with any outline.
  std::optional<Passage> passage;
  Vec along;
  bool is_ring = false;  // the passage ends where it starts: two fronts go round
  /// An arm that leaves the passage by a mouth in one of its sides, from the mouth to its end.
  std::optional<Passage> branch;
  double branch_share = 0;           // of the slab's volume
  Front mouth;                       // as the start of the branch
  double mouth_from = 0, mouth_to = 0;  // along the side of the passage that has it
  bool mouth_on_left = false;
};

/// The ways worth trying, the plainest first: between every two ends that are not next to each
/// other, one way and the other; past a branching arm; round a large opening from the middle of
/// each arm; straight across. An end is a straight side with outward corners at both its ends.
[[nodiscard]] std::vector<Route> routes_across(const Slab& slab, const SlabPlan& shape,
                                               const SlabVolume& volume);

/// The slab's outline and its openings, arcs by chords.
[[nodiscard]] std::vector<Polygon> holes_of(const SlabPlan& shape);

}  // namespace strikeoff
