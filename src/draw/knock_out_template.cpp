// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr double lap = 10;      // mm that neighbouring pages share
constexpr int most_pages = 40;  // of one opening: a larger one is marked out with a tape

/// The part of a line inside a box (Liang and Barsky, ACM Trans. Graphics 3, 1984, from memory).
std::optional<std::pair<PaperPoint, PaperPoint>> clipped(const PaperPoint& a, const PaperPoint& b,
                                                         const PaperBox& box) {
  double from = 0, to = 1;
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double steps[] = {-dx, dx, -dy, dy};
  const double rooms[] = {a.x - box.x, box.right() - a.x, a.y - box.y, box.bottom() - a.y};
  for (int i = 0; i < 4; ++i) {
    if (steps[i] == 0) {
      if (rooms[i] < 0) return std::nullopt;
      continue;
    }
    const double at = rooms[i] / steps[i];
    (steps[i] < 0 ? from : to) = steps[i] < 0 ? std::max(from, at) : std::min(to, at);
    if (from > to) return std::nullopt;
  }
  return std::pair{PaperPoint{a.x + dx * from, a.y + dy * from},
                   PaperPoint{a.x + dx * to, a.y + dy * to}};
}

/// The opening in millimetres from the upper left corner of the rectangle it fits in.
std::vector<PaperPoint> true_size(const OpeningPlan& opening) {
  std::vector<PaperPoint> spots;
  for (const Point& point : chords(opening.edge, Length::mm(0.05))) {
    spots.push_back({(point.x - opening.box.at.x).in_mm(),
                     (opening.box.at.y + opening.box.depth - point.y).in_mm()});
  }
  return spots;
}

/// How an opening is cut up into pages.
struct Tiling {
  int columns, rows;
  double width, height;  // of what is new on each page
};

/// Page n begins so far after page n - 1 that the crosses of both fall on one place.
int pages_for(double length, double room) {
  if (length <= room) return 1;
  return 1 + static_cast<int>(std::ceil((length - room) / (room - 2 * lap) - 1e-9));
}

/// A line of the opening on this page.
using Stroke = std::pair<PaperPoint, PaperPoint>;

/// Where no line of the opening crosses it, if there is such a place.
void control_square(Paper& paper, const PaperBox& room, Units units,
                    const std::vector<Stroke>& edge) {
  const double side = units == Units::us ? 101.6 : 100;
  PaperBox square{room.right() - side - 2, room.bottom() - side - 2, side, side};
  const auto is_clear = [&](const PaperBox& box) {
    return std::none_of(edge.begin(), edge.end(), [&](const Stroke& stroke) {
      return clipped(stroke.first, stroke.second, box).has_value();
    });
  };
  for (const double y : {1.0, 0.5, 0.0}) {
    for (const double x : {1.0, 0.75, 0.5, 0.25, 0.0}) {
      const PaperBox box{room.x + 2 + (room.width - 4 - side) * x,
                         room.y + 2 + (room.height - 4 - side) * y, side, side};
      if (is_clear(box) && !is_clear(square)) square = box;
    }
  }
  paper.svg.begin_group("control-square");
  paper.svg.box(square, Fill::none, Pen{0.18, "3 2"});
  paper.svg.end_group();
  paper.svg.text({square.x + side / 2, square.y + side / 2},
                 units == Units::us ? "this square: 4 in" : "this square: 100 mm",
                 TextStyle{3, Anchor::middle, false, 0, true});
}

/// Where the next page's picture begins: a cross on each.
void lap_marks(Paper& paper, const PaperBox& room) {
  paper.svg.begin_group("crosses");
  for (const double x : {room.x + lap, room.right() - lap}) {
    for (const double y : {room.y + lap, room.bottom() - lap}) {
      paper.svg.line({x - 3, y}, {x + 3, y}, thin_pen);
      paper.svg.line({x, y - 3}, {x, y + 3}, thin_pen);
    }
  }
  paper.svg.end_group();
}

