// SPDX-License-Identifier: MIT
#include "pour/front_lines.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace strikeoff {
namespace {

double cross(const Point& o, const Point& a, const Point& b) {
  return (a.x - o.x).in_nm() * (b.y - o.y).in_nm() - (a.y - o.y).in_nm() * (b.x - o.x).in_nm();
}

double length_nm(const Point& a, const Point& b) {
  return std::hypot((b.x - a.x).in_nm(), (b.y - a.y).in_nm());
}

bool turns(const Point& before, const Point& here, const Point& after) {
  return std::abs(cross(before, here, after)) >
         1e-6 * length_nm(before, here) * length_nm(here, after);
}

/// Between the lower node and the higher one, the same point from either triangle.
Point crossing(const WalkedMesh& m, const std::vector<double>& field, double level, std::size_t low,
               std::size_t high) {
  const double t = (level - field[low]) / (field[high] - field[low]);
  const Point &a = m.mesh.nodes[low], &b = m.mesh.nodes[high];
  return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
}

/// How far along a ring edge the level is met.
double along(const WalkedMesh& m, const std::vector<double>& field, double level,
             std::size_t edge) {
  const double a = field[m.edges[edge].from], b = field[m.edges[edge].to];
  return (level - a) / (b - a);
}

/// From the ring edge where the field rises through the level, triangle by triangle, to the one
/// where it falls.
FrontLine walk(const WalkedMesh& m, const std::vector<double>& field, double level,
               std::size_t start) {
  FrontLine front;
  front.up = start;
  front.up_at = along(m, field, level, start);
  front.line.push_back(crossing(m, field, level, m.edges[start].from, m.edges[start].to));
  std::size_t triangle = m.edges[start].triangle, side = m.edges[start].side;
  while (true) {
    // In by a side from a lower node to a higher one, out beside the third node.
    const auto& nodes = m.mesh.triangles[triangle];
    const std::size_t low = nodes[side], high = nodes[(side + 1) % 3],
                      third = nodes[(side + 2) % 3];
    const bool third_is_low = field[third] < level;
    side = (side + (third_is_low ? 1 : 2)) % 3;
    front.line.push_back(
        crossing(m, field, level, third_is_low ? third : low, third_is_low ? high : third));
    const std::size_t next = m.beyond[triangle][side];
    if (next == WalkedMesh::none) break;
    const std::size_t to = nodes[(side + 1) % 3];  // where the next triangle's side starts
    const auto& there = m.mesh.triangles[next];
    side = there[0] == to ? 0u : there[1] == to ? 1u : 2u;
    triangle = next;
  }
  front.down = m.edge_of[triangle][side];
  front.down_at = along(m, field, level, front.down);
  return front;
}

constexpr double touching = 1e3;  // nm: a line this near a corner goes through it

double distance_nm(const Point& p, const Point& a, const Point& b) {
  const double length = length_nm(a, b);
  if (length == 0) return length_nm(p, a);
  const double t =
      ((p.x - a.x).in_nm() * (b.x - a.x).in_nm() + (p.y - a.y).in_nm() * (b.y - a.y).in_nm()) /
      (length * length);
  if (t <= 0) return length_nm(p, a);
  if (t >= 1) return length_nm(p, b);
  return std::abs(cross(a, b, p)) / length;
}

bool cross_over(const Point& a, const Point& b, const Point& c, const Point& d) {
  const double c_side = cross(a, b, c), d_side = cross(a, b, d);
  const double a_side = cross(c, d, a), b_side = cross(c, d, b);
  return ((c_side > 0) != (d_side > 0)) && ((a_side > 0) != (b_side > 0));
}

/// True when the straight line leaves the region, or touches it but at its own ends.
/// `start` and `end`: it begins and ends on the edge.
bool is_blocked(const WalkedMesh& m, const Point& a, const Point& b, bool start, bool end) {
  for (const Polygon& ring : m.corners) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Point &p = ring[i], &q = ring[(i + 1) % ring.size()];
      const bool at_a = start && distance_nm(a, p, q) < 1;
      const bool at_b = end && distance_nm(b, p, q) < 1;
      if (at_a && at_b) return true;
      // A line that hugs its own edge cuts off a sliver, and one that leaves on its outer side
      // leaves the region.
      const double reach = 0.05 * length_nm(p, q) * length_nm(a, b);
      if (at_a && cross(p, q, b) < reach && distance_nm(a, p, p) > 1 && distance_nm(a, q, q) > 1)
        return true;
      if (at_b && cross(p, q, a) < reach && distance_nm(b, p, p) > 1 && distance_nm(b, q, q) > 1)
        return true;
      if (!at_a && !at_b && cross_over(a, b, p, q)) return true;
      if (length_nm(p, a) > touching && length_nm(p, b) > touching &&
          distance_nm(p, a, b) < touching)
        return true;
    }
  }
  return false;
}

