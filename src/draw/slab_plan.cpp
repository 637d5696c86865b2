// SPDX-License-Identifier: MIT
#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr double clear = 30;  // round the slab, for dimensions and words
constexpr TextStyle word{2.8, Anchor::middle, false, 0, true};
constexpr Pen seam_pen{0.18, "1 1"}, joint_pen{0.5, "5 1.5 1 1.5"};

/// What a drawing of one slab is made with.
struct Page {
  const SlabPlan& slab;
  Units units;
  Paper& sheet;
  View view;
  Labels labels;
};

PaperBox inner(const PaperBox& room) {
  return {room.x + clear, room.y + clear * 0.6, room.width - 2 * clear, room.height - 1.6 * clear};
}

PaperPoint middle(const PaperPoint& a, const PaperPoint& b) {
  return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}

/// A rectangle of the frame on the paper.
PaperBox on_paper(const View& view, const Rectangle& at) {
  const PaperPoint corner = view(Point{at.at.x, at.at.y + at.depth});
  return {corner.x, corner.y, view(at.length), view(at.depth)};
}

/// What stands along a side, the longest first.
std::vector<std::string> side_words(const Page& page, const SidePlan& side) {
  if (side.wall) return {side.name + ": wall", side.name};
  std::string strips = side.edge_marks;
  if (!side.soffit_marks.empty()) strips += " on " + side.soffit_marks;
  if (strips.empty()) return {side.name};
  const std::string brackets = side.bracket ? ", brackets" : "";
  std::vector<std::string> words;
  if (!page.slab.on_ground) {
    words.push_back(fmt::format("{}: {}, overhang {}{}", side.name, strips,
                                show(side.overhang, page.units), brackets));
  }
  words.push_back(fmt::format("{}: {}{}", side.name, strips, brackets));
  words.push_back(side.name);
  return words;
}

std::vector<PaperPoint> closed(std::vector<PaperPoint> ring) {
  if (!ring.empty()) ring.push_back(ring.front());
  return ring;
}

void faces(Page& page) {
  const View& view = page.view;
  std::vector<std::vector<PaperPoint>> rings = {view(page.slab.outline)};
  for (const OpeningPlan& opening : page.slab.openings) {
    rings.push_back(view(chords(opening.edge, drawn_within)));
  }
  Svg& svg = page.sheet.svg;
  svg.begin_group("outline");
  svg.face(rings, Fill::paper, outline_pen);
  svg.end_group();
  page.labels.keep_clear(closed(rings.front()));
  for (const PanelPiece& piece : page.slab.panels) {
    svg.box(on_paper(view, piece.at), Fill::none, seam_pen);
  }
  if (!page.slab.on_ground) svg.polygon(view(page.slab.base), Fill::none, hidden_pen);
}

void walls(Page& page) {
  const Polygon& outline = page.slab.sharp;
  const double thick = 2.5;  // mm of paper, not to scale
  for (std::size_t k = 0; k < page.slab.sides.size(); ++k) {
    if (!page.slab.sides[k].wall) continue;
    const PaperPoint from = page.view(outline[k]),
                     to = page.view(outline[(k + 1) % outline.size()]);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (length < 1e-6) continue;
    const PaperPoint out{-(to.y - from.y) / length * thick, (to.x - from.x) / length * thick};
    page.sheet.svg.begin_group("wall " + page.slab.sides[k].name);
    page.sheet.svg.polygon(
        {from, to, {to.x + out.x, to.y + out.y}, {from.x + out.x, from.y + out.y}}, Fill::ground,
        thin_pen);
    page.sheet.svg.end_group();
    page.labels.keep_clear(
        {from, to, {to.x + out.x, to.y + out.y}, {from.x + out.x, from.y + out.y}, from});
  }
}

/// A dimension line inside the slab, at the first place where it crosses neither words nor another
/// opening.
void place(Page& page, const std::vector<std::pair<PaperPoint, PaperPoint>>& lines,
           const std::string& words) {
  for (const auto& [from, to] : lines) {
    // Words that do not fit along it would stand on other lines; the list below has them.
    if (std::hypot(to.x - from.x, to.y - from.y) < text_width(words, word) + 1) continue;
    const PaperBox box{std::min(from.x, to.x) - 0.1, std::min(from.y, to.y) - 0.1,
                       std::abs(to.x - from.x) + 0.2, std::abs(to.y - from.y) + 0.2};
    PaperBox within = box;  // its ends lie on outlines
    if (within.width > within.height)
      within = {box.x + 0.5, box.y, box.width - 1, box.height};
    else
      within = {box.x, box.y + 0.5, box.width, box.height - 1};
    if (!page.labels.is_free(corners_of(within))) continue;
    dimension(page.sheet.svg, page.labels, from, to, 0, words);
    return;
  }
}

