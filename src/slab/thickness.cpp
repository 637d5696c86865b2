// SPDX-License-Identifier: MIT
#include "slab/thickness.h"

#include <algorithm>
#include <optional>
#include <tuple>

#include "core/vec.h"
#include "slab/line_cut.h"

namespace strikeoff {
namespace {

/// What has been found so far.
class Finder {
 public:
  /// A later place must beat an earlier one by more than rounding.
  void add(Length thickness, const Point& at, bool on_panel) {
    constexpr Length rounding = Length::nm(1);
    if (!seen_ || thickness < range_.thinnest.thickness - rounding) {
      range_.thinnest = {thickness, at};
    }
    if (!seen_ || thickness > range_.thickest.thickness + rounding) {
      range_.thickest = {thickness, at};
    }
    seen_ = true;
    if (on_panel && (!least_ || thickness < *least_)) least_ = thickness;
  }
  [[nodiscard]] ThicknessRange range() const {
    ThicknessRange result = range_;
    result.least_over_panel = least_.value_or(range_.thinnest.thickness);
    return result;
  }

 private:
  ThicknessRange range_;
  std::optional<Length> least_;
  bool seen_ = false;
};

/// In an order of their own, so that of equal ones not the first written counts.
Polygon reading_places(const Slab& slab) {
  Polygon places;
  for (const LevelReading& reading : slab.levels) places.push_back(reading.at);
  std::sort(places.begin(), places.end(),
            [](const Point& a, const Point& b) { return std::tie(a.x, a.y) < std::tie(b.x, b.y); });
  return places;
}

/// Low and rise are least and greatest on the rims of a region or at a reading inside it. Rims are
/// walked with the region on the left.
Finder search(const Slab& slab, const SlabPlan& shape, const Heights& heights) {
  Finder finder;
  const auto add = [&](const HeightAt& found, bool on_panel) {
    const Length hidden = on_panel ? slab.panel->thickness : Length{};
    finder.add(slab.thickness - hidden + found.height, found.at, on_panel);
  };
  std::vector<Polygon> openings;
  for (const OpeningPlan& opening : shape.openings) {
    openings.push_back(chords(opening.edge, drawn_within));
  }
  // Walks a ring where what lies beside it, on its left or right, is over the panel or not.
  const auto walk = [&](const Polygon& ring, bool left, bool on_panel,
                        const std::vector<Polygon>& holes) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const Point &a = ring[k], &b = ring[(k + 1) % ring.size()];
      const Length whole = distance(a, b);
      LineSpans spans = common({{{}, whole}}, beside(shape.outline, a, b, left));
      for (const Polygon& hole : holes) spans = less(spans, beside(hole, a, b, left));
      const LineSpans over = beside(shape.panel, a, b, left);
      for (const LineSpan& span : on_panel ? common(spans, over) : less(spans, over)) {
        const Point from = between(a, b, span.from / whole), to = between(a, b, span.to / whole);
        for (const HeightAt& turn : heights.both.turns(from, to)) add(turn, on_panel);
      }
    }
  };
  walk(shape.panel, true, true, openings);
  walk(shape.panel, false, false, openings);
  walk(shape.outline, true, false, openings);
  for (const Polygon& opening : openings) {  // none reaches into another
    walk(opening, false, true, {});
    walk(opening, false, false, {});
  }
  for (const Point& place : reading_places(slab)) {
    const auto is_in = [&](const Polygon& ring) { return !ring.empty() && contains(ring, place); };
    if (!is_in(shape.outline) || std::any_of(openings.begin(), openings.end(), is_in)) continue;
    add({heights.both.at(place), place}, is_in(shape.panel));
  }
  return finder;
}

}  // namespace

ThicknessRange thickness_range(const Slab& slab, const SlabPlan& shape, const Heights& heights) {
  if (!heights.are_none()) return search(slab, shape, heights).range();
  Finder finder;
  if (slab.panel) {
    finder.add(slab.thickness - slab.panel->thickness, shape.panel.front(), true);
    // A panel that reaches the edge all round leaves nothing of the full thickness.
    const Area bare = shape.area - signed_area(shape.panel);
    if (bare <= Area::from_si(1e-9)) return finder.range();
  }
  finder.add(slab.thickness, shape.outline.front(), false);
  return finder.range();
}

HeightAt lowest_base(const Slab& slab, const SlabPlan& shape, const Heights& heights) {
  HeightAt lowest{{}, shape.outline.front()};
  if (heights.are_none()) return lowest;
  lowest.height = heights.low.at(lowest.at);
  const auto add = [&](Length low, const Point& at) {
    if (low > lowest.height + Length::nm(1)) lowest = {low, at};
  };
  for (std::size_t k = 0; k < shape.outline.size(); ++k) {
    const Point& to = shape.outline[(k + 1) % shape.outline.size()];
    for (const HeightAt& turn : heights.low.turns(shape.outline[k], to)) add(turn.height, turn.at);
  }
  for (const Point& place : reading_places(slab)) {
    if (contains(shape.outline, place)) add(heights.low.at(place), place);
  }
  return lowest;
}

}  // namespace strikeoff
