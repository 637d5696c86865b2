// SPDX-License-Identifier: MIT
#include "pour/routes.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "core/outlines.h"
#include "pour/joint_corners.h"

namespace strikeoff {
namespace {

/// A straight side of the outline and the corners, by their places in it, between which it runs.
struct LongEdge {
  std::size_t from = 0, to = 0;
  std::string name;
  Vec way;
  double turn = 0;  // to the next long edge; positive: an outward corner
};

std::string name_of(const Slab& slab, const Polygon& sharp, const Point& a, const Point& b) {
  constexpr Length on_it = Length::mm(0.001);
  for (std::size_t k = 0; k < sharp.size(); ++k) {
    const Polygon side{sharp[k], sharp[(k + 1) % sharp.size()]};
    if (distance(a, side) < on_it && distance(b, side) < on_it) {
      return the_side(slab.sides[k].name);
    }
  }
  return "the cut-off corner";
}

/// Sides long enough to begin at: not those that a cut or rounded corner leaves.
std::vector<LongEdge> long_edges(const Slab& slab, const SlabPlan& shape) {
  const Polygon sharp = sharp_outline(slab);
  const Length least = Length::m(shape.area.si() / shape.perimeter.in_m()) / 2;
  std::vector<LongEdge> edges;
  for (std::size_t k = 0; k < shape.edge.size(); ++k) {
    const Point &a = shape.edge[k].from, &b = shape.edge[(k + 1) % shape.edge.size()].from;
    if (shape.edge[k].sweep != 0 || distance(a, b) < least) continue;
    const auto place = [&](const Point& corner) {
      return static_cast<std::size_t>(
          std::find(shape.outline.begin(), shape.outline.end(), corner) - shape.outline.begin());
    };
    edges.push_back({place(a), place(b), name_of(slab, sharp, a, b), vec(a, b).unit(), 0});
  }
  for (std::size_t k = 0; k < edges.size(); ++k) {
    edges[k].turn = cross(edges[k].way, edges[(k + 1) % edges.size()].way);
  }
  return edges;
}

/// A bay of the outline between two inward corners: what lies between its mouth and its end.
struct Bay {
  std::size_t first = 0, last = 0;  // long edges, before and after it
  std::size_t end = 0;              // the long edge farthest in
};

/// From the front or the left.
bool comes_first(const Vec& a, const Vec& b) {
  return std::abs(a.x - b.x) > 1e-3 ? a.x < b.x : a.y < b.y;
}

class Routes {
 public:
  Routes(const Slab& slab, const SlabPlan& shape, const SlabVolume& volume)
      : slab_(slab),
        shape_(shape),
        volume_(volume),
        outline_(trail_of(shape.outline)),
        edges_(long_edges(slab, shape)),
        clearance_(corner_clearance(shape).in_m()) {
    for (const Polygon& hole : holes_of(shape)) holes_.push_back(trail_of(hole));
    for (const Point& corner : crack_corners(shape)) corners_.push_back(vec(corner));
  }

  std::vector<Route> all() {
    add_passages();
    add_rings();
    const Rectangle box = bounding_box(shape_.outline);
    const Vec x{1, 0}, y{0, 1};
    const bool wide = box.length >= box.depth;
    for (const Vec& along : {wide ? x : y, wide ? y : x}) {
      Route route;
      route.along = along;
      route.from = along.x != 0 ? "the left end" : "the front";
      route.towards = along.x != 0 ? "the right end" : "the back";
      routes_.push_back(std::move(route));
    }
    return std::move(routes_);
  }

 private:
  [[nodiscard]] bool is_end(std::size_t k) const {
    return edges_[k].turn > 0 && edges_[(k + edges_.size() - 1) % edges_.size()].turn > 0;
  }
  [[nodiscard]] Vec middle(std::size_t k) const {
    return (outline_[edges_[k].from] + outline_[edges_[k].to]) / 2;
  }
  [[nodiscard]] double length(std::size_t k) const {
    return (outline_[edges_[k].to] - outline_[edges_[k].from]).length();
  }

  /// The outline from one corner to another, forwards.
  [[nodiscard]] Trail stretch(std::size_t from, std::size_t to) const {
    Trail line{outline_[from]};
    for (std::size_t i = from; i != to;) {
      i = (i + 1) % outline_.size();
      line.push_back(outline_[i]);
    }
    return line;
  }
  static Trail backwards(Trail line) {
    std::reverse(line.begin(), line.end());
    return line;
  }