/// Where an opening lies, from the left and from the front of the slab, and its number.
void openings(Page& page) {
  const Rectangle box = bounding_box(page.slab.outline);
  std::vector<PaperBox> all;
  for (std::size_t k = 0; k < page.slab.openings.size(); ++k) {
    const PaperBox at = on_paper(page.view, page.slab.openings[k].box);
    all.push_back(at);
    const TextStyle number{std::clamp(std::min(at.width, at.height) * 0.6, 2.0, 5.0),
                           Anchor::middle, true};
    (void)page.labels.put(page.sheet.svg, std::to_string(k + 1), number,
                          {{at.x + at.width / 2, at.y + at.height / 2 + number.size * 0.36},
                           {at.x + at.width / 2, at.y - 1}});
  }
  for (const PaperBox& at : all) page.labels.keep_clear(at);
  for (std::size_t k = 0; k < all.size(); ++k) {
    const OpeningPlan& opening = page.slab.openings[k];
    const PaperBox& at = all[k];
    const double left = page.view(box.at).x, front = page.view(box.at).y;
    std::vector<std::pair<PaperPoint, PaperPoint>> across, up;
    for (const double share : {0.85, 0.5, 0.2, 0.65, 0.35, 0.95, 0.05}) {
      const double y = at.y + at.height * share, x = at.x + at.width * (1 - share);
      across.push_back({{left, y}, {at.x, y}});
      up.push_back({{x, at.bottom()}, {x, front}});
    }
    place(page, across, show(opening.box.at.x - box.at.x, page.units));
    place(page, up, show(opening.box.at.y - box.at.y, page.units));
  }
}

/// Opening by opening in words, under the drawing: nothing is lost where the drawing is full.
void opening_list(Page& page) {
  const Rectangle box = bounding_box(page.slab.outline);
  const PaperBox room = page.sheet.room();
  const TextStyle style{2.8};
  const double row = 4.2, column = room.width / 2;
  const std::size_t most = 8, number = page.slab.openings.size();
  for (std::size_t k = 0; k < std::min(number, most); ++k) {
    const OpeningPlan& opening = page.slab.openings[k];
    const PaperPoint at{
        room.x + 1 + column * static_cast<double>(k % 2),
        room.bottom() - 1 - row * static_cast<double>((std::min(number, most) - 1 - k) / 2)};
    const std::string words = fitted(
        fmt::format("{} {}: {} x {}, {} from the left, {} from the front", k + 1, opening.name,
                    show(opening.box.length, page.units), show(opening.box.depth, page.units),
                    show(opening.box.at.x - box.at.x, page.units),
                    show(opening.box.at.y - box.at.y, page.units)),
        column - 4, style);
    page.sheet.svg.text(at, words, style);
    page.labels.keep_clear(at, words, style);
  }
  if (number > most) {
    page.sheet.note(fmt::format("Openings from number {} on: as in the job file.", most + 1));
  }
}

void panel_marks(Page& page) {
  for (const PanelPiece& piece : page.slab.panels) {
    const PaperBox at = on_paper(page.view, piece.at);
    std::vector<PaperPoint> places;
    for (const double y : {0.5, 0.25, 0.75}) {
      for (const double x : {0.5, 0.25, 0.75, 0.12, 0.88}) {
        places.push_back({at.x + at.width * x, at.y + at.height * y + 1});
      }
    }
    if (at.width > 5) (void)page.labels.put(page.sheet.svg, piece.mark, word, places);
  }
}

/// Corners that are rounded or cut: what is left of neither side. The radius is that of the arc as
/// drawn.
void corner_marks(Page& page) {
  const Outline& edge = page.slab.edge;
  const PaperPoint centre = page.view(centroid(moments(edge)));
  for (std::size_t k = 0; k < edge.size(); ++k) {
    const Point &a = edge[k].from, &b = edge[(k + 1) % edge.size()].from;
    const Length chord = distance(a, Polygon{b});
    std::string words;
    if (edge[k].sweep != 0) {
      words = "R " + show(chord / (2 * std::sin(std::abs(edge[k].sweep) / 2)), page.units);
    } else if (edge.size() > page.slab.sharp.size() &&
               distance(a, page.slab.sharp) <= Length::mm(0.1) &&
               std::none_of(page.slab.sharp.begin(), page.slab.sharp.end(),
                            [&](const Point& p) {
                              return distance(p, Polygon{a, b}) < Length::mm(0.1);
                            }) &&
               distance(towards(a, b, chord / 2), page.slab.sharp) > Length::mm(0.1)) {
      Length back = chord;
      for (const Point& corner : page.slab.sharp)
        back = std::min(back, distance(a, Polygon{corner}));
      words = "cut off, " + show(back, page.units) + " back";
    } else {
      continue;
    }
    const PaperPoint at = middle(page.view(a), page.view(b));
    const double away = std::max(1.0, std::hypot(centre.x - at.x, centre.y - at.y));
    std::vector<PaperPoint> places;
    for (const double by : {6.0, 9.0, 12.0, 16.0, -5.0, -8.0, -12.0, -16.0}) {
      places.push_back(
          {at.x + (centre.x - at.x) * by * 1.6 / away, at.y + (centre.y - at.y) * by / away + 1});
    }
    (void)page.labels.put(page.sheet.svg, words, word, places);
  }
}