/// Nothing where no line of the opening crosses the page.
std::optional<Drawing> tile(const Plan& plan, const SlabPlan& slab, std::size_t number,
                            const std::string& stem, const Tiling& tiling, int column, int row) {
  const OpeningPlan& opening = slab.openings[number];
  const bool single = tiling.columns * tiling.rows == 1;
  const std::string name = single ? stem : fmt::format("{}-{}-{}", stem, row + 1, column + 1);
  const std::string which = single ? "" : fmt::format(", row {} column {}", row + 1, column + 1);
  const std::string title = title_of(
      slab,
      fmt::format("template {}, {}{}", number + 1, fitted(opening.name, 40, TextStyle{4}), which));
  Paper paper(name, title, plan.name, plan.units, "An opening at full size, to cut out");
  const PaperBox room = paper.room();
  // A single page's opening stands in its middle.
  const PaperPoint spare = single ? PaperPoint{(room.width - opening.box.length.in_mm()) / 2,
                                               (room.height - opening.box.depth.in_mm()) / 2}
                                  : PaperPoint{};
  const PaperPoint shift{room.x - column * tiling.width + spare.x,
                         room.y - row * tiling.height + spare.y};
  const std::vector<PaperPoint> edge = true_size(opening);
  std::vector<Stroke> strokes;
  for (std::size_t k = 0; k < edge.size(); ++k) {
    const PaperPoint &a = edge[k], &b = edge[(k + 1) % edge.size()];
    if (const auto part =
            clipped({a.x + shift.x, a.y + shift.y}, {b.x + shift.x, b.y + shift.y}, room)) {
      strokes.push_back(*part);
    }
  }
  if (strokes.empty()) return std::nullopt;
  paper.svg.begin_group("opening");
  for (const Stroke& stroke : strokes) paper.svg.line(stroke.first, stroke.second, outline_pen);
  paper.svg.end_group();
  if (!single) lap_marks(paper, room);
  control_square(paper, room, plan.units, strokes);
  const std::string size = both_units(opening.box.length, plan.units);
  paper.note(is_round(opening) ? fmt::format("Round opening, {} across.", size)
                               : fmt::format("Opening {} x {}.", size,
                                             both_units(opening.box.depth, plan.units)));
  paper.note(std::string("Print at 100 %, not fitted to the page; the square must measure true. ") +
             (single ? "" : "Lay the crosses of neighbouring pages on each other."));
  return Drawing{name, title, paper.svg.str()};
}

bool has_arcs(const Outline& edge) {
  return std::any_of(edge.begin(), edge.end(), [](const OutlineEdge& e) { return e.sweep != 0; });
}

Tiling tiling_of(const OpeningPlan& opening, Units units) {
  const PaperBox room = Paper("", "", "", units, "").room();
  return {pages_for(opening.box.length.in_mm(), room.width),
          pages_for(opening.box.depth.in_mm(), room.height), room.width - lap * 2,
          room.height - lap * 2};
}

}  // namespace

bool too_large_for_template(const OpeningPlan& opening, Units units) {
  const Tiling tiling = tiling_of(opening, units);
  return has_arcs(opening.edge) && tiling.columns * tiling.rows > most_pages;
}

std::vector<Drawing> templates(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    const SlabPlan& slab = plan.slabs[i];
    for (std::size_t k = 0; k < slab.openings.size(); ++k) {
      const OpeningPlan& opening = slab.openings[k];
      const Tiling tiling = tiling_of(opening, plan.units);
      if (!has_arcs(opening.edge) || too_large_for_template(opening, plan.units)) continue;
      const std::string stem = fmt::format("slab-{}-opening-{}", i + 1, k + 1);
      for (int row = 0; row < tiling.rows; ++row) {
        for (int column = 0; column < tiling.columns; ++column) {
          if (auto page = tile(plan, slab, k, stem, tiling, column, row)) {
            drawings.push_back(std::move(*page));
          }
          if (drawings.size() > most_template_pages) return drawings;
        }
      }
    }
  }
  return drawings;
}

}  // namespace strikeoff::draw
