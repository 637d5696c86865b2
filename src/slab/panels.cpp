// SPDX-License-Identifier: MIT
#include "slab/panels.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "core/shelves.h"
#include "slab/line_cut.h"
#include "slab/panel_seams.h"
#include "slab/slices.h"
#include "slab/splice.h"
#include "slab/squared.h"

namespace strikeoff {
namespace {

// Assumptions, from common practice, no source.
constexpr Length joints_apart = Length::mm(100);
constexpr Length least_sliver = Length::mm(75);

struct Layout {
  std::vector<Rectangle> pieces;
  std::vector<Polygon> outlines;  // one a piece once cut to the line; empty: the whole rectangle
  std::vector<Seam> seams;
};

/// A sheet as it is laid, and whether a sliver shares equally with the piece before it.
struct Tile {
  Length length, depth;
  bool share = false;
};

/// Where a joint is wanted, if anywhere: along the rows, or between them.
struct Wanted {
  std::optional<Length> along, across;
};

/// The first piece that puts a joint where it is wanted; a full one where that cannot be.
Length first_piece(std::optional<Length> joint, Length start, Length full, Length gap) {
  if (!joint) return full;
  const Length piece = *joint - gap / 2 - start;
  return piece >= least_sliver && piece <= full ? piece : full;
}

/// One row of pieces, and the joints in it for the next row to keep away from.
using RowJoints = std::vector<Length>;

/// Rows along x in one slice, the first staggered from the `below` joints. Returns the joints of
/// its last row.
RowJoints tile(const Rectangle& area, const Tile& sheet, Length gap, const Wanted& wanted,
               RowJoints below, Layout& layout) {
  const PieceRule across{sheet.depth, gap, least_sliver, sheet.share};
  const PieceRule along{sheet.length, gap, least_sliver, sheet.share};
  Length y = area.at.y;
  const Length first = first_piece(wanted.along, area.at.x, sheet.length, gap);
  const Length lowest = first_piece(wanted.across, area.at.y, sheet.depth, gap);
  for (const Length depth : split(area.depth, lowest, across)) {
    if (y != area.at.y) {
      layout.seams.push_back({true, {area.at.x, y - gap / 2}, area.length});
    }
    const auto lengths = below.empty()
                             ? split(area.length, first, along)
                             : split_apart(area.length, along, {area.at.x, joints_apart, below});
    Length x = area.at.x;
    for (const Length length : lengths) {
      layout.pieces.push_back({{x, y}, length, depth});
      x += length + gap;
    }
    below = joints(lengths, area.at.x, gap);
    for (const Length joint : below) layout.seams.push_back({false, {joint, y}, depth});
    y += depth + gap;
  }
  return below;
}

Layout lay_rows(const Slices& slices, const Tile& sheet, Length gap, const Wanted& wanted) {
  const auto parted = part_slices(slices, gap);
  std::vector<std::vector<Contact>> under(parted.size());
  for (const Contact& c : slices.contacts) under[c.above].push_back(c);
  std::vector<RowJoints> top(parted.size());
  Layout layout;
  for (std::size_t i = 0; i < parted.size(); ++i) {
    RowJoints below;
    for (const Contact& c : under[i]) {
      below.insert(below.end(), top[c.below].begin(), top[c.below].end());
      const Rectangle &low = slices.rectangles[c.below], &high = slices.rectangles[i];
      layout.seams.push_back({true, {std::max(low.at.x, high.at.x), high.at.y}, c.overlap});
    }
    std::sort(below.begin(), below.end());
    // A step lower than the gap itself is filled, not covered.
    if (parted[i].depth <= Length{}) continue;
    top[i] = tile(parted[i], sheet, gap, wanted, std::move(below), layout);
  }
  return layout;
}

Layout turned(Layout layout) {
  for (Rectangle& r : layout.pieces) r = turned(r);
  for (Seam& s : layout.seams) s = turned(s);
  return layout;
}

/// The layout of rectangles that cover an area, each cut to its line. A piece keeps the rectangle
/// it is cut from; one that the line cuts asunder becomes several.
Layout cut_to_line(const Layout& whole, const Polygon& area) {
  Layout layout;
  for (const Rectangle& cell : whole.pieces) {
    for (Polygon& part : parts_inside(area, cell)) {
      Rectangle box = bounding_box(part);
      // Rounding must not make a piece larger than the sheet it comes from.
      box.length = std::min(box.length, cell.length);
      box.depth = std::min(box.depth, cell.depth);
      const bool is_whole = part.size() == 4 && is_right_angled(part);
      layout.pieces.push_back(box);
      layout.outlines.push_back(is_whole ? Polygon{} : std::move(part));
    }
  }
  for (const Seam& seam : whole.seams) {
    for (const Seam& part : seams_in(area, seam)) layout.seams.push_back(part);
  }
  return layout;
}

/// What is tiled in place of an area that is not right-angled, before it is cut to the line.
Polygon right_angled_around(const Polygon& area) {
  return squared(area).value_or(corners_of(bounding_box(area)));
}

/// What the openings take from a piece, from its own lower left corner.
std::vector<Rectangle> cuts_in(const Rectangle& piece, const std::vector<Rectangle>& cut_out) {
  std::vector<Rectangle> cuts;
  for (const Rectangle& o : cut_out) {
    if (!overlaps(piece, o)) continue;
    const Point from{std::max(o.at.x, piece.at.x), std::max(o.at.y, piece.at.y)};
    const Length to_x = std::min(o.at.x + o.length, piece.at.x + piece.length);
    const Length to_y = std::min(o.at.y + o.depth, piece.at.y + piece.depth);
    cuts.push_back({{from.x - piece.at.x, from.y - piece.at.y}, to_x - from.x, to_y - from.y});
  }
  return cuts;
}

/// Length and width of a piece as it is cut, largest first, and its number when it has cuts or is
/// cut to the line: such a piece is like no other.
using Kind = std::tuple<Length, Length, std::size_t>;

std::vector<Kind> kinds_of(const Layout& layout, const std::vector<Rectangle>& cut_out) {
  std::vector<Kind> kinds;
  for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
    const Rectangle& r = layout.pieces[i];
    const bool plain = cuts_in(r, cut_out).empty() && layout.outlines[i].empty();
    const std::size_t number = plain ? 0 : i + 1;
    kinds.emplace_back(-std::max(r.length, r.depth), -std::min(r.length, r.depth), number);
  }
  return kinds;
}

/// One part of each kind, in the order of the kinds.
std::vector<Part> parts_of(const Slab& slab, const std::vector<Kind>& kinds) {
  std::map<Kind, int> count;
  for (const Kind& kind : kinds) ++count[kind];
  std::vector<Part> parts;
  for (const auto& [kind, quantity] : count) {
    Part part;
    part.slab = slab.name;
    part.role = "backer panel";
    part.stock = slab.panel->id;
    part.length = -std::get<0>(kind);
    part.width = -std::get<1>(kind);
    part.quantity = quantity;
    part.place = slab.support == Support::base ? "on the base" : "on the ground";
    parts.push_back(std::move(part));
  }
  return parts;
}

std::size_t sheets_needed(const std::vector<Part>& panels, const Stock& sheet, Length kerf) {
  std::vector<SheetItem> items;
  for (const Part& p : panels) items.push_back({p.length, p.width, p.quantity});
  return pack_on_shelves(items, {{sheet.length, sheet.width, {}}}, kerf).sheets.size();
}

struct Choice {
  Layout layout;
  std::vector<Kind> kinds;  // one a piece
  std::vector<Part> parts;
  std::size_t sheets = 0;
  Length badly_placed;  // seams in or beside openings, and, with partitions, over none
  Length seams;
};

bool better(const Choice& a, const Choice& b) {
  return std::tie(a.sheets, a.badly_placed, a.seams) < std::tie(b.sheets, b.badly_placed, b.seams);
}

/// True when nothing of the piece is left outside this opening, which bulges nowhere inwards.
bool is_cut_away(const Rectangle& piece, const Polygon& opening) {
  const Polygon corners = corners_of(piece);
  return std::all_of(corners.begin(), corners.end(),
                     [&](const Point& corner) { return contains(opening, corner); });
}

Choice weigh(const Slab& slab, Layout layout, const std::vector<Rectangle>& cut_out,
             const std::vector<Polygon>& openings, Length kerf) {
  std::vector<Rectangle> pieces;
  std::vector<Polygon> outlines;
  layout.outlines.resize(layout.pieces.size());
  for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
    const bool gone = std::any_of(openings.begin(), openings.end(), [&](const Polygon& opening) {
      return is_cut_away(layout.pieces[i], opening);
    });
    if (gone) continue;
    pieces.push_back(layout.pieces[i]);
    outlines.push_back(std::move(layout.outlines[i]));
  }
  layout.pieces = std::move(pieces);
  layout.outlines = std::move(outlines);
  Choice choice;
  choice.kinds = kinds_of(layout, cut_out);
  choice.parts = parts_of(slab, choice.kinds);
  choice.sheets = sheets_needed(choice.parts, *slab.panel, kerf);
  choice.badly_placed = badly_placed(layout.seams, cut_out);
  choice.badly_placed += unsupported(layout.seams, slab.partitions);
  choice.seams = seam_length(layout.seams, cut_out);
  choice.layout = std::move(layout);
  return choice;
}

}  // namespace