/// Joints to saw in a slab on the ground.
void control_joints(Page& page) {
  if (!page.slab.control_joints) return;
  const Rectangle box = bounding_box(page.slab.outline);
  const Point far{box.at.x + box.length, box.at.y + box.depth};
  const auto joint = [&](const Point& from, const Point& to, const std::string& at,
                         const std::string& side) {
    const PaperPoint a = page.view(from), b = page.view(to);
    page.sheet.svg.begin_group("control-joint");
    page.sheet.svg.line(a, b, joint_pen);
    page.sheet.svg.end_group();
    TextStyle style = word;
    style.turn = turn_along(a, b);
    std::vector<PaperPoint> places;
    for (const double share : {0.25, 0.75, 0.5, 0.4, 0.6, 0.1, 0.9}) {
      places.push_back({a.x + (b.x - a.x) * share - (style.turn != 0 ? 1.0 : 0.0),
                        a.y + (b.y - a.y) * share - (style.turn != 0 ? 0.0 : 1.0)});
    }
    if (!page.labels.put(page.sheet.svg, at + " from the " + side, style, places)) {
      (void)page.labels.put(page.sheet.svg, at, style, places);
    }
  };
  for (const Length x : page.slab.control_joints->from_left) {
    joint({box.at.x + x, box.at.y}, {box.at.x + x, far.y}, show(x, page.units), "left");
  }
  for (const Length y : page.slab.control_joints->from_front) {
    joint({box.at.x, box.at.y + y}, {far.x, box.at.y + y}, show(y, page.units), "front");
  }
}

void side_lines(Page& page) {
  const Polygon& outline = page.slab.sharp;
  const bool rectangle = outline.size() == 4 && page.slab.sides.size() == 4;
  std::vector<std::string> unnamed;
  for (std::size_t k = 0; k < page.slab.sides.size(); ++k) {
    const Point &a = outline[k], &b = outline[(k + 1) % outline.size()];
    const PaperPoint from = page.view(a), to = page.view(b);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (length < 1e-6) continue;
    // The slab lies to the left of its sides; y being down, the outside is to the right.
    const PaperPoint out{-(to.y - from.y) / length, (to.x - from.x) / length};
    if (!rectangle || k == 0 || k == 1) {
      dimension(page.sheet.svg, page.labels, from, to, -12,
                both_units(distance(a, Polygon{b}), page.units));
    }
    TextStyle style = word;
    style.turn = turn_along(from, to);
    // A baseline lies above its words' lower edge: as read, outside is above or below the line.
    const double angle = style.turn * std::acos(-1.0) / 180;
    const bool above = out.x * std::sin(angle) - out.y * std::cos(angle) > 0;
    const PaperPoint at = middle(from, to);
    std::vector<PaperPoint> places;
    for (const double by : {4.0, 7.5, 16.0, 20.0, 24.0}) {
      const double off = by + (above ? -0.6 : 1.6) + (page.slab.sides[k].wall ? 1.5 : 0.0);
      for (const double along : {0.0, -0.15, 0.15, -0.25, 0.25}) {
        places.push_back({at.x + out.x * off + (to.x - from.x) * along,
                          at.y + out.y * off + (to.y - from.y) * along});
      }
    }
    bool written = false;
    for (const std::string& words : side_words(page, page.slab.sides[k])) {
      const bool last = words == page.slab.sides[k].name;
      if (!last && text_width(words, style) > length + 24) continue;
      written = page.labels.put(page.sheet.svg, fitted(words, std::max(length + 24, 60.0), style),
                                style, places);
      if (written) break;
    }
    if (!written) unnamed.push_back(side_words(page, page.slab.sides[k]).front());
  }
  if (!unnamed.empty()) {
    page.sheet.note(fmt::format("Not named in the drawing: {}.", fmt::join(unnamed, "; ")));
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
  sheet.note(
      "E: edge strip, S: soffit strip, P: panel, as marked in the cut list. Measure on the "
      "base before cutting.");
  walls(page);
  faces(page);
  opening_list(page);
  openings(page);
  control_joints(page);
  corner_marks(page);
  side_lines(page);
  panel_marks(page);
  sheet.scale_bar(view.scale);
  sheet.legend(Fill::paper, outline_pen, "edge of the slab");
  if (!slab.on_ground) sheet.legend(Fill::none, hidden_pen, "base below");
  if (!slab.panels.empty()) sheet.legend(Fill::none, seam_pen, "seams of the panels");
  if (std::any_of(slab.sides.begin(), slab.sides.end(), [](const auto& s) { return s.wall; })) {
    sheet.legend(Fill::ground, thin_pen, "wall");
  }
  if (slab.control_joints && !slab.control_joints->none()) {
    sheet.legend(Fill::none, joint_pen,
                 "joint to saw, " + show(slab.control_joints->depth, plan.units) + " deep");
  }
  return {name, title, sheet.svg.str()};
}

}  // namespace

std::vector<Drawing> slab_plans(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    if (has_shape(plan.slabs[i])) drawings.push_back(plan_of(plan, plan.slabs[i], i + 1));
  }
  return drawings;
}

}  // namespace strikeoff::draw
