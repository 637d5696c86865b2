// SPDX-License-Identifier: MIT
#include "slab/strips.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>

#include "core/outlines.h"
#include "slab/corners.h"
#include "slab/footprints.h"
#include "slab/heights.h"
#include "slab/splice.h"
#include "slab/stiffness.h"
#include "slab/strip_pieces.h"

namespace strikeoff {
namespace {

// Assumptions, from common practice, no source.
constexpr Length least_rim = Length::mm(12);  // of panel that a screw can bite into
constexpr Length cleat_length = Length::mm(300);
constexpr int bend_layers = 2;

/// All that the strips of one slab are worked out from.
struct Shape {
  const Slab& slab;
  const Forms& forms;
  Polygon outline;  // sharp
  std::vector<Face> faces;
  std::vector<StripEnds> edge_ends, soffit_ends;  // per face, per side
  Heights heights;
  FormSpacing spacing;
  std::vector<Length> edge_heights;  // per side

  [[nodiscard]] Length s() const { return forms.strip_stock.front().thickness; }
  [[nodiscard]] std::size_t before(std::size_t k) const {
    return (k + outline.size() - 1) % outline.size();
  }
  [[nodiscard]] std::size_t after(std::size_t k) const { return (k + 1) % outline.size(); }
};

/// The visible edge of a side where it is highest: the base's hollow, the top's rise and an apron
/// included.
Length concrete_height(const Shape& shape, std::size_t k) {
  const Slab& slab = shape.slab;
  const Point &a = shape.outline[k], &b = shape.outline[shape.after(k)];
  const Length height =
      slab.thickness + shape.heights.most_low(a, b) + shape.heights.most_rise(a, b);
  return slab.sides[k].apron ? height + slab.apron_depth : height;
}

/// As high as the edge, what it hangs below it, and what the base's hollow and the top's rise add
/// along the side.
Length edge_height(const Shape& shape, std::size_t k) {
  const Length below = shape.slab.support == Support::ground     ? Length{}
                       : shape.slab.sides[k].overhang > Length{} ? shape.s()
                                                                 : strip_lap;
  return concrete_height(shape, k) + shape.forms.oversize + below;
}

Shape shape_of(const Slab& slab, const Forms& forms, Density fresh) {
  const Polygon outline = sharp_outline(slab);
  auto faces = form_faces(slab, outline, forms);
  auto edges = edge_ends(slab, faces, forms);
  auto soffits = soffit_ends(slab, outline, forms.corner);
  Shape shape{slab,          forms, outline, std::move(faces), std::move(edges), std::move(soffits),
              Heights(slab), {},    {}};
  shape.spacing = form_spacing(slab, forms, shape.heights, fresh);
  for (std::size_t k = 0; k < outline.size(); ++k) {
    shape.edge_heights.push_back(slab.sides[k].wall ? Length{} : edge_height(shape, k));
  }
  return shape;
}

/// A cut corner's strip is as high as the higher of its neighbours.
Length height_of(const Shape& shape, const Face& face) {
  if (face.kind == Face::Kind::side) return shape.edge_heights[face.index];
  return std::max(shape.edge_heights[shape.before(face.index)], shape.edge_heights[face.index]);
}

std::string corner_name(const Shape& shape, std::size_t corner) {
  return fmt::format("corner {}", shape.slab.sides[corner].corner);
}

std::string name_of(const Shape& shape, const Face& face) {
  if (face.kind == Face::Kind::side) return shape.slab.sides[face.index].name;
  return corner_name(shape, face.index);
}

/// No joint nearer to a corner than `splices_apart`, measured on the slab's face of the strip.
Length least_piece(const StripEnds& ends) {
  return std::max(least_splice,
                  splices_apart + std::max(ends.left.longest(), ends.right.longest()));
}

StripRun edge_strip(const Shape& shape, std::size_t i) {
  const Face& face = shape.faces[i];
  const StripEnds& ends = shape.edge_ends[i];
  StripRun run;
  run.role = "edge strip";
  run.width = height_of(shape, face);
  run.left_cut_deg = ends.left.cut_deg(shape.s());
  run.right_cut_deg = ends.right.cut_deg(shape.s());
  run.place = name_of(shape, face);
  run.reads_from_left = true;
  const Length length =
      edge_length({face.from, face.to}, 0) + ends.left.longest() + ends.right.longest();
  // A step shallower than a strip, or a recess as wide as two, is closed by the strips beside it.
  if (length > Length{}) run.pieces = pieces_of(shape.forms, run.width, length, least_piece(ends));
  return run;
}

/// The corner cuts at both ends of a side that its soffit, sharp by itself, is cut to.
std::string cuts_of_soffit(const Shape& shape, std::size_t k) {
  bool round = false, clip = false;
  for (const Face& face : shape.faces) {
    if (face.kind == Face::Kind::side || (face.index != k && face.index != shape.after(k)))
      continue;
    if (!is_convex_corner(shape.outline, face.index)) continue;
    (face.kind == Face::Kind::bend ? round : clip) = true;
  }
  std::string text = shape.slab.sides[k].apron ? " (lower down, under the apron)" : "";
  if (round) text += " (cut to the rounded corner)";
  if (clip) text += " (cut to the cut-off corner)";
  return text;
}

/// The soffit strip, its joints away from those of the edge strip that is screwed to it, which
/// begins `edge_start` along the side.
StripRun soffit_strip(const Shape& shape, std::size_t k, const StripRun& edge, Length edge_start) {
  const Side& side = shape.slab.sides[k];
  const StripEnds& ends = shape.soffit_ends[k];
  StripRun run;
  run.role = side.overhang > widest_free_soffit ? "soffit panel" : "soffit strip";
  run.letter = 'S';
  run.width = side.overhang;
  run.left_cut_deg = ends.left.cut_deg(run.width);
  run.right_cut_deg = ends.right.cut_deg(run.width);
  run.place = side.name + cuts_of_soffit(shape, k);
  run.reads_from_left = true;
  const Length left = ends.left.longest();
  const Length length = edge_length(shape.outline, k) + left + ends.right.longest();
  const auto longest = longest_piece(shape.forms, run.width);
  if (!longest || length <= *longest) {
    run.pieces = {length};
  } else {
    run.pieces = split_apart(length, {*longest, {}, least_piece(ends)},
                             {-left, splices_apart, joints(edge.pieces, edge_start, {})});
  }
  return run;
}

void add_stakes(const Shape& shape, Length strip, FormQuantities& quantities) {
  if (shape.slab.support == Support::base) return;
  quantities.stakes += count_along(strip, shape.spacing.stakes);
}

/// Posts from the floor to under the outer edge of a soffit panel: how long is found on site.
Part props_under(const Shape& shape, const Side& side, Length soffit) {
  Part part;
  part.role = "prop";
  part.quantity = count_along(soffit, shape.spacing.props);
  part.place = side.name;
  return part;
}

const CornerCut& cut_at(const Slab& slab, std::size_t corner) {
  return *std::find_if(slab.corner_cuts.begin(), slab.corner_cuts.end(),
                       [&](const CornerCut& cut) { return cut.corner == corner; });
}

Length arc_length(const Shape& shape, const CornerCut& cut) {
  return cut.size * std::abs(turn_at(shape.outline, cut.corner).radians);
}

/// Form faces the mix touches: the inside of the edge strips, the soffits beyond the panel's
/// rim, and the knock-outs above the panel.
Area formed_area(const Shape& shape, const SlabPlan& plan) {
  const Slab& slab = shape.slab;
  Area sum;
  for (const Face& face : shape.faces) {
    if (face.wall) continue;
    const Length along = is_straight(face) ? edge_length({face.from, face.to}, 0)
                                           : arc_length(shape, cut_at(slab, face.index));
    const bool apron = face.kind == Face::Kind::side && slab.sides[face.index].apron;
    sum += along * (apron ? slab.thickness + slab.apron_depth : slab.thickness);
  }
  for (const CornerCut& cut : filled_corners(slab, shape.outline, shape.forms)) {
    sum += (arc_length(shape, cut) - set_back(shape.outline, cut) * 2) * slab.thickness;
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

void add_ledger(Length length, FormQuantities& quantities) {
  quantities.ledger += length;
  quantities.ledger_pieces.push_back(length);
}

/// The soft strip between the slab and a wall, as high as the slab is there at most; cut from a
/// roll, so of no stock.
Part isolation_strip(const Shape& shape, const Face& face) {
  Part part;
  part.role = "isolation strip";
  part.width = concrete_height(shape, face.index);
  part.length = edge_length({face.from, face.to}, 0);
  part.place = name_of(shape, face);
  return part;
}

/// Stands for the strip of a recess too narrow for it: an edge strip without a stock, which the
/// cut list names as unplaced.
Part strip_without_room(const Face& face, const StripRun& edge) {
  Part part;
  part.role = edge.role;
  part.width = edge.width;
  part.length = edge_length({face.from, face.to}, 0);
  part.place = edge.place + " (a recess too narrow for its strips)";
  return part;
}

/// The layers of a bent corner, each as long as the middle of its thickness.
void add_bend(const Shape& shape, const Face& face, std::vector<Part>& parts) {
  const Stock& sheet = *shape.forms.bend_stock;
  const double turn = turn_at(shape.outline, face.index).radians;
  const CornerCut& cut = cut_at(shape.slab, face.index);
  for (int layer = 1; layer <= bend_layers; ++layer) {
    const Length middle = sheet.thickness * (layer - 0.5);
    Part part;
    part.role = "edge strip";
    part.stock = sheet.id;
    part.width = height_of(shape, face);
    part.length = (turn > 0 ? cut.size + middle : cut.size - middle) * std::abs(turn);
    part.place = fmt::format("{} (bent, layer {} from the concrete)", name_of(shape, face), layer);
    parts.push_back(std::move(part));
  }
}

/// A block as far as the corner's set-back both ways.
Part corner_block(const Shape& shape, std::size_t corner, Length height, const char* what) {
  Part part;
  part.role = "knock-out block";
  part.length = part.width = set_back(shape.outline, cut_at(shape.slab, corner));
  part.height = height;
  part.place = corner_name(shape, corner) + what;
  return part;
}

/// Under what a cut adds to the slab at a re-entrant corner: the triangle between its chord and the
/// sharp corner, by its longest side and height.
void add_corner_soffit(const Shape& shape, const Face& face, std::vector<Part>& parts) {
  const std::size_t k = face.index;
  const Length widest =
      std::max(shape.slab.sides[shape.before(k)].overhang, shape.slab.sides[k].overhang);
  if (shape.slab.support == Support::ground || widest <= Length{}) return;
  const double half = turn_at(shape.outline, k).radians / 2;
  const Length back = set_back(shape.outline, cut_at(shape.slab, k));
  Part part;
  part.role = "soffit strip";
  part.stock = shape.forms.strip_stock.front().id;
  part.length = back * 2 * std::cos(half);
  part.width = back * std::abs(std::sin(half));
  part.place = corner_name(shape, k) + " (a triangle under the inner corner)";
  parts.push_back(std::move(part));
}

/// Everything one slab's form is made of, before it is grouped.
struct Pieces {
  std::vector<StripRun> soffits, edges, knock_outs, corner_cleats;
  std::vector<Part> edge_parts, blocks, isolation, props;
  std::vector<std::pair<Length, StripRun>> edge_of_side;  // where each begins along its side
};

/// The foam inside an apron, and what closes the apron's ends where a plain side comes next: a
/// piece from the base's corner to the outline's, as high as the apron and the soffit it stands on.
void add_apron(const Shape& shape, std::size_t k, Pieces& pieces, FormQuantities& quantities) {
  const Slab& slab = shape.slab;
  Part foam;
  foam.role = "knock-out block";
  foam.length = edge_length(slab.base, k);
  foam.width = shape.s();
  foam.height = slab.apron_depth;
  foam.place = slab.sides[k].name + " (foam against the base, behind the apron)";
  quantities.foam += foam.length * slab.apron_depth;
  pieces.blocks.push_back(std::move(foam));
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
                     : edge_length({slab.base[corner], shape.outline[corner]}, 0);
    end.place = fmt::format("{} (closes the {} end of the apron)", slab.sides[k].name,
                            right ? "right" : "left");
    pieces.edge_parts.push_back(std::move(end));
  }
}

StripRun cleat_for(Length width, const std::string& place) {
  StripRun cleat;
  cleat.role = "cleat";
  cleat.letter = 'C';
  cleat.width = width;
  cleat.pieces = {cleat_length};
  cleat.place = place;
  return cleat;
}

void add_rounded(const Shape& shape, const Face& face, Pieces& pieces, FormQuantities& quantities) {
  const Length height = height_of(shape, face);
  const Length arc = arc_length(shape, cut_at(shape.slab, face.index));
  if (face.kind == Face::Kind::bend) {
    add_bend(shape, face, pieces.edge_parts);
    quantities.edge += arc;
    add_stakes(shape, arc, quantities);
    for (int end = 0; end < 2; ++end) {
      pieces.corner_cleats.push_back(cleat_for(height, name_of(shape, face)));
    }
  } else {
    pieces.blocks.push_back(
        corner_block(shape, face.index, height, " (cut to the arc, between the strips)"));
  }
}

void add_faces(const Shape& shape, Pieces& pieces, FormQuantities& quantities) {
  const auto crowded = faces_without_room(shape.faces, shape.edge_ends, shape.s());
  pieces.edge_of_side.resize(shape.outline.size());
  for (std::size_t i = 0; i < shape.faces.size(); ++i) {
    const Face& face = shape.faces[i];
    if (face.wall) {
      pieces.isolation.push_back(isolation_strip(shape, face));
      quantities.isolation += pieces.isolation.back().length;
      continue;
    }
    if (face.kind != Face::Kind::side && !is_convex_corner(shape.outline, face.index)) {
      add_corner_soffit(shape, face, pieces.edge_parts);
    }
    if (!is_straight(face)) {
      add_rounded(shape, face, pieces, quantities);
      continue;
    }
    StripRun edge = edge_strip(shape, i);
    if (std::binary_search(crowded.begin(), crowded.end(), i)) {
      edge.pieces.clear();
      pieces.edge_parts.push_back(strip_without_room(face, edge));
    }
    quantities.edge += total(edge);
    add_stakes(shape, total(edge), quantities);
    if (face.kind == Face::Kind::side) {
      const Length start = edge_length({shape.outline[face.index], face.from}, 0);
      pieces.edge_of_side[face.index] = {start - shape.edge_ends[i].left.longest(), edge};
    }
    pieces.edges.push_back(std::move(edge));
  }
  for (const CornerCut& cut : filled_corners(shape.slab, shape.outline, shape.forms)) {
    const Length height = std::max(concrete_height(shape, shape.before(cut.corner)),
                                   concrete_height(shape, cut.corner));
    pieces.blocks.push_back(
        corner_block(shape, cut.corner, height, " (filler for the rounded corner)"));
  }
}

void add_soffits(const Shape& shape, Pieces& pieces, FormQuantities& quantities) {
  const Slab& slab = shape.slab;
  if (slab.support == Support::ground) return;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side& side = slab.sides[k];
    if (side.wall || side.overhang <= Length{}) continue;
    const auto& [start, edge] = pieces.edge_of_side[k];
    pieces.soffits.push_back(soffit_strip(shape, k, edge, start));
    const Length length = total(pieces.soffits.back());
    quantities.soffit += length;
    if (!slab.panel || side.panel_overhang < least_rim) add_ledger(length, quantities);
    if (side.apron) add_apron(shape, k, pieces, quantities);
    if (side.overhang > widest_free_soffit) {
      pieces.props.push_back(props_under(shape, side, length));
      quantities.props += pieces.props.back().quantity;
    }
  }
}

std::vector<Part> grouped(const Shape& shape, Pieces pieces, FormQuantities& quantities,
                          MarkCounter& marks) {
  PartList parts(shape.slab.name, shape.forms.strip_stock.front().id, marks);
  for (const StripRun& run : pieces.soffits) parts.add(run);
  for (const StripRun& run : pieces.edges) parts.add(run);
  for (Part& part : pieces.edge_parts) {
    const char letter = part.role == "edge strip" ? 'E' : 'S';
    parts.add(std::move(part), letter);
  }
  for (Part& part : pieces.blocks) parts.add(std::move(part), 'K');
  for (const StripRun& run : pieces.knock_outs) parts.add(run);
  for (const auto* runs : {&pieces.soffits, &pieces.edges, &pieces.knock_outs}) {
    for (const StripRun& run : *runs) {
      for (std::size_t joint = 1; joint < run.pieces.size(); ++joint) {
        parts.add(cleat_for(run.width, run.place));
        ++quantities.splices;
      }
    }
  }
  for (const StripRun& run : pieces.corner_cleats) parts.add(run);
  for (Part& part : pieces.isolation) parts.add(std::move(part), 'I');
  for (Part& part : pieces.props) parts.add(std::move(part), 'R');
  return parts.take();
}

}  // namespace

FormWork form_work(const Slab& slab, const SlabPlan& shape, const Forms& forms, Density fresh,
                   MarkCounter& marks) {
  FormWork work;
  const Shape form = shape_of(slab, forms, fresh);
  work.quantities.screw_spacing = form.spacing.screws;
  work.quantities.stakes_apart = form.spacing.stakes;
  work.quantities.props_apart = form.spacing.props;
  work.quantities.brackets = bracket_count(slab);
  Pieces pieces;
  add_faces(form, pieces, work.quantities);
  add_soffits(form, pieces, work.quantities);
  KnockOuts openings = knock_outs(slab, shape, forms);
  for (const Length length : openings.ledgers) add_ledger(length, work.quantities);
  for (const StripRun& run : openings.strips) work.quantities.knock_out += total(run);
  pieces.knock_outs = std::move(openings.strips);
  pieces.blocks.insert(pieces.blocks.end(), openings.blocks.begin(), openings.blocks.end());
  work.parts = grouped(form, std::move(pieces), work.quantities, marks);
  work.quantities.formed = formed_area(form, shape);
  return work;
}

}  // namespace strikeoff