bool is_inside(const Polygon& polygon, const Point& p) {
  bool inside = false;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    if ((a.y > p.y) == (b.y > p.y)) continue;
    const Point &low = a.y < b.y ? a : b, &high = a.y < b.y ? b : a;
    if (cross(low, high, p) > 0) inside = !inside;
  }
  return inside;
}

bool has_opening_between(const WalkedMesh& m, const Polygon& line) {
  return std::any_of(m.corners.begin() + 1, m.corners.end(), [&](const Polygon& hole) {
    return std::any_of(hole.begin(), hole.end(),
                       [&](const Point& corner) { return is_inside(line, corner); });
  });
}

/// The points of a line that it cannot do without to stay within a distance (Douglas and Peucker
/// 1973, from memory).
void thin(const Polygon& line, std::size_t from, std::size_t to, double within, Polygon& out) {
  double farthest = 0;
  std::size_t at = from;
  for (std::size_t i = from + 1; i < to; ++i) {
    const double distance = distance_nm(line[i], line[from], line[to]);
    if (distance > farthest) farthest = distance, at = i;
  }
  if (farthest > within) {
    thin(line, from, at, within, out);
    thin(line, at, to, within, out);
  } else {
    out.push_back(line[to]);
  }
}

/// Within 5 mm, else as closely as keeps it inside the region.
Polygon thinned(const WalkedMesh& m, const Polygon& line) {
  for (const double within : {5e6, 1e6, 1e5}) {
    Polygon few{line.front()};
    thin(line, 0, line.size() - 1, within, few);
    bool clear = true;
    for (std::size_t i = 0; i + 1 < few.size() && clear; ++i) {
      clear = !is_blocked(m, few[i], few[i + 1], i == 0, i + 2 == few.size());
    }
    if (clear) return few;
  }
  return line;
}

/// Where a front meets the edge.
struct Meeting {
  std::size_t edge = 0;
  double at = 0;
  std::size_t level = 0, line = 0;
  bool up = false;
};

/// Follows the edge and the fronts in turn.
class Tracer {
 public:
  Tracer(const WalkedMesh& mesh, const std::vector<const Front*>& fronts)
      : m_(mesh), fronts_(fronts) {
    for (std::size_t l = 0; l < fronts.size(); ++l) {
      for (std::size_t k = 0; k < fronts[l]->size(); ++k) {
        const FrontLine& line = (*fronts[l])[k];
        meetings_.push_back({line.up, line.up_at, l, k, true});
        meetings_.push_back({line.down, line.down_at, l, k, false});
      }
    }
    std::sort(meetings_.begin(), meetings_.end(), [](const Meeting& a, const Meeting& b) {
      if (a.edge != b.edge) return a.edge < b.edge;
      if (a.at != b.at) return a.at < b.at;
      return a.up ? a.level < b.level : a.level > b.level;
    });
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> seen;
    partner_.resize(meetings_.size());
    next_.resize(meetings_.size());
    for (std::size_t e = 0; e < meetings_.size(); ++e) {
      const auto [other, first] = seen.try_emplace({meetings_[e].level, meetings_[e].line}, e);
      if (!first) partner_[e] = other->second, partner_[other->second] = e;
    }
    for (std::size_t e = 0, start = 0; e < meetings_.size(); ++e) {
      const bool last = e + 1 == meetings_.size() || ring(e + 1) != ring(e);
      next_[e] = last ? start : e + 1;
      if (last) start = e + 1;
    }
  }

