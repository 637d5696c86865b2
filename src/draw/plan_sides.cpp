// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <cmath>
#include <string>

#include "core/format.h"
#include "draw/plan_page.h"

namespace strikeoff::draw {
namespace {

constexpr std::size_t most_sides_apart = 12;

/// What stands along a side, the longest first.
std::vector<std::string> side_words(const PlanPage& page, const SidePlan& side) {
  if (side.wall) return {side.name + ": wall", side.name};
  std::string strips = side.edge_marks;
  if (!side.soffit_marks.empty()) strips += " on " + side.soffit_marks;
  if (strips.empty()) return {side.name};
  const std::string brackets = side.bracket ? ", brackets" : "";
  std::vector<std::string> words;
  if (!page.slab.on_ground) {
    for (const std::string& overhang : ways_to_say(side.overhang, page.units)) {
      words.push_back(fmt::format("{}: {}, overhang {}{}", side.name, strips, overhang, brackets));
    }
  }
  words.push_back(fmt::format("{}: {}{}", side.name, strips, brackets));
  words.push_back(side.name);
  return words;
}

}  // namespace

void draw_walls(PlanPage& page) {
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

void draw_sides(PlanPage& page) {
  const Polygon& outline = page.slab.sharp;
  const bool rectangle = outline.size() == 4 && is_right_angled(outline);
  // Of many short sides, words that do not stand at their own say nothing.
  const bool crowd = outline.size() > most_sides_apart;
  bool numbered = false;
  for (std::size_t k = 0; k < page.slab.sides.size(); ++k) {
    const Point &a = outline[k], &b = outline[(k + 1) % outline.size()];
    const PaperPoint from = page.view(a), to = page.view(b);
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    if (length < 1e-6) continue;
    // The slab lies to the left of its sides; y being down, the outside is to the right.
    const PaperPoint out{-(to.y - from.y) / length, (to.x - from.x) / length};
    const Length real = distance(a, Polygon{b});
    const bool fits_along = text_width(show(real, page.units), spot_word) < length - 1;
    if ((!rectangle || k == 0 || k == 1) &&
        !((fits_along || !crowd) &&
          dimension(page.sheet.svg, page.labels, from, to, -12, real, page.units))) {
      page.all_sides = false;
    }
    TextStyle style = spot_word;
    style.turn = turn_along(from, to);
    // A baseline lies above its words' lower edge: as read, outside is above or below the line.
    const double angle = style.turn * std::acos(-1.0) / 180;
    const bool above = out.x * std::sin(angle) - out.y * std::cos(angle) > 0;
    const PaperPoint at = middle(from, to);
    std::vector<PaperPoint> places;
    for (const double by : {4.0, 7.5, 16.0, 20.0, 24.0}) {
      if (crowd && by > 8) break;
      const double off = by + (above ? -0.6 : 1.6) + (page.slab.sides[k].wall ? 1.5 : 0.0);
      for (const double along : {0.0, -0.15, 0.15, -0.25, 0.25}) {
        places.push_back({at.x + out.x * off + (to.x - from.x) * along,
                          at.y + out.y * off + (to.y - from.y) * along});
      }
    }
    bool written = false;
    const std::vector<std::string> ways = side_words(page, page.slab.sides[k]);
    for (const std::string& words : ways) {
      const bool last = words == page.slab.sides[k].name;
      if (!last && text_width(words, style) > length + (crowd ? 0 : 24)) continue;
      if (crowd && text_width(words, style) > length + 4) continue;
      written = page.labels.put(page.sheet.svg, fitted(words, std::max(length + 24, 60.0), style),
                                style, places);
      // A name alone leaves out the marks.
      if (written && last && ways.size() > 1) page.all_sides = false;
      if (written) break;
    }
    if (written) continue;
    page.all_sides = false;
    style.size = 2.2;
    places.clear();
    for (const double along : {0.0, 0.25, -0.25}) {
      const double off = above ? 1.4 : 3;
      places.push_back({at.x + out.x * off + (to.x - from.x) * along,
                        at.y + out.y * off + (to.y - from.y) * along});
    }
    numbered = (crowd && page.labels.put(page.sheet.svg, std::to_string(k + 1), style, places)) ||
               numbered;
  }
  if (numbered) page.notes.push_back("A number alone is that of an edge.");
}

void draw_diagonals(PlanPage& page) {
  const Polygon& outline = page.slab.sharp;
  if (outline.size() != 4 || is_right_angled(outline)) return;
  for (const std::size_t k : {0U, 1U}) {
    const Point &a = outline[k], &b = outline[k + 2];
    const Length length = distance(a, Polygon{b});
    page.sheet.svg.begin_group("diagonal");
    const bool drawn =
        dimension(page.sheet.svg, page.labels, page.view(a), page.view(b), 0, length, page.units);
    page.sheet.svg.end_group();
    if (drawn) continue;
    page.notes.push_back(fmt::format("Diagonal from where {} begins: {}.", page.slab.sides[k].name,
                                     both_units(length, page.units)));
  }
}

}  // namespace strikeoff::draw