  [[nodiscard]] Passage passage(Trail left, Trail right, std::vector<Trail> holes) const {
    return {std::move(left), std::move(right), std::move(holes), corners_, clearance_};
  }

  void add_passages() {
    constexpr std::size_t most_ends = 8;  // bounds the work
    std::vector<std::size_t> ends;
    for (std::size_t k = 0; k < edges_.size(); ++k) {
      if (is_end(k)) ends.push_back(k);
    }
    std::stable_sort(ends.begin(), ends.end(), [&](std::size_t a, std::size_t b) {
      return length(a) < length(b) * (1 - 1e-9);
    });
    if (ends.size() > most_ends) ends.resize(most_ends);
    for (std::size_t j = 0; j < ends.size(); ++j) {
      for (std::size_t i = 0; i < j; ++i) {
        const std::size_t n = edges_.size(), apart = (ends[j] + n - ends[i]) % n;
        if (apart == 1 || apart == n - 1) continue;
        const bool ahead = comes_first(middle(ends[i]), middle(ends[j]));
        const std::size_t a = ends[ahead ? i : j], b = ends[ahead ? j : i];
        add_between(a, b);
        add_between(b, a);
      }
    }
  }

  /// From edge a to edge b, once past each arm that branches off.
  void add_between(std::size_t a, std::size_t b) {
    Route route;
    route.from = edges_[a].name;
    route.towards = edges_[b].name;
    Route plain = route;
    plain.passage = passage(backwards(stretch(edges_[b].to, edges_[a].from)),
                            stretch(edges_[a].to, edges_[b].from), holes_);
    routes_.push_back(std::move(plain));
    for (const Bay& bay : bays_between(a, b)) add_branching(route, a, b, bay, false);
    for (const Bay& bay : bays_between(b, a)) add_branching(route, a, b, bay, true);
  }

  /// The bays of the side that runs forwards from edge a to edge b.
  [[nodiscard]] std::vector<Bay> bays_between(std::size_t a, std::size_t b) const {
    const std::size_t n = edges_.size(), count = (b + n - a) % n;
    std::vector<Bay> bays;
    for (std::size_t i = 1; i + 1 < count; ++i) {
      const std::size_t first = (a + i) % n;
      if (edges_[first].turn >= 0) continue;
      std::size_t k = 1;
      while (i + k < count && edges_[(first + k) % n].turn > 0) ++k;
      const std::size_t last = (first + k + 1) % n;
      if (i + k + 1 > count || edges_[(first + k) % n].turn >= 0 || k < 3) continue;
      bays.push_back({first, last, (first + (k + 1) / 2) % n});
    }
    return bays;
  }

  void add_branching(const Route& as, std::size_t a, std::size_t b, const Bay& bay, bool on_left) {
    const std::size_t in = edges_[bay.first].to, out = edges_[bay.last].from;
    // Holes belong to the part that has their first corner.
    Trail arm = stretch(in, out);
    std::vector<Trail> in_arm, in_passage;
    const Polygon inside = polygon_of(arm);
    Route route = as;
    double held = volume_.over(inside).si();
    for (const Trail& hole : holes_) {
      const bool is_inside = contains(inside, point(hole.front()));
      (is_inside ? in_arm : in_passage).push_back(hole);
      if (is_inside) held -= volume_.over(polygon_of(hole)).si();
    }
    route.branch_share = held / shape_.concrete.si();
    const auto without_arm = [&](std::size_t from, std::size_t to, bool has_arm) {
      if (!has_arm) return stretch(from, to);
      Trail line = stretch(from, in);
      const Trail rest = stretch(out, to);
      line.insert(line.end(), rest.begin(), rest.end());
      return line;
    };
    Trail right = without_arm(edges_[a].to, edges_[b].from, !on_left);
    Trail left = backwards(without_arm(edges_[b].to, edges_[a].from, on_left));
    const auto along = [](const Trail& side, const Vec& place) {
      double sum = 0;
      for (std::size_t i = 0; i < side.size(); ++i) {
        if (i > 0) sum += (side[i] - side[i - 1]).length();
        if ((side[i] - place).length() < 1e-9) break;
      }
      return sum;
    };
    const Trail& side = on_left ? left : right;
    route.mouth_on_left = on_left;
    route.mouth_from = along(side, outline_[on_left ? out : in]);
    route.mouth_to = along(side, outline_[on_left ? in : out]);
    route.passage = passage(std::move(left), std::move(right), std::move(in_passage));
    route.passage->set_mouth(on_left, route.mouth_from, route.mouth_to);
    route.branch = passage(backwards(stretch(edges_[bay.end].to, out)),
                           stretch(in, edges_[bay.end].from), std::move(in_arm));
    route.mouth = route.branch->start();
    routes_.push_back(std::move(route));
  }