  void trace(Bands& bands) const {
    std::vector<char> done(meetings_.size(), 0);
    for (std::size_t first = 0; first < meetings_.size(); ++first) {
      if (done[first] != 0) continue;
      Polygon loop;
      const std::size_t band = meetings_[first].level + (meetings_[first].up ? 1 : 0);
      for (std::size_t e = first; done[e] == 0;) {
        done[e] = 1;
        add_edge(e, loop);
        e = add_front(next_[e], loop);
      }
      tidy(loop);
      if (loop.size() >= 3) bands.parts[band].push_back(std::move(loop));
    }
  }

  /// Rings that no front meets.
  [[nodiscard]] std::vector<std::size_t> unmet() const {
    std::vector<char> met(m_.corners.size(), 0);
    for (std::size_t e = 0; e < meetings_.size(); ++e) met[ring(e)] = 1;
    std::vector<std::size_t> rings;
    for (std::size_t r = 0; r < met.size(); ++r) {
      if (met[r] == 0) rings.push_back(r);
    }
    return rings;
  }

 private:
  [[nodiscard]] std::size_t ring(std::size_t e) const { return m_.edges[meetings_[e].edge].ring; }

  [[nodiscard]] Point place(std::size_t e) const {
    const Polygon& line = (*fronts_[meetings_[e].level])[meetings_[e].line].line;
    return meetings_[e].up ? line.front() : line.back();
  }

  /// From a meeting along the edge to just before the next one.
  void add_edge(std::size_t e, Polygon& loop) const {
    loop.push_back(place(e));
    const Meeting &here = meetings_[e], &there = meetings_[next_[e]];
    if (here.edge == there.edge && next_[e] > e) return;
    std::size_t edge = here.edge;
    do {
      edge = m_.edges[edge].next;
      if (m_.edges[edge].corner) loop.push_back(m_.mesh.nodes[m_.edges[edge].from]);
    } while (edge != there.edge);
  }

  /// Across by the front met there; where that comes to the edge again.
  std::size_t add_front(std::size_t e, Polygon& loop) const {
    const Polygon& line = (*fronts_[meetings_[e].level])[meetings_[e].line].line;
    if (meetings_[e].up) {
      loop.insert(loop.end(), line.begin(), line.end() - 1);
    } else {
      loop.insert(loop.end(), line.rbegin(), line.rend() - 1);
    }
    return partner_[e];
  }

  /// Leaves out corners that stand twice.
  static void tidy(Polygon& loop) {
    const auto same = [](const Point& a, const Point& b) { return length_nm(a, b) < 1; };
    loop.erase(std::unique(loop.begin(), loop.end(), same), loop.end());
    while (loop.size() > 1 && same(loop.front(), loop.back())) loop.pop_back();
  }

  const WalkedMesh& m_;
  const std::vector<const Front*>& fronts_;
  std::vector<Meeting> meetings_;
  std::vector<std::size_t> partner_, next_;
};

}  // namespace

