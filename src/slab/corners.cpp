// SPDX-License-Identifier: MIT
#include "slab/corners.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/outlines.h"
#include "core/vec.h"

namespace strikeoff {
namespace {

constexpr double degree = std::numbers::pi / 180;
// A saw is hardly set closer (assumption).
constexpr double counts_as_square = 2 * degree;
// A saw is hardly set farther from square than 60 degrees (assumption).
constexpr double runs_along = std::numbers::sqrt3;  // cotangent of the 30 degrees left
constexpr Length least_face = Length::mm(0.01);  // what cuts leave of a side by rounding is nothing

/// True when the side that ends at this corner passes, and the one that begins there butts.
bool arriving_passes(const Slab& slab, const Polygon& outline, std::size_t corner,
                     CornerStyle style) {
  if (style == CornerStyle::pinwheel) return true;
  const std::size_t before = (corner + outline.size() - 1) % outline.size();
  const Length arriving = edge_length(outline, before), leaving = edge_length(outline, corner);
  if (arriving != leaving) return arriving > leaving;
  return slab.sides[before].number < slab.sides[corner].number;
}

Turn turn_between(const Face& before, const Face& after) {
  return turn_at({before.from, before.to, after.to}, 1);
}

/// Along a wall's line: at depth d beyond the edge it lies d cot(turn) short of the corner. A wall
/// that goes on in the strip's own line ends it square. So does one that hardly leaves that line,
/// where the point would grow without bound: with its inner face at the corner the strip keeps the
/// mix in, and what the wall leaves no room for is scribed off.
StripEnd end_at_wall(const Turn& turn, Length s) {
  if (std::abs(turn.radians) < counts_as_square) return {};
  const double half = turn.tan_half, cotangent = (1 - half * half) / (2 * half);
  if (std::abs(cotangent) > runs_along) return {{}, {}, cotangent > 0};
  return {Length{}, -(s * cotangent)};
}

/// Half the turn each; below what counts as square the strips just meet.
StripEnd mitred_end(const Turn& turn, Length s) {
  if (std::abs(turn.radians / 2) < counts_as_square) return {};
  return {Length{}, s * turn.tan_half};
}

StripEnd both(Length more) {
  return {more, more};
}

void end_butted(const Turn& turn, bool first_passes, Length s, StripEnd& arriving,
                StripEnd& leaving) {
  const bool convex = turn.tan_half > 0;
  StripEnd& passing = first_passes ? arriving : leaving;
  StripEnd& butting = first_passes ? leaving : arriving;
  passing = both(convex ? s : Length{});
  butting = both(convex ? Length{} : -s);
}

/// How soffits meet at a square corner; nothing: cut from corner to corner.
using SquareCorners = std::optional<CornerStyle>;

/// The side with an apron passes one without, whose soffit lies higher.
bool soffit_arrives_passing(const Slab& slab, const Polygon& outline, std::size_t k,
                            CornerStyle style) {
  const std::size_t before = (k + outline.size() - 1) % outline.size();
  if (slab.sides[before].apron != slab.sides[k].apron) return slab.sides[before].apron;
  return arriving_passes(slab, outline, k, style);
}

/// How far the base's corner lies behind the outline's along the side from a to b.
Length behind(const Point& base, const Point& corner, const Point& a, const Point& b) {
  const Length whole = distance(a, b);
  return (corner.x - base.x) * ((b.x - a.x) / whole) + (corner.y - base.y) * ((b.y - a.y) / whole);
}

std::vector<StripEnds> soffits_with(const Slab& slab, const Polygon& outline,
                                    SquareCorners square) {
  const std::size_t n = outline.size();
  std::vector<StripEnds> ends(n);
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t before = (k + n - 1) % n;
    StripEnd &arriving = ends[before].right, &leaving = ends[k].left;
    if (!square || !is_square_corner(outline, k)) {
      arriving.inner = -behind(slab.base[k], outline[k], outline[before], outline[k]);
      leaving.inner = behind(slab.base[k], outline[k], outline[k], outline[(k + 1) % n]);
      continue;
    }
    const bool first = soffit_arrives_passing(slab, outline, k, *square);
    // A wall or a side without overhang takes nothing from its neighbour's soffit.
    const Length o_before = slab.sides[before].overhang, o_after = slab.sides[k].overhang;
    if (is_convex_corner(outline, k)) {
      arriving = both(first ? Length{} : -o_after);
      leaving = both(first ? -o_before : Length{});
    } else {
      arriving = both(first ? o_after : Length{});
      leaving = both(first ? Length{} : o_before);
    }
  }
  return ends;
}

/// False when a side would be left a soffit with a face of no length.
bool fit(const Slab& slab, const Polygon& outline, const std::vector<StripEnds>& ends) {
  for (std::size_t k = 0; k < outline.size(); ++k) {
    if (slab.sides[k].overhang <= Length{}) continue;
    const Length side = edge_length(outline, k);
    const StripEnds& e = ends[k];
    if (side + e.left.inner + e.right.inner <= Length{}) return false;
    if (side + e.left.outer + e.right.outer <= Length{}) return false;
  }
  return true;
}

/// What becomes of a cut corner's form; nothing where the form stays sharp.
std::optional<Face::Kind> kind_of(const Polygon& outline, const CornerCut& cut,
                                  const Forms& forms) {
  if (!cut.round) return Face::Kind::clip;
  if (can_bend(outline, cut, forms)) return Face::Kind::bend;
  if (!is_convex_corner(outline, cut.corner)) return Face::Kind::block;
  return std::nullopt;
}

}  // namespace

