// SPDX-License-Identifier: MIT
#include "slab/corners.h"

#include <cstddef>
#include <numbers>

namespace strikeoff {
namespace {

/// True when the side that ends at this corner passes, and the one that begins there butts.
bool arriving_passes(const Slab& slab, const Polygon& outline, std::size_t corner,
                     CornerStyle style) {
  if (style == CornerStyle::pinwheel) return true;
  const std::size_t before = (corner + outline.size() - 1) % outline.size();
  const Length arriving = edge_length(outline, before), leaving = edge_length(outline, corner);
  if (arriving != leaving) return arriving > leaving;
  return slab.sides[before].number < slab.sides[corner].number;
}

void end_edges(const Slab& slab, const Polygon& outline, CornerStyle style, Length s,
               std::vector<SideEnds>& ends) {
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const std::size_t before = (k + outline.size() - 1) % outline.size();
    if (slab.sides[before].wall || slab.sides[k].wall) continue;
    SideEnds &arriving = ends[before], &leaving = ends[k];
    const Turn turn = turn_at(outline, k);
    const bool convex = turn.tan_half > 0;
    if (style == CornerStyle::mitre) {
      // To the long point: outside at a convex corner, on the outline at a re-entrant one.
      const Length more = convex ? s * turn.tan_half : Length{};
      arriving.edge_right = leaving.edge_left = more;
      arriving.right_cut_deg = leaving.left_cut_deg = turn.radians / 2 * 180 / std::numbers::pi;
      continue;
    }
    const bool first = arriving_passes(slab, outline, k, style);
    Length& passing = first ? arriving.edge_right : leaving.edge_left;
    Length& butting = first ? leaving.edge_left : arriving.edge_right;
    passing = convex ? s : Length{};
    butting = convex ? Length{} : -s;
  }
}

/// Returns false when a side would be left without a soffit.
bool end_soffits(const Slab& slab, const Polygon& outline, CornerStyle style,
                 std::vector<SideEnds>& ends) {
  const std::size_t n = outline.size();
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t before = (k + n - 1) % n;
    const bool convex = is_convex_corner(outline, k);
    const bool first = arriving_passes(slab, outline, k, style);
    // A wall or a side without overhang takes nothing from its neighbour's soffit.
    const Length o_before = slab.sides[before].overhang, o_after = slab.sides[k].overhang;
    if (convex) {
      ends[before].soffit_right = first ? Length{} : -o_after;
      ends[k].soffit_left = first ? -o_before : Length{};
    } else {
      ends[before].soffit_right = first ? o_after : Length{};
      ends[k].soffit_left = first ? Length{} : o_before;
    }
  }
  for (std::size_t k = 0; k < n; ++k) {
    const Length left = edge_length(outline, k) + ends[k].soffit_left + ends[k].soffit_right;
    if (slab.sides[k].overhang > Length{} && left <= Length{}) return false;
  }
  return true;
}

}  // namespace

std::vector<SideEnds> strip_ends(const Slab& slab, const Polygon& outline, CornerStyle style,
                                 Length strip_thickness) {
  std::vector<SideEnds> ends(outline.size());
  end_edges(slab, outline, style, strip_thickness, ends);
  if (!end_soffits(slab, outline, style, ends)) {
    end_soffits(slab, outline, CornerStyle::pinwheel, ends);
  }
  return ends;
}

}  // namespace strikeoff