WalkedMesh::WalkedMesh(PourMesh of) : mesh(std::move(of)) {
  const std::size_t count = mesh.triangles.size();
  beyond.assign(count, {none, none, none});
  edge_of.assign(count, {none, none, none});
  struct Side {
    std::size_t from, to, triangle, side;
  };
  std::vector<Side> sides;
  for (std::size_t t = 0; t < count; ++t) {
    for (std::size_t i = 0; i < 3; ++i) {
      sides.push_back({mesh.triangles[t][i], mesh.triangles[t][(i + 1) % 3], t, i});
    }
  }
  const auto before = [](const Side& a, const Side& b) {
    return a.from != b.from ? a.from < b.from : a.to < b.to;
  };
  std::sort(sides.begin(), sides.end(), before);
  const auto find = [&](std::size_t from, std::size_t to) -> const Side* {
    const Side key{from, to, 0, 0};
    const auto at = std::lower_bound(sides.begin(), sides.end(), key, before);
    return at != sides.end() && at->from == from && at->to == to ? &*at : nullptr;
  };
  for (const Side& side : sides) {
    if (const Side* other = find(side.to, side.from)) {
      beyond[side.triangle][side.side] = other->triangle;
    }
  }
  for (std::size_t r = 0; r < mesh.rings.size(); ++r) {
    const std::vector<std::size_t>& ring = mesh.rings[r];
    const std::size_t n = ring.size(), first = edges.size();
    first_of.push_back(first);
    corners.emplace_back();
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t from = ring[i], to = ring[(i + 1) % n];
      RingEdge edge{from, to, r, first + (i + 1) % n, 0, 0, false};
      if (const Side* side = find(from, to)) {
        edge.triangle = side->triangle;
        edge.side = side->side;
        edge_of[side->triangle][side->side] = edges.size();
      } else {
        is_sound = false;
      }
      edge.corner = turns(mesh.nodes[ring[(i + n - 1) % n]], mesh.nodes[from], mesh.nodes[to]);
      if (edge.corner) corners.back().push_back(mesh.nodes[from]);
      edges.push_back(edge);
    }
  }
  first_of.push_back(edges.size());
  for (std::size_t t = 0; t < count; ++t) {
    for (std::size_t i = 0; i < 3; ++i) {
      if (beyond[t][i] == none && edge_of[t][i] == none) is_sound = false;
    }
  }
}

Front front_at(const WalkedMesh& mesh, const std::vector<double>& field, double level) {
  Front front;
  for (std::size_t e = 0; e < mesh.edges.size(); ++e) {
    if (field[mesh.edges[e].from] < level && field[mesh.edges[e].to] >= level) {
      front.push_back(walk(mesh, field, level, e));
    }
  }
  return front;
}

Front straightened(const WalkedMesh& mesh, Front front) {
  for (FrontLine& line : front) {
    const Point a = line.line.front(), b = line.line.back();
    if (is_blocked(mesh, a, b, true, true) || has_opening_between(mesh, line.line)) {
      line.line = thinned(mesh, line.line);
    } else {
      line.line = {a, b};
    }
  }
  return front;
}

bool are_apart(const Front& a, const Front& b) {
  for (const FrontLine& one : a) {
    for (const FrontLine& other : b) {
      for (std::size_t i = 0; i + 1 < one.line.size(); ++i) {
        for (std::size_t k = 0; k + 1 < other.line.size(); ++k) {
          if (cross_over(one.line[i], one.line[i + 1], other.line[k], other.line[k + 1])) {
            return false;
          }
        }
      }
    }
  }
  return true;
}

Bands bands_between(const WalkedMesh& mesh, const std::vector<double>& field,
                    const std::vector<double>& levels, const std::vector<const Front*>& fronts) {
  Bands bands;
  bands.parts.resize(levels.size() + 1);
  bands.whole.resize(levels.size() + 1);
  const Tracer tracer(mesh, fronts);
  tracer.trace(bands);
  for (const std::size_t ring : tracer.unmet()) {
    const double u = field[mesh.edges[mesh.first_of[ring]].from];
    const auto above = std::upper_bound(levels.begin(), levels.end(), u);
    bands.whole[static_cast<std::size_t>(above - levels.begin())].push_back(ring);
  }
  return bands;
}

}  // namespace strikeoff
