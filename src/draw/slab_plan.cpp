// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"
#include "draw/plan_page.h"

namespace strikeoff::draw {
namespace {

constexpr double clear = 30;  // round the slab, for dimensions and words
constexpr Pen seam_pen{0.18, "1 1"}, joint_pen{0.5, "5 1.5 1 1.5"};

PaperBox plan_room(const PaperBox& room) {
  return {room.x + clear, room.y + clear * 0.6, room.width - 2 * clear, room.height - 1.6 * clear};
}

std::vector<PaperPoint> closed(std::vector<PaperPoint> ring) {
  if (!ring.empty()) ring.push_back(ring.front());
  return ring;
}

void faces(PlanPage& page) {
  const View& view = page.view;
  const std::vector<PaperPoint> ring = view(page.slab.outline);
  Svg& svg = page.sheet.svg;
  svg.begin_group("outline");
  svg.polygon(ring, Fill::paper, outline_pen);
  svg.end_group();
  page.labels.keep_clear(closed(ring));
  for (const PanelPiece& piece : page.slab.panels) {
    svg.begin_group("seam");
    svg.polygon(view(piece.outline.empty() ? corners_of(piece.at) : piece.outline), Fill::none,
                seam_pen);
    svg.end_group();
  }
  if (!page.slab.on_ground) svg.polygon(view(page.slab.base), Fill::none, hidden_pen);
  // Over the seams: the panels are cut out there.
  svg.begin_group("openings");
  for (const OpeningPlan& opening : page.slab.openings) {
    svg.polygon(view(chords(opening.edge, drawn_within)), Fill::paper, outline_pen);
  }
  svg.end_group();
}

/// A dimension line inside the slab, at the first place where it crosses neither words nor another
/// opening.
void place(PlanPage& page, const std::vector<std::pair<PaperPoint, PaperPoint>>& lines,
           Length length) {
  const double needs = text_width(ways_to_say(length, page.units).back(), spot_word);
  for (const auto& [from, to] : lines) {
    // Words that do not fit along it would stand on other lines; the list below has them.
    if (std::hypot(to.x - from.x, to.y - from.y) < needs + 1) continue;
    const PaperBox box{std::min(from.x, to.x) - 0.1, std::min(from.y, to.y) - 0.1,
                       std::abs(to.x - from.x) + 0.2, std::abs(to.y - from.y) + 0.2};
    PaperBox within = box;  // its ends lie on outlines
    if (within.width > within.height)
      within = {box.x + 0.5, box.y, box.width - 1, box.height};
    else
      within = {box.x, box.y + 0.5, box.width, box.height - 1};
    if (!page.labels.is_free(corners_of(within))) continue;
    if (dimension(page.sheet.svg, page.labels, from, to, 0, length, page.units)) return;
  }
}

/// Where an opening lies, from the left and from the front of the slab, and its number.
void openings(PlanPage& page) {
  const Rectangle box = bounding_box(page.slab.outline);
  std::vector<PaperBox> all;
  std::vector<std::string> without;
  for (std::size_t k = 0; k < page.slab.openings.size(); ++k) {
    const PaperBox at = page.view(page.slab.openings[k].box);
    all.push_back(at);
    const TextStyle number{std::clamp(std::min(at.width, at.height) * 0.6, 2.0, 5.0),
                           Anchor::middle, true};
    const bool put =
        page.labels.put(page.sheet.svg, std::to_string(k + 1), number,
                        {{at.x + at.width / 2, at.y + at.height / 2 + number.size * 0.36},
                         {at.x + at.width / 2, at.y - 1}});
    if (!put) without.push_back(std::to_string(k + 1));
  }
  if (!without.empty()) {
    page.notes.push_back(
        fmt::format("No room for the number of opening {}.", joined(without, ", ")));
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
    place(page, across, opening.box.at.x - box.at.x);
    place(page, up, opening.box.at.y - box.at.y);
  }
}

/// Opening by opening in words, under the drawing: nothing is lost where the drawing is full.
void opening_list(PlanPage& page) {
  const Rectangle box = bounding_box(page.slab.outline);
  const PaperBox room = page.sheet.room();
  const TextStyle style{2.8};
  const std::size_t most = 8, number = page.slab.openings.size(), told = std::min(number, most);
  const std::size_t columns = told <= 4 ? 1 : 2, rows = (told + columns - 1) / columns;
  const double row = 4.2, column = room.width / static_cast<double>(columns);
  for (std::size_t k = 0; k < told; ++k) {
    const OpeningPlan& opening = page.slab.openings[k];
    const std::size_t below = rows - 1 - k / columns;
    const PaperPoint at{room.x + 1 + column * static_cast<double>(k % columns),
                        room.bottom() - 1 - row * static_cast<double>(below)};
    const auto words_in = [&](const auto& say) {
      const std::string size = is_round(opening)
                                   ? "round, " + say(opening.box.length) + " across"
                                   : say(opening.box.length) + " x " + say(opening.box.depth);
      return fmt::format("{} {}: {}, {} from the left, {} from the front", k + 1,
                         fitted(opening.name, room.width / 8, style), size,
                         say(opening.box.at.x - box.at.x), say(opening.box.at.y - box.at.y));
    };
    std::string words = words_in([&](Length l) { return both_units(l, page.units); });
    if (text_width(words, style) > column - 4) {
      words = fitted(words_in([&](Length l) { return show(l, page.units); }), column - 4, style);
    }
    page.sheet.svg.text(at, words, style);
    page.labels.keep_clear(at, words, style);
  }
  if (number > most) {
    page.notes.push_back(fmt::format("Openings from number {} on: as in the job file.", most + 1));
  }
}

void panel_marks(PlanPage& page) {
  bool all = true;
  for (const PanelPiece& piece : page.slab.panels) {
    std::vector<PaperPoint> places =
        spots_in(piece, page.view, {0.5, 0.25, 0.75, 0.12, 0.88}, {0.5, 0.25, 0.75});
    for (PaperPoint& place : places) place.y += 1;  // the words' middle
    const bool wide = page.view(piece.at.length) > 5;
    all = wide && page.labels.put(page.sheet.svg, piece.mark, spot_word, places) && all;
  }
  if (!all) page.notes.push_back("Panels without a mark here: see the drawing of the panels.");
}

/// Corners that are rounded or cut: what is left of neither side. The radius is that of the arc as
/// drawn.
void corner_marks(PlanPage& page) {
  const Outline& edge = page.slab.edge;
  const PaperPoint centre = page.view(centroid(moments(edge)));
  bool all = true;
  for (std::size_t k = 0; k < edge.size(); ++k) {
    const Point &a = edge[k].from, &b = edge[(k + 1) % edge.size()].from;
    const Length chord = distance(a, Polygon{b});
    std::string before, after;
    Length size;
    if (edge[k].sweep != 0) {
      before = "R ";
      size = chord / (2 * std::sin(std::abs(edge[k].sweep) / 2));
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
      before = "cut off, ";
      after = " back";
      size = back;
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
    bool written = false;
    for (const std::string& way : ways_to_say(size, page.units)) {
      const std::string words = fmt::format("{}{}{}", before, way, after);
      written = written || page.labels.put(page.sheet.svg, words, spot_word, places);
    }
    all = written && all;
  }
  if (!all) page.notes.push_back("Corners without words: rounded or cut off as in the job file.");
}

/// Joints to saw in a slab on the ground.
void control_joints(PlanPage& page) {
  if (!page.slab.control_joints) return;
  const Rectangle box = bounding_box(page.slab.outline);
  const Point far{box.at.x + box.length, box.at.y + box.depth};
  bool all = true;
  const auto joint = [&](const Point& from, const Point& to, Length at, const std::string& side) {
    const PaperPoint a = page.view(from), b = page.view(to);
    page.sheet.svg.begin_group("control-joint");
    page.sheet.svg.line(a, b, joint_pen);
    page.sheet.svg.end_group();
    TextStyle style = spot_word;
    style.turn = turn_along(a, b);
    std::vector<PaperPoint> places;
    for (const double share : {0.25, 0.75, 0.5, 0.4, 0.6, 0.1, 0.9}) {
      places.push_back({a.x + (b.x - a.x) * share - (style.turn != 0 ? 1.0 : 0.0),
                        a.y + (b.y - a.y) * share - (style.turn != 0 ? 0.0 : 1.0)});
    }
    bool written = false;
    for (const std::string& after : {" from the " + side, std::string()}) {
      for (const std::string& way : ways_to_say(at, page.units)) {
        written = written || page.labels.put(page.sheet.svg, way + after, style, places);
      }
    }
    all = written && all;
  };
  for (const Length x : page.slab.control_joints->from_left) {
    joint({box.at.x + x, box.at.y}, {box.at.x + x, far.y}, x, "left");
  }
  for (const Length y : page.slab.control_joints->from_front) {
    joint({box.at.x, box.at.y + y}, {far.x, box.at.y + y}, y, "front");
  }
  if (!all) page.notes.push_back("Joints without words: as the plan in words says.");
}

void template_notes(PlanPage& page) {
  std::vector<std::string> large;
  for (std::size_t k = 0; k < page.slab.openings.size(); ++k) {
    if (too_large_for_template(page.slab.openings[k], page.units)) {
      large.push_back(std::to_string(k + 1));
    }
  }
  if (large.empty()) return;
  page.notes.push_back(fmt::format("Too large for a template, mark out with a tape: opening {}.",
                                   joined(large, ", ")));
}

std::vector<Drawing> plan_of(const Plan& plan, const SlabPlan& slab, std::size_t number) {
  const std::string name = fmt::format("slab-{}-plan", number);
  const std::string title = title_of(slab, "plan, seen from above");
  Paper sheet(name, title, plan.name, plan.units,
              "Outline, base, openings and form strips of the slab, to scale");
  const Rectangle box = bounding_box(slab.sharp);
  const View view = view_of(box, plan_room(sheet.room()), plan.units);
  PlanPage page{slab, plan.units, sheet, view, Labels(sheet.room())};
  draw_walls(page);
  faces(page);
  opening_list(page);
  openings(page);
  control_joints(page);
  corner_marks(page);
  draw_sides(page);
  draw_diagonals(page);
  panel_marks(page);
  template_notes(page);
  sheet.scale_bar(view.scale);
  sheet.legend(Fill::paper, outline_pen, "edge of the slab");
  if (!slab.on_ground) sheet.legend(Fill::none, hidden_pen, "base below");
  if (!slab.panels.empty()) sheet.legend(Fill::none, seam_pen, "seams of the panels");
  if (std::any_of(slab.sides.begin(), slab.sides.end(), [](const auto& s) { return s.wall; })) {
    sheet.legend(Fill::ground, thin_pen, "wall");
  }
  if (slab.control_joints && !slab.control_joints->none()) {
    sheet.legend(Fill::none, joint_pen,
                 "joint to saw, " + both_units(slab.control_joints->depth, plan.units) + " deep");
  }
  if (!page.all_sides) page.notes.push_back("Every side in words: on the page after this one.");
  sheet.notes(page.notes);
  std::vector<Drawing> drawings{{name, title, sheet.svg.str()}};
  if (!page.all_sides) {
    for (Drawing& list : side_lists(plan, slab, number)) drawings.push_back(std::move(list));
  }
  return drawings;
}

}  // namespace

std::vector<Drawing> slab_plans(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    if (!has_shape(plan.slabs[i])) continue;
    for (Drawing& each : plan_of(plan, plan.slabs[i], i + 1)) drawings.push_back(std::move(each));
  }
  return drawings;
}

}  // namespace strikeoff::draw
