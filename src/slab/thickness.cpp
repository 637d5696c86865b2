// SPDX-License-Identifier: MIT
#include "slab/thickness.h"

#include <algorithm>
#include <optional>
#include <tuple>

namespace strikeoff {
namespace {

constexpr Length hair = Length::nm(1000);  // far below a tape, far above rounding

/// A drawn outline with the box it fits in.
struct Drawn {
  Polygon ring;
  Rectangle box;
};

Drawn drawn(Polygon ring) {
  const Rectangle box = bounding_box(ring);
  return {std::move(ring), box};
}

bool is_near_box(const Rectangle& box, const Point& p) {
  return p.x >= box.at.x - hair && p.x <= box.at.x + box.length + hair && p.y >= box.at.y - hair &&
         p.y <= box.at.y + box.depth + hair;
}

/// Inside or within a hair of the rim.
bool holds(const Drawn& shape, const Point& p) {
  return is_near_box(shape.box, p) && (contains(shape.ring, p) || distance(p, shape.ring) <= hair);
}

/// Where on the line from a to b, from 0 to 1, it crosses a ring.
void add_crossings(const Point& a, const Point& b, const Drawn& shape, std::vector<double>& found) {
  const Rectangle line = bounding_box(Polygon{a, b});
  const Rectangle& box = shape.box;
  if (line.at.x > box.at.x + box.length || box.at.x > line.at.x + line.length ||
      line.at.y > box.at.y + box.depth || box.at.y > line.at.y + line.depth) {
    return;
  }
  const HalfPlane beside = left_of(a, b);
  const double length = vec(a, b).length();
  for (std::size_t k = 0; k < shape.ring.size(); ++k) {
    const Point &c = shape.ring[k], &d = shape.ring[(k + 1) % shape.ring.size()];
    const double from = beside.depth(vec(c)), to = beside.depth(vec(d));
    if ((from < 0) == (to < 0)) continue;
    const double t = dot(beside.way, vec(a, between(c, d, from / (from - to)))) / length;
    if (t > 0 && t < 1) found.push_back(t);
  }
}

/// Calls `visit(a, b)` for the pieces of a ring, cut where it crosses other shapes, whose middle
/// is wanted.
template <class Wanted, class Visit>
void follow(const Drawn& shape, const std::vector<const Drawn*>& others, Wanted is_wanted,
            Visit visit) {
  for (std::size_t k = 0; k < shape.ring.size(); ++k) {
    const Point &a = shape.ring[k], &b = shape.ring[(k + 1) % shape.ring.size()];
    std::vector<double> cuts{0, 1};
    for (const Drawn* other : others) add_crossings(a, b, *other, cuts);
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      if (!is_wanted(between(a, b, (cuts[i] + cuts[i + 1]) / 2))) continue;
      visit(between(a, b, cuts[i]), between(a, b, cuts[i + 1]));
    }
  }
}

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

/// The slab seen from above, everything drawn by straight lines.
struct Scene {
  Drawn edge;
  std::optional<Drawn> panel;
  std::vector<Drawn> openings;

  [[nodiscard]] bool on_panel(const Point& p) const { return panel && holds(*panel, p); }
  [[nodiscard]] bool in_opening(const Point& p) const {
    return std::any_of(openings.begin(), openings.end(),
                       [&](const Drawn& opening) { return holds(opening, p); });
  }
  [[nodiscard]] bool in_slab(const Point& p) const { return holds(edge, p) && !in_opening(p); }
};

Scene scene_of(const SlabPlan& shape) {
  Scene scene{drawn(shape.outline), {}, {}};
  if (!shape.panel.empty()) scene.panel = drawn(shape.panel);
  for (const OpeningPlan& opening : shape.openings) {
    scene.openings.push_back(drawn(chords(opening.edge, drawn_within)));
  }
  return scene;
}

/// In an order of their own, so that of equal ones not the first written counts.
Polygon reading_places(const Slab& slab) {
  Polygon places;
  for (const LevelReading& reading : slab.levels) places.push_back(reading.at);
  std::sort(places.begin(), places.end(),
            [](const Point& a, const Point& b) { return std::tie(a.x, a.y) < std::tie(b.x, b.y); });
  return places;
}

/// Low and rise are least and greatest on the rims of a region or at a reading inside it.
Finder search(const Slab& slab, const Scene& scene, const Heights& heights) {
  Finder finder;
  const Length over = slab.panel ? slab.thickness - slab.panel->thickness : slab.thickness;
  const auto look = [&](bool on_panel) {
    return [&, on_panel](const Point& a, const Point& b) {
      for (const HeightAt& turn : heights.both.turns(a, b)) {
        finder.add((on_panel ? over : slab.thickness) + turn.height, turn.at, on_panel);
      }
    };
  };
  const auto beside = [&](const Point& p) { return !scene.on_panel(p); };
  std::vector<const Drawn*> crossed;
  for (const Drawn& opening : scene.openings) crossed.push_back(&opening);
  if (scene.panel) {
    crossed.push_back(&scene.edge);
    follow(
        *scene.panel, crossed, [&](const Point& p) { return scene.in_slab(p); }, look(true));
    const auto inside_edge = [&](const Point& p) {
      return scene.in_slab(p) && distance(p, scene.edge.ring) > hair;
    };
    follow(*scene.panel, crossed, inside_edge, look(false));
    crossed = {&*scene.panel};
  } else {
    crossed.clear();
  }
  follow(scene.edge, crossed, beside, look(false));
  for (const Drawn& opening : scene.openings) {
    follow(
        opening, crossed, [&](const Point& p) { return scene.on_panel(p); }, look(true));
    follow(opening, crossed, beside, look(false));
  }
  for (const Point& place : reading_places(slab)) {
    if (!scene.in_slab(place)) continue;
    const bool on_panel = scene.on_panel(place);
    const Length height = heights.low.at(place) + heights.rise.at(place);
    finder.add((on_panel ? over : slab.thickness) + height, place, on_panel);
  }
  return finder;
}

}  // namespace

ThicknessRange thickness_range(const Slab& slab, const SlabPlan& shape, const Heights& heights) {
  if (!heights.are_none()) return search(slab, scene_of(shape), heights).range();
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
