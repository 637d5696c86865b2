// SPDX-License-Identifier: MIT
#include "slab/strips.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstddef>
#include <string>

#include "core/vec.h"
#include "slab/corner_parts.h"
#include "slab/footprints.h"
#include "slab/form_shape.h"
#include "slab/splice.h"
#include "slab/strip_pieces.h"

namespace strikeoff {
namespace {

// Assumptions, from common practice, no source.
constexpr Length least_rim = Length::mm(12);  // of panel that a screw can bite into
constexpr Length cleat_length = Length::mm(300);

/// No joint nearer to a corner than `splices_apart`, measured on the slab's face of the strip.
Length least_piece(const StripEnds& ends) {
  return std::max(least_splice,
                  splices_apart + std::max(ends.left.longest(), ends.right.longest()));
}

std::string scribed(const StripEnds& ends) {
  if (ends.left.scribed && ends.right.scribed) return " (scribe both ends to the walls)";
  if (!ends.left.scribed && !ends.right.scribed) return {};
  return fmt::format(" (scribe the {} end to the wall)", ends.left.scribed ? "left" : "right");
}

StripRun edge_strip(const FormShape& shape, std::size_t i) {
  const Face& face = shape.faces[i];
  const StripEnds& ends = shape.edge_ends[i];
  StripRun run;
  run.role = "edge strip";
  run.width = height_of(shape, face);
  run.left_cut_deg = ends.left.cut_deg(shape.s());
  run.right_cut_deg = ends.right.cut_deg(shape.s());
  run.place = name_of(shape, face) + scribed(ends);
  run.reads_from_left = true;
  if (face.kind == Face::Kind::side) run.side = face.index;
  const Length length = distance(face.from, face.to) + ends.left.longest() + ends.right.longest();
  // A step shallower than a strip, or a recess as wide as two, is closed by the strips beside it.
  if (length > Length{}) run.pieces = pieces_of(shape.forms, run.width, length, least_piece(ends));
  return run;
}

/// The corner cuts at both ends of a side that its soffit, sharp by itself, is cut to.
std::string cuts_of_soffit(const FormShape& shape, std::size_t k) {
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
StripRun soffit_strip(const FormShape& shape, std::size_t k, const StripRun& edge,
                      Length edge_start) {
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
  run.side = k;
  // To the long points. An end that reads square may be skew by less than 2 degrees: cut square
  // it is up to 1/30 of the width too long on its short side, which is planed off where it binds.
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

void add_stakes(const FormShape& shape, Length strip, FormQuantities& quantities) {
  if (shape.slab.support == Support::base) return;
  quantities.stakes += count_along(strip, shape.spacing.stakes);
}

/// Posts from the floor to under the outer edge of a soffit panel: how long is found on site.
Part props_under(const FormShape& shape, const Side& side, Length soffit) {
  Part part;
  part.role = "prop";
  part.quantity = count_along(soffit, shape.spacing.props);
  part.place = side.name;
  return part;
}

void add_ledger(Length length, FormQuantities& quantities) {
  quantities.ledger += length;
  quantities.ledger_pieces.push_back(length);
}

/// The soft strip between the slab and a wall, as high as the slab is there at most; cut from a
/// roll, so of no stock.
Part isolation_strip(const FormShape& shape, const Face& face) {
  Part part;
  part.role = "isolation strip";
  part.width = concrete_height(shape, face.index);
  part.length = distance(face.from, face.to);
  part.place = name_of(shape, face);
  return part;
}

/// Stands for the strip of a recess too narrow for it: an edge strip without a stock, which the
/// cut list names as unplaced.
Part strip_without_room(const Face& face, const StripRun& edge) {
  Part part;
  part.role = edge.role;
  part.width = edge.width;
  part.length = distance(face.from, face.to);
  part.place = edge.place + " (a recess too narrow for its strips)";
  return part;
}

/// Everything one slab's form is made of, before it is grouped.
struct Pieces {
  std::vector<StripRun> soffits, edges, knock_outs, corner_cleats;
  std::vector<Part> edge_parts, blocks, isolation, props;
  std::vector<std::pair<Length, StripRun>> edge_of_side;  // where each begins along its side
};

StripRun cleat_for(Length width, const std::string& place) {
  StripRun cleat;
  cleat.role = "cleat";
  cleat.letter = 'C';
  cleat.width = width;
  cleat.pieces = {cleat_length};
  cleat.place = place;
  return cleat;
}

void add_rounded(const FormShape& shape, std::size_t i, Pieces& pieces,
                 FormQuantities& quantities) {
  const Face& face = shape.faces[i];
  const std::size_t n = shape.faces.size();
  const Length height = height_of(shape, face);
  const Length arc = arc_length(shape, cut_at(shape.slab, face.index));
  if (face.kind == Face::Kind::bend) {
    for (Part& layer : bend_layers(shape, face)) pieces.edge_parts.push_back(std::move(layer));
    quantities.edge += arc;
    add_stakes(shape, arc, quantities);
    // A straight cleat lies against a straight strip; two bends that meet have their layers' joints
    // apart instead.
    for (const std::size_t next : {(i + n - 1) % n, (i + 1) % n}) {
      if (!is_straight(shape.faces[next]) || shape.faces[next].wall) continue;
      pieces.corner_cleats.push_back(cleat_for(height, name_of(shape, face)));
    }
  } else {
    pieces.blocks.push_back(
        corner_block(shape, face.index, height, " (cut to the arc, between the strips)"));
  }
}

void add_faces(const FormShape& shape, Pieces& pieces, FormQuantities& quantities) {
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
      if (auto under = corner_soffit(shape, face)) pieces.edge_parts.push_back(*std::move(under));
    }
    if (!is_straight(face)) {
      add_rounded(shape, i, pieces, quantities);
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
      const Length start = distance(shape.outline[face.index], face.from);
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

void add_apron(const FormShape& shape, std::size_t k, Pieces& pieces, FormQuantities& quantities) {
  ApronParts apron = apron_parts(shape, k);
  quantities.foam += apron.inner_face;
  quantities.formed += apron.formed;
  pieces.blocks.push_back(std::move(apron.foam));
  for (Part& end : apron.ends) pieces.edge_parts.push_back(std::move(end));
}

void add_soffits(const FormShape& shape, Pieces& pieces, FormQuantities& quantities) {
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

/// The sides as they are formed; marks come once the parts have theirs.
std::vector<SidePlan> planned_sides(const FormShape& shape) {
  std::vector<SidePlan> sides;
  for (std::size_t k = 0; k < shape.slab.sides.size(); ++k) {
    const Side& side = shape.slab.sides[k];
    SidePlan planned;
    planned.name = side.name;
    planned.wall = side.wall;
    planned.apron = side.apron;
    planned.bracket = side.bracket;
    planned.overhang = side.overhang;
    planned.panel_overhang = side.panel_overhang;
    planned.thickness = concrete_height(shape, k);
    if (side.apron) planned.thickness -= shape.slab.apron_depth;
    planned.edge_strip = shape.edge_heights[k];
    if (!side.wall) {
      planned.edge_drop = strip_grip(shape.slab, side, shape.s()) + shape.forms.oversize;
      if (side.apron) planned.edge_drop += shape.slab.apron_depth;
    }
    sides.push_back(std::move(planned));
  }
  return sides;
}

std::vector<Part> grouped(const FormShape& shape, Pieces pieces, FormWork& work,
                          MarkCounter& marks) {
  PartList parts(shape.slab.name, shape.forms.strip_stock.front().id, marks);
  FormQuantities& quantities = work.quantities;
  for (const StripRun& run : pieces.soffits) {
    SidePlan& side = work.sides[*run.side];
    side.soffit_marks = parts.add(run);
    side.soffit_strip = run.width;
  }
  for (const StripRun& run : pieces.edges) {
    const std::string added = parts.add(run);
    if (run.side) work.sides[*run.side].edge_marks = added;
  }
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
  const FormShape form = form_shape(slab, forms, fresh);
  work.quantities.screw_spacing = form.spacing.screws;
  work.quantities.stakes_apart = form.spacing.stakes;
  work.quantities.props_apart = form.spacing.props;
  work.quantities.brackets = bracket_count(slab);
  Pieces pieces;
  add_faces(form, pieces, work.quantities);
  add_soffits(form, pieces, work.quantities);
  KnockOuts openings = knock_outs(slab, shape, forms, form.heights);
  for (const Length length : openings.ledgers) add_ledger(length, work.quantities);
  for (const StripRun& run : openings.strips) work.quantities.knock_out += total(run);
  pieces.knock_outs = std::move(openings.strips);
  pieces.blocks.insert(pieces.blocks.end(), openings.blocks.begin(), openings.blocks.end());
  work.sides = planned_sides(form);
  work.parts = grouped(form, std::move(pieces), work, marks);
  work.quantities.formed += formed_area(form, shape);
  return work;
}

}  // namespace strikeoff