  /// Round each large opening, from the middle of what lies between one of its sides and the edge.
  void add_rings() {
    constexpr double large = 0.15;  // assumption: of the slab; a sink in a worktop is less
    for (std::size_t k = 0; k < shape_.openings.size(); ++k) {
      if (area(shape_.openings[k].edge) < shape_.area * large) continue;
      const Trail& hole = holes_[k];
      const Rectangle box = bounding_box(shape_.openings[k].edge);
      const Vec middle = vec(box.at) + Vec{box.length.in_m() / 2, box.depth.in_m() / 2};
      Vec axis{1, 0};
      double longest = 0;
      for (std::size_t i = 0; i < hole.size(); ++i) {
        const Vec edge = hole[(i + 1) % hole.size()] - hole[i];
        if (edge.length() <= longest * (1 + 1e-9)) continue;
        longest = edge.length();
        axis = edge.unit();
      }
      for (const Vec& way : {-axis.left(), -axis, axis, axis.left()}) add_ring(k, middle, way);
    }
  }

  void add_ring(std::size_t opening, const Vec& middle, const Vec& direction) {
    const auto start = [&](const Trail& ring) -> std::optional<Trail> {
      double least = HUGE_VAL;
      std::size_t edge = 0;
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vec &c = ring[i], &d = ring[(i + 1) % ring.size()];
        const double beside_c = cross(direction, c - middle),
                     beside_d = cross(direction, d - middle);
        if ((beside_c > 0) == (beside_d > 0)) continue;
        const double away =
            dot(c + (d - c) * (beside_c / (beside_c - beside_d)) - middle, direction);
        if (away <= 0 || away >= least) continue;
        least = away;
        edge = i;
      }
      if (least == HUGE_VAL) return std::nullopt;
      Trail round{middle + direction * least};
      for (std::size_t i = 1; i <= ring.size(); ++i) {
        const Vec& corner = ring[(edge + i) % ring.size()];
        if ((corner - round.back()).length() > 1e-9) round.push_back(corner);
      }
      if ((round.back() - round.front()).length() < 1e-9) round.pop_back();
      round.push_back(round.front());
      return round;
    };
    auto left = start(holes_[opening]), right = start(outline_);
    if (!left || !right) return;
    std::vector<Trail> others = holes_;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(opening));
    const std::string& given = slab_.openings[opening].name;
    std::string side = "the edge";
    for (const LongEdge& edge : edges_) {
      const Vec to = right->front() - outline_[edge.from];
      const bool on_it = std::abs(cross(edge.way, to)) < 1e-6 && dot(edge.way, to) > 0 &&
                         dot(edge.way, to) < (outline_[edge.to] - outline_[edge.from]).length();
      if (on_it) side = edge.name;
    }
    Route route;
    route.from =
        fmt::format("the middle between {} and {}", given.empty() ? "the opening" : given, side);
    route.towards = "the other side, both ways round";
    route.is_ring = true;
    route.passage = passage(std::move(*left), std::move(*right), std::move(others));
    routes_.push_back(std::move(route));
  }

  const Slab& slab_;
  const SlabPlan& shape_;
  const SlabVolume& volume_;
  Trail outline_;
  std::vector<LongEdge> edges_;
  std::vector<Trail> holes_;
  std::vector<Vec> corners_;
  double clearance_;
  std::vector<Route> routes_;
};

}  // namespace

std::vector<Polygon> holes_of(const SlabPlan& shape) {
  std::vector<Polygon> holes;
  for (const OpeningPlan& opening : shape.openings) {
    holes.push_back(chords(opening.edge, drawn_within));
  }
  return holes;
}

std::vector<Route> routes_across(const Slab& slab, const SlabPlan& shape,
                                 const SlabVolume& volume) {
  return Routes(slab, shape, volume).all();
}

}  // namespace strikeoff