double StripEnd::cut_deg(Length across) const {
  const double radians = std::atan((outer - inner) / across);
  return std::abs(radians) < counts_as_square ? 0 : radians / degree;
}

bool is_straight(const Face& face) {
  return face.kind == Face::Kind::side || face.kind == Face::Kind::clip;
}

bool is_square_corner(const Polygon& outline, std::size_t corner) {
  const double turn = std::abs(turn_at(outline, corner).radians);
  return std::abs(turn - std::numbers::pi / 2) <= counts_as_square;
}

bool can_bend(const Polygon& outline, const CornerCut& cut, const Forms& forms) {
  if (!cut.round || !forms.bend_stock || !forms.bend_stock->bends_to) return false;
  const bool convex = is_convex_corner(outline, cut.corner);
  const Length tightest =
      convex ? cut.size : cut.size - forms.bend_stock->thickness * layers_of_a_bend;
  return tightest >= *forms.bend_stock->bends_to;
}

std::vector<Face> form_faces(const Slab& slab, const Polygon& outline, const Forms& forms) {
  const std::size_t n = outline.size();
  std::vector<Length> back(n);
  std::vector<std::optional<Face::Kind>> cut_as(n);
  for (const CornerCut& cut : slab.corner_cuts) {
    cut_as[cut.corner] = kind_of(outline, cut, forms);
    if (cut_as[cut.corner]) back[cut.corner] = set_back(outline, cut);
  }
  std::vector<Face> faces;
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t before = (k + n - 1) % n, after = (k + 1) % n;
    const Point begin = towards(outline[k], outline[after], back[k]);
    const Point end = towards(outline[after], outline[k], back[after]);
    if (cut_as[k]) {
      const bool walls = slab.sides[before].wall && slab.sides[k].wall;
      faces.push_back({towards(outline[k], outline[before], back[k]), begin, *cut_as[k], k, walls});
    }
    if (edge_length(outline, k) - back[k] - back[after] < least_face) continue;
    faces.push_back({begin, end, Face::Kind::side, k, slab.sides[k].wall});
  }
  return faces;
}

std::vector<CornerCut> filled_corners(const Slab& slab, const Polygon& outline,
                                      const Forms& forms) {
  std::vector<CornerCut> filled;
  for (const CornerCut& cut : slab.corner_cuts) {
    if (!kind_of(outline, cut, forms)) filled.push_back(cut);
  }
  return filled;
}

std::vector<StripEnds> edge_ends(const Slab& slab, const std::vector<Face>& faces,
                                 const Forms& forms) {
  const Length s = forms.strip_stock.front().thickness;
  const Polygon outline = sharp_outline(slab);
  std::vector<StripEnds> ends(faces.size());
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const std::size_t j = (i + faces.size() - 1) % faces.size();
    const Face &before = faces[j], &after = faces[i];
    if (!is_straight(before) || !is_straight(after)) continue;
    StripEnd &arriving = ends[j].right, &leaving = ends[i].left;
    const Turn turn = turn_between(before, after);
    if (before.wall || after.wall) {
      arriving = leaving = end_at_wall(turn, s);
    } else if (before.kind == Face::Kind::clip || after.kind == Face::Kind::clip ||
               forms.corner == CornerStyle::mitre || !is_square_corner(outline, after.index)) {
      arriving = leaving = mitred_end(turn, s);
    } else {
      end_butted(turn, arriving_passes(slab, outline, after.index, forms.corner), s, arriving,
                 leaving);
    }
  }
  return ends;
}

std::vector<StripEnds> soffit_ends(const Slab& slab, const Polygon& outline, CornerStyle style) {
  for (const SquareCorners square : {SquareCorners{style}, {CornerStyle::pinwheel}}) {
    auto ends = soffits_with(slab, outline, square);
    if (fit(slab, outline, ends)) return ends;
  }
  return soffits_with(slab, outline, std::nullopt);
}

}  // namespace strikeoff