PanelLayout lay_panels(const Slab& slab, const SlabPlan& shape, Length kerf, MarkCounter& marks) {
  if (!slab.panel) return {};
  std::vector<Rectangle> cut_out;
  std::vector<Polygon> openings;
  for (std::size_t i = 0; i < slab.openings.size(); ++i) {
    if (!slab.openings[i].through) continue;
    cut_out.push_back(shape.openings[i].box);
    openings.push_back(chords(shape.openings[i].edge, drawn_within));
  }
  // Eight layouts: rows along x or along y, sheets along or across them, slivers shared equally
  // or just avoided; shared first, since among equals the first stays. Each again with its first
  // joint, along the rows or between them, where partitions or openings would have it.
  const bool right_angled = is_right_angled(shape.panel);
  const Polygon area = right_angled ? shape.panel : right_angled_around(shape.panel);
  const Slices flat = slice(area), upright = slice(turned(area));
  const Length along = slab.panel->length, across = slab.panel->width;
  std::optional<Choice> best;
  for (const bool rows_along_x : {true, false}) {
    std::vector<Wanted> starts{{}};
    for (const Length at : good_joints(slab.partitions, cut_out, rows_along_x)) {
      starts.push_back({at, {}});
    }
    for (const Length at : good_joints(slab.partitions, cut_out, !rows_along_x)) {
      starts.push_back({{}, at});
    }
    for (const Tile& laid : {Tile{along, across, true}, Tile{across, along, true},
                             Tile{along, across, false}, Tile{across, along, false}}) {
      for (const Wanted& wanted : starts) {
        Layout layout = lay_rows(rows_along_x ? flat : upright, laid, slab.panel_gap, wanted);
        if (!rows_along_x) layout = turned(std::move(layout));
        if (!right_angled) layout = cut_to_line(layout, shape.panel);
        Choice choice = weigh(slab, std::move(layout), cut_out, openings, kerf);
        if (!best || better(choice, *best)) best = std::move(choice);
      }
    }
  }

  PanelLayout result;
  std::map<Kind, std::string> mark_of;
  for (const Kind& kind : best->kinds) mark_of[kind];
  auto part = best->parts.begin();
  for (auto& [kind, mark] : mark_of) {
    mark = marks.next('P');
    (part++)->mark = mark;
  }
  for (std::size_t i = 0; i < best->kinds.size(); ++i) {
    const Rectangle& piece = best->layout.pieces[i];
    result.pieces.push_back({mark_of.at(best->kinds[i]), piece, cuts_in(piece, cut_out),
                             std::move(best->layout.outlines[i])});
  }
  result.parts = std::move(best->parts);
  result.seams = best->seams;
  result.unsupported = unsupported(best->layout.seams, slab.partitions);
  result.in_openings = through_openings(best->layout.seams, cut_out);
  return result;
}

}  // namespace strikeoff
