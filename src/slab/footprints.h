// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "slab/corners.h"

namespace strikeoff {

/// The strip along the line from `from` to `to`, seen from above, anticlockwise: its inner face
/// `inner` and its outer face `outer` to the right of the line.
[[nodiscard]] Polygon footprint(const Point& from, const Point& to, const StripEnds& ends,
                                Length inner, Length outer);

/// What each side's soffit covers, in the base frame; empty where there is none.
[[nodiscard]] std::vector<Polygon> soffit_footprints(const Slab& slab, const Polygon& outline,
                                                     const std::vector<StripEnds>& ends);

/// What each face's straight edge strip covers; empty at walls, at rounded corners and where the
/// strips beside it close the face.
[[nodiscard]] std::vector<Polygon> edge_footprints(const std::vector<Face>& faces,
                                                   const std::vector<StripEnds>& ends,
                                                   Length thickness);

/// The faces whose strip has no room: its outer face would turn round between its neighbours, or
/// it overlaps a wall or, as the shorter of the two, a strip farther along the edge. In rising
/// order.
[[nodiscard]] std::vector<std::size_t> faces_without_room(const std::vector<Face>& faces,
                                                          const std::vector<StripEnds>& ends,
                                                          Length thickness);

}  // namespace strikeoff
