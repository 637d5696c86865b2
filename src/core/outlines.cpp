// SPDX-License-Identifier: MIT
#include "core/outlines.h"

namespace strikeoff {
namespace {

Polygon moved_out(const Slab& slab, Length Side::*overhang) {
  std::vector<Length> outward;
  for (const Side& side : slab.sides) outward.push_back(side.*overhang);
  return offset_edges(slab.base, outward);
}

}  // namespace

Polygon slab_outline(const Slab& slab) {
  return moved_out(slab, &Side::overhang);
}

Polygon panel_outline(const Slab& slab) {
  return moved_out(slab, &Side::panel_overhang);
}

}  // namespace strikeoff
