// SPDX-License-Identifier: MIT
#include "slab/form_shape.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/outlines.h"
#include "core/vec.h"
#include "slab/strip_pieces.h"

namespace strikeoff {
namespace {

/// As high as the edge, what it hangs below it, and what the base's hollow and the top's rise add
/// along the side.
Length edge_height(const FormShape& shape, std::size_t k) {
  return concrete_height(shape, k) + shape.forms.oversize +
         strip_grip(shape.slab, shape.slab.sides[k], shape.s());
}

/// How low and rise change the area of an upright face along a stretch of the slab's edge.
Area change_along(const FormShape& shape, const OutlineEdge& stretch, const Point& to) {
  if (shape.heights.are_none()) return {};
  const Polygon line = chords({stretch, {to, 0}}, drawn_within);
  Area sum;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    sum += shape.heights.both.along(line[i], line[i + 1]);
  }
  return sum;
}

/// The inside of one face's strip, or of the block instead of one.
Area formed_by(const FormShape& shape, const Face& face) {
  const Slab& slab = shape.slab;
  const bool straight = is_straight(face);
  const Length along =
      straight ? distance(face.from, face.to) : arc_length(shape, cut_at(slab, face.index));
  const double sweep = straight ? 0 : turn_at(shape.outline, face.index).radians;
  const bool apron = slab.sides[face.index].apron &&
                     (face.kind == Face::Kind::side || slab.sides[shape.before(face.index)].apron);
  return along * (apron ? slab.thickness + slab.apron_depth : slab.thickness) +
         change_along(shape, {face.from, sweep}, face.to);
}

/// What a filler adds: its arc for the sharp corner.
Area formed_more_by(const FormShape& shape, const CornerCut& filler) {
  const std::size_t k = filler.corner;
  const Point &corner = shape.outline[k], &last = shape.outline[shape.before(k)];
  const Length back = set_back(shape.outline, filler);
  const Point from = towards(corner, last, back);
  const Point to = towards(corner, shape.outline[shape.after(k)], back);
  const Slab& slab = shape.slab;
  const auto height = [&](const Side& side) {
    return side.apron ? slab.thickness + slab.apron_depth : slab.thickness;
  };
  const Length before = height(slab.sides[shape.before(k)]), after = height(slab.sides[k]);
  return arc_length(shape, filler) * std::min(before, after) - back * (before + after) +
         change_along(shape, {from, turn_at(shape.outline, k).radians}, to) -
         change_along(shape, {from, 0}, corner) - change_along(shape, {corner, 0}, to);
}

}  // namespace

FormShape form_shape(const Slab& slab, const Forms& forms, Density fresh) {
  const Polygon outline = sharp_outline(slab);
  auto faces = form_faces(slab, outline, forms);
  auto edges = edge_ends(slab, faces, forms);
  auto soffits = soffit_ends(slab, outline, forms.corner);
  FormShape shape{slab,
                  forms,
                  outline,
                  inside_aprons(slab, forms.strip_stock.front().thickness),
                  std::move(faces),
                  std::move(edges),
                  std::move(soffits),
                  Heights(slab),
                  {},
                  {}};
  shape.spacing = form_spacing(slab, forms, shape.heights, fresh);
  for (std::size_t k = 0; k < outline.size(); ++k) {
    shape.edge_heights.push_back(slab.sides[k].wall ? Length{} : edge_height(shape, k));
  }
  return shape;
}

Length concrete_height(const FormShape& shape, std::size_t k) {
  const Slab& slab = shape.slab;
  const Point &a = shape.outline[k], &b = shape.outline[shape.after(k)];
  const Length height =
      slab.thickness + shape.heights.low.most(a, b) + shape.heights.rise.most(a, b);
  return slab.sides[k].apron ? height + slab.apron_depth : height;
}

Length height_of(const FormShape& shape, const Face& face) {
  if (face.kind == Face::Kind::side) return shape.edge_heights[face.index];
  return std::max(shape.edge_heights[shape.before(face.index)], shape.edge_heights[face.index]);
}

std::string corner_name(const FormShape& shape, std::size_t corner) {
  return fmt::format("corner {}", shape.slab.sides[corner].corner);
}

std::string name_of(const FormShape& shape, const Face& face) {
  if (face.kind == Face::Kind::side) return shape.slab.sides[face.index].name;
  return corner_name(shape, face.index);
}

const CornerCut& cut_at(const Slab& slab, std::size_t corner) {
  return *std::find_if(slab.corner_cuts.begin(), slab.corner_cuts.end(),
                       [&](const CornerCut& cut) { return cut.corner == corner; });
}

Length arc_length(const FormShape& shape, const CornerCut& cut) {
  return cut.size * std::abs(turn_at(shape.outline, cut.corner).radians);
}

Area formed_area(const FormShape& shape, const SlabPlan& plan) {
  const Slab& slab = shape.slab;
  Area sum;
  for (const Face& face : shape.faces) {
    if (!face.wall) sum += formed_by(shape, face);
  }
  for (const CornerCut& filler : filled_corners(slab, shape.outline, shape.forms)) {
    sum += formed_more_by(shape, filler);
  }
  if (slab.support == Support::base) {
    std::vector<Length> covered;
    for (const Side& side : slab.sides) {
      covered.push_back(slab.panel ? std::max(side.panel_overhang, Length{}) : Length{});
    }
    sum += plan.area - signed_area(offset_edges(slab.base, covered));
  }
  for (const OpeningPlan& opening : plan.openings) {
    sum += perimeter(opening.edge) * plan.least_thickness;
  }
  return sum;
}

}  // namespace strikeoff
