// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr double clear = 30;  // round the slab, for dimensions and words
constexpr TextStyle word{2.8, Anchor::middle, false, 0, true};

/// What a drawing of one slab is made with.
struct Page {
  const SlabPlan& slab;
  Units units;
  Paper& sheet;
  View view;
  Labels labels;
};

Box inner(const Box& room) {
  return {room.x + clear, room.y + clear * 0.6, room.width - 2 * clear, room.height - 1.6 * clear};
}

Spot middle(const Spot& a, const Spot& b) {
  return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}

Spot middle(const Box& box) {
  return {box.x + box.width / 2, box.y + box.height / 2};
}

/// A rectangle of the frame on the paper.
Box on_paper(const View& view, const Rectangle& at) {
  const Spot corner = view(Point{at.at.x, at.at.y + at.depth});
  return {corner.x, corner.y, view(at.length), view(at.depth)};
}

/// Words along a side of the slab, outside it: read from below or from the right.
double turn_of(const Spot& from, const Spot& to) {
  double turn = std::atan2(to.y - from.y, to.x - from.x) * 180 / std::acos(-1.0);
  if (turn > 89.9) turn -= 180;
  if (turn <= -90.1) turn += 180;
  return std::abs(turn) < 1e-9 ? 0 : turn;
}

std::string side_words(const Page& page, const SidePlan& side) {
  if (side.wall) return side.name + ": wall";
  std::string text = side.name + ":";
  if (!side.edge_marks.empty()) text += " " + side.edge_marks;
  if (!side.soffit_marks.empty()) text += " on " + side.soffit_marks;
  if (!page.slab.on_ground) text += ", overhang " + show(side.overhang, page.units);
  if (side.bracket) text += ", brackets";
  return text;
}

void faces(Page& page) {
  const View& view = page.view;
  std::vector<std::vector<Spot>> rings = {view(page.slab.outline)};
  for (const OpeningPlan& opening : page.slab.openings) {
    rings.push_back(view(chords(opening.edge, Length::mm(0.05))));
  }
  Svg& svg = page.sheet.svg;
  svg.begin_group("outline");
  svg.face(rings, Fill::paper, outline_pen);
  svg.end_group();
  for (const PanelPiece& piece : page.slab.panels) {
    svg.box(on_paper(view, piece.at), Fill::none, Pen{0.18, "1 1"});
  }
  if (!page.slab.on_ground) svg.polygon(view(page.slab.base), Fill::none, hidden_pen);
}

void openings(Page& page) {
  const View& view = page.view;
  const Rectangle box = bounding_box(page.slab.outline);
  for (const OpeningPlan& opening : page.slab.openings) {
    const Box at = on_paper(view, opening.box);
    const Spot centre = middle(at);
    const std::string size = fmt::format("{} x {}", show(opening.box.length, page.units),
                                         show(opening.box.depth, page.units));
    (void)page.labels.put(page.sheet.svg, fitted(size, std::max(at.width - 1, 14.0), word), word,
                          {{centre.x, centre.y + 1}, {centre.x, at.y - 1}});
    dimension(page.sheet.svg, page.labels, view(Point{box.at.x, opening.box.at.y}),
              {at.x, at.bottom()}, at.height * 0.3 + 0.5,
              show(opening.box.at.x - box.at.x, page.units));
    dimension(page.sheet.svg, page.labels, {at.x, at.bottom()},
              view(Point{opening.box.at.x, box.at.y}), -at.width * 0.3 - 0.5,
              show(opening.box.at.y - box.at.y, page.units));
  }
}

void panel_marks(Page& page) {
  for (const PanelPiece& piece : page.slab.panels) {
    const Box at = on_paper(page.view, piece.at);
    std::vector<Spot> places;
    for (const double y : {0.5, 0.25, 0.75}) {
      for (const double x : {0.5, 0.25, 0.75, 0.12, 0.88}) {
        places.push_back({at.x + at.width * x, at.y + at.height * y + 1});
      }
    }
    (void)page.labels.put(page.sheet.svg, piece.mark, word, places);
  }
}

void side_lines(Page& page) {
  const Polygon& outline = page.slab.sharp;
  const bool rectangle = outline.size() == 4 && page.slab.sides.size() == 4;
  for (std::size_t k = 0; k < page.slab.sides.size(); ++k) {
    const Point &a = outline[k], &b = outline[(k + 1) % outline.size()];
    const Spot from = page.view(a), to = page.view(b);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (length < 1e-6) continue;
    // The slab lies to the left of its sides; y being down, the outside is to the right.
    const Spot out{-(to.y - from.y) / length, (to.x - from.x) / length};
    if (!rectangle || k == 0 || k == 1) {
      dimension(page.sheet.svg, page.labels, from, to, -12,
                both_units(distance(a, Polygon{b}), page.units));
    }
    TextStyle style = word;
    style.turn = turn_of(from, to);
    const std::string words =
        fitted(side_words(page, page.slab.sides[k]), std::max(length + 20, 60.0), style);
    const Spot at = middle(from, to);
    std::vector<Spot> places;
    // A baseline lies above its words' lower edge: as read, outside is above or below the line.
    for (const double by : {4.0, 7.5, 16.0, 19.5, 23.0}) {
      const double lift = out.y > 0.5 || (std::abs(out.y) <= 0.5 && out.x > 0) ? 1.2 : -0.9;
      places.push_back({at.x + out.x * (by + lift * std::abs(out.x)),
                        at.y + out.y * by + lift * std::abs(out.y)});
    }
    (void)page.labels.put(page.sheet.svg, words, style, places);
  }
}

Drawing plan_of(const Plan& plan, const SlabPlan& slab, std::size_t number) {
  const std::string name = fmt::format("slab-{}-plan", number);
  const std::string title = title_of(slab, "plan, seen from above");
  Paper sheet(name, title, plan.name, plan.units,
              "Outline, base, openings and form strips of the slab, to scale");
  const Rectangle box = bounding_box(slab.sharp);
  const View view = view_of(box, inner(sheet.room()), plan.units);
  Page page{slab, plan.units, sheet, view, Labels(sheet.room())};
  faces(page);
  openings(page);
  side_lines(page);
  panel_marks(page);
  sheet.scale_bar(view.scale);
  sheet.legend(Fill::paper, outline_pen, "edge of the slab");
  if (!slab.on_ground) sheet.legend(Fill::none, hidden_pen, "base below");
  if (!slab.panels.empty()) sheet.legend(Fill::none, Pen{0.18, "1 1"}, "seams of the panels");
  sheet.note(
      "E: edge strip, S: soffit strip, P: panel, as marked in the cut list. Measure on the "
      "base before cutting.");
  return {name, title, sheet.svg.str()};
}

}  // namespace

std::vector<Drawing> slab_plans(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (const SlabPlan& slab : plan.slabs) {
    drawings.push_back(plan_of(plan, slab, drawings.size() + 1));
  }
  return drawings;
}

}  // namespace strikeoff::draw
