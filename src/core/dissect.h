// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// A straight cut from one place on a region's boundary to another. What lies to its left and to
/// its right are parts with these numbers; a cut within one part has the same number twice.
struct Cut {
  Point from, to;
  int left = 0, right = 0;
};

struct CutPart {
  Polygon outline;  // simple, anticlockwise
  int number = 0;   // as the cuts beside it say
};

/// The parts of what lies inside `outline` (anticlockwise) and outside all `holes`
/// (anticlockwise, apart from each other and from the outline). A cut may cross holes; it must not
/// leave the outline or cross another cut; the `later` ones may end on the others. Corners that lie on a straight line are left out.
/// Nothing where a hole touches no cut: its part would not be simple. Without cuts there is one
/// part, number 0.
///
/// Each cut is a pair of half-edges set between the edges where it ends, which joins a hole to its
/// outline or parts a ring in two (Muller and Preparata's doubly connected edge list, 1978, from
/// memory).
[[nodiscard]] std::optional<std::vector<CutPart>> dissect(const Polygon& outline,
                                                          const std::vector<Polygon>& holes,
                                                          const std::vector<Cut>& cuts,
                                                          const std::vector<Cut>& later = {});

}  // namespace strikeoff
