// SPDX-License-Identifier: MIT
#include "slab/corner_parts.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/vec.h"

namespace strikeoff {

std::vector<Part> bend_layers(const FormShape& shape, const Face& face) {
  std::vector<Part> parts;
  const Stock& sheet = *shape.forms.bend_stock;
  const double turn = turn_at(shape.outline, face.index).radians;
  const CornerCut& cut = cut_at(shape.slab, face.index);
  for (int layer = 1; layer <= layers_of_a_bend; ++layer) {
    const Length middle = sheet.thickness * (layer - 0.5);
    Part part;
    part.role = "edge strip";
    part.stock = sheet.id;
    part.width = height_of(shape, face);
    part.length = (turn > 0 ? cut.size + middle : cut.size - middle) * std::abs(turn);
    part.place = fmt::format("{} (bent, layer {} from the concrete)", name_of(shape, face), layer);
    parts.push_back(std::move(part));
  }
  return parts;
}

Part corner_block(const FormShape& shape, std::size_t corner, Length height, const char* what) {
  Part part;
  part.role = "knock-out block";
  part.length = part.width = set_back(shape.outline, cut_at(shape.slab, corner));
  part.height = height;
  part.place = corner_name(shape, corner) + what;
  return part;
}

std::optional<Part> corner_soffit(const FormShape& shape, const Face& face) {
  const std::size_t k = face.index;
  const Length widest =
      std::max(shape.slab.sides[shape.before(k)].overhang, shape.slab.sides[k].overhang);
  if (shape.slab.support == Support::ground || widest <= Length{}) return std::nullopt;
  const double half = turn_at(shape.outline, k).radians / 2;
  const Length back = set_back(shape.outline, cut_at(shape.slab, k));
  Part part;
  part.role = "soffit strip";
  part.stock = shape.forms.strip_stock.front().id;
  part.length = back * 2 * std::cos(half);
  part.width = back * std::abs(std::sin(half));
  part.place = corner_name(shape, k) + " (a triangle under the inner corner)";
  return part;
}

ApronParts apron_parts(const FormShape& shape, std::size_t k) {
  ApronParts parts;
  const Slab& slab = shape.slab;
  Part& foam = parts.foam;
  foam.role = "knock-out block";
  foam.length = edge_length(shape.inside, k);
  foam.width = shape.s();
  foam.height = slab.apron_depth;
  foam.place = slab.sides[k].name + " (foam against the base, behind the apron)";
  parts.inner_face = parts.formed = foam.length * slab.apron_depth;
  for (const bool right : {false, true}) {
    const std::size_t corner = right ? shape.after(k) : k;
    const Side& next = slab.sides[right ? corner : shape.before(k)];
    if (next.apron || next.wall) continue;
    Part end;
    end.role = "edge strip";
    end.stock = shape.forms.strip_stock.front().id;
    end.width = slab.apron_depth + shape.s();
    end.length = is_square_corner(shape.outline, corner)
                     ? slab.sides[k].overhang
                     : distance(slab.base[corner], shape.outline[corner]);
    end.place = fmt::format("{} (closes the {} end of the apron)", slab.sides[k].name,
                            right ? "right" : "left");
    const Length overhang = slab.sides[k].overhang;
    // The foam's end stands before the rest of it.
    parts.formed += end.length * ((overhang - shape.s()) / overhang) * slab.apron_depth;
    parts.ends.push_back(std::move(end));
  }
  return parts;
}

}  // namespace strikeoff
