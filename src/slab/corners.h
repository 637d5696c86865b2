// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// How far one end of a strip runs past the end of the stretch of the slab's edge that it follows
/// (negative: it stops short), on the face towards the slab and on the one away from it.
struct StripEnd {
  Length inner, outer;
  bool scribed = false;  // the saw cannot cut it to the wall: that is done by hand
  /// To the long point: what a tape hooked over the strip's end shows.
  [[nodiscard]] Length longest() const { return std::max(inner, outer); }
  /// The saw's reading from square, positive when the outer face is longer, for a strip this far
  /// from face to face. A reading under 2 degrees is 0: it counts as square.
  [[nodiscard]] double cut_deg(Length across) const;
};

/// Left is as seen from outside, which is where an anticlockwise side begins.
struct StripEnds {
  StripEnd left, right;
};

/// A stretch of the slab's edge that one strip forms.
struct Face {
  enum class Kind {
    side,   // of the outline
    clip,   // a corner cut off straight
    bend,   // a rounded corner of bendable strip
    block,  // a rounded re-entrant corner too tight to bend: a block cut to the arc
  };
  Point from, to;
  Kind kind = Kind::side;
  std::size_t index = 0;  // of the side, or of the corner that is cut
  bool wall = false;      // meets a wall: no strip
};

[[nodiscard]] bool is_straight(const Face& face);

/// True when a corner's turn is within 2 degrees of a right angle either way.
[[nodiscard]] bool is_square_corner(const Polygon& outline, std::size_t corner);

/// Of thin sheet; an assumption, from common practice, no source.
inline constexpr int layers_of_a_bend = 2;

/// True when a rounded corner can be bent from the form's bend stock in two layers: at a convex
/// corner the layer at the concrete bends to the radius itself, at a re-entrant one the outermost
/// to the radius less both thicknesses.
[[nodiscard]] bool can_bend(const Polygon& outline, const CornerCut& cut, const Forms& forms);

/// The faces round the outline, anticlockwise, side k after the cut of corner k. A convex corner
/// rounded too tightly to bend stays sharp: see `filled_corners`.
[[nodiscard]] std::vector<Face> form_faces(const Slab& slab, const Polygon& outline,
                                           const Forms& forms);

/// The cuts that a filler block in the sharp form's corner makes.
[[nodiscard]] std::vector<CornerCut> filled_corners(const Slab& slab, const Polygon& outline,
                                                    const Forms& forms);

/// Ends of the edge strips, one entry per face; those of walls and rounded corners mean nothing.
/// At a square corner by the style; at any other mitred; at a wall along the wall's line, or
/// square where that is within 30 degrees of the strip's own; square at a rounded corner.
[[nodiscard]] std::vector<StripEnds> edge_ends(const Slab& slab, const std::vector<Face>& faces,
                                               const Forms& forms);

/// Ends of the soffit strips, one entry per side of the sharp outline, past the outline's corners.
/// Square corners follow the style (`mitre`: as `through`, they always butt); a side with an apron
/// passes one without. At any other corner the cut runs from the base's corner to the outline's.
/// Where that would leave a side no soffit, as at a step shorter than the overhang, the slab's
/// soffits go pinwheel, and where even that does, all are cut from corner to corner, which always
/// fills the overhang.
[[nodiscard]] std::vector<StripEnds> soffit_ends(const Slab& slab, const Polygon& outline,
                                                 CornerStyle style);

}  // namespace strikeoff
