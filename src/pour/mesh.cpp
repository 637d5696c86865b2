// SPDX-License-Identifier: MIT
#include "pour/mesh.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "pour/mesh_cells.h"
#include "pour/mesh_triangles.h"

namespace strikeoff {
namespace {

constexpr double same_nm = 1;
constexpr double most_nodes = 20000;

double pieces_of(double length, double spacing) {
  return std::max(1.0, std::ceil(length / spacing - 1e-6));
}

/// Nodes on a cut, from low to high, all at one u.
using Cut = std::vector<std::size_t>;

/// Meshes a region whose longer direction is u. The numbers of the corners are those of the nodes
/// they become.
class Mesher {
 public:
  Mesher(std::vector<MeshPlace> corners, std::vector<std::vector<std::size_t>> rings,
         double spacing);

  [[nodiscard]] std::vector<MeshPlace> take_places() { return std::move(places_); }
  [[nodiscard]] std::vector<std::vector<std::size_t>> rings() const;
  void fill(PourMesh& mesh) const;

 private:
  struct Bounded {  // a cell with its nodes
    std::vector<Cut> cuts;
    std::vector<double> at;  // their u
  };

  void widen_spacing();
  [[nodiscard]] double planned_nodes() const;
  [[nodiscard]] double width(const Cell& cell, double u) const {
    return height_at(cells_, cells_.chains[cell.high], u) -
           height_at(cells_, cells_.chains[cell.low], u);
  }
  std::size_t add_node(double u, double v);
  std::size_t node_on(std::size_t chain, double u);
  void add_between(std::size_t low, std::size_t high, Cut& cut);
  void cut_at_turns();
  Cut cut_at(double u, const std::vector<std::size_t>& corners,
             const std::vector<std::size_t>& cells);
  void cut_within(std::size_t cell);
  [[nodiscard]] double near_corner(const Cell& cell, double u, double within) const;
  void divide_sides();
  [[nodiscard]] std::vector<std::size_t> nodes_of(const Chain& chain) const;

  double spacing_;
  std::vector<std::vector<std::size_t>> rings_;
  MeshCells cells_;
  std::vector<MeshPlace> places_;                   // of the nodes: exact at corners
  std::vector<double> u_;                           // of the nodes: alike on a cut
  std::vector<std::vector<std::size_t>> on_sides_;  // nodes within each ring side
  std::vector<Bounded> bounded_;                    // by cell
};

Mesher::Mesher(std::vector<MeshPlace> corners, std::vector<std::vector<std::size_t>> rings,
               double spacing)
    : spacing_(spacing),
      rings_(std::move(rings)),
      cells_(cells_of(corners, rings_)),
      places_(std::move(corners)),
      on_sides_(cells_.sides.size()),
      bounded_(cells_.cells.size()) {
  for (const MeshPlace& corner : cells_.corners) u_.push_back(corner.u);
  widen_spacing();
  cut_at_turns();
  for (std::size_t k = 0; k < bounded_.size(); ++k) cut_within(k);
  divide_sides();
}

double Mesher::planned_nodes() const {
  double nodes = 0;
  for (const Cell& cell : cells_.cells) {
    const double columns = pieces_of(cell.end - cell.start, spacing_);
    for (double k = 0; k <= columns && nodes <= most_nodes; ++k) {
      const double u = cell.start + (cell.end - cell.start) * (k / columns);
      nodes += std::max(0.0, width(cell, std::min(u, cell.end))) / spacing_ + 1;
    }
  }
  return nodes;
}

void Mesher::widen_spacing() {
  double length = 0;
  for (const RingSide& side : cells_.sides) {
    length += std::hypot(places_[side.to].u - places_[side.from].u,
                         places_[side.to].v - places_[side.from].v);
  }
  spacing_ = std::max(spacing_, 2 * length / most_nodes);
  while (spacing_ < length && planned_nodes() > most_nodes) spacing_ *= 1.1;
}

std::size_t Mesher::add_node(double u, double v) {
  places_.push_back({u, v});
  u_.push_back(u);
  return places_.size() - 1;
}

/// The corner of the chain at u, or a new node on its side there.
std::size_t Mesher::node_on(std::size_t chain, double u) {
  const Chain& c = cells_.chains[chain];
  const std::size_t i = corner_before(cells_, c, u);
  if (cells_.corners[c.corners[i]].u == u) return c.corners[i];
  const std::size_t node = add_node(u, height_at(cells_, c, u));
  on_sides_[c.sides[i]].push_back(node);
  return node;
}

/// Appends nodes between two, and the higher one.
void Mesher::add_between(std::size_t low, std::size_t high, Cut& cut) {
  const double a = places_[low].v, b = places_[high].v;
  const double n = pieces_of(b - a, spacing_);
  for (double k = 1; k < n; ++k) cut.push_back(add_node(u_[low], a + (b - a) * (k / n)));
  if (high != cut.back()) cut.push_back(high);
}

/// A cut where cells begin or end: through all of them alike, and along the sides that lie on it.
Cut Mesher::cut_at(double u, const std::vector<std::size_t>& corners,
                   const std::vector<std::size_t>& cells) {
  const auto by_v = [&](std::size_t a, std::size_t b) { return places_[a].v < places_[b].v; };
  Cut fixed = corners;
  // Cells before and after the cut share its nodes; a hole's corner may lie on a side.
  const auto settled = [&](std::size_t chain) {
    const double v = height_at(cells_, cells_.chains[chain], u);
    const Chain& c = cells_.chains[chain];
    const std::size_t i = corner_before(cells_, c, u);
    if (cells_.corners[c.corners[i]].u != u) {
      for (const std::size_t node : fixed) {
        if (std::abs(places_[node].v - v) > same_nm) continue;
        auto& on_side = on_sides_[c.sides[i]];
        if (std::find(on_side.begin(), on_side.end(), node) == on_side.end()) {
          on_side.push_back(node);
        }
        return node;
      }
    }
    const std::size_t node = node_on(chain, u);
    fixed.push_back(node);
    return node;
  };
  std::vector<std::pair<std::size_t, std::size_t>> spans;
  for (const std::size_t cell : cells) {
    const std::size_t low = settled(cells_.cells[cell].low);
    spans.emplace_back(low, settled(cells_.cells[cell].high));
  }
  std::sort(fixed.begin(), fixed.end(), by_v);
  fixed.erase(std::unique(fixed.begin(), fixed.end()), fixed.end());
  std::sort(spans.begin(), spans.end(),
            [&](const auto& a, const auto& b) { return places_[a.first].v < places_[b.first].v; });
  Cut cut;
  std::size_t next = 0;
  double covered = -HUGE_VAL;  // up to here some cell begins or ends
  for (std::size_t i = 0; i < fixed.size(); ++i) {
    if (i > 0 && covered >= places_[fixed[i]].v) {
      add_between(fixed[i - 1], fixed[i], cut);
    } else {
      cut.push_back(fixed[i]);
    }
    while (next < spans.size() && places_[spans[next].first].v <= places_[fixed[i]].v) {
      covered = std::max(covered, places_[spans[next++].second].v);
    }
  }
  return cut;
}

void Mesher::cut_at_turns() {
  struct Turn {
    std::vector<std::size_t> corners, cells;
  };
  std::map<double, Turn> turns;
  for (std::size_t k = 0; k < cells_.cells.size(); ++k) {
    turns[cells_.cells[k].start].cells.push_back(k);
    turns[cells_.cells[k].end].cells.push_back(k);
  }
  for (std::size_t k = 0; k < cells_.corners.size(); ++k) {
    const auto turn = turns.find(cells_.corners[k].u);
    if (turn != turns.end()) turn->second.corners.push_back(k);
  }
  const auto part = [&](const Cut& cut, const Cell& cell, double u) {
    const double low = height_at(cells_, cells_.chains[cell.low], u) - same_nm;
    const double high = height_at(cells_, cells_.chains[cell.high], u) + same_nm;
    Cut out;
    for (const std::size_t node : cut) {
      if (places_[node].v >= low && places_[node].v <= high) out.push_back(node);
    }
    return out;
  };
  for (auto& [u, turn] : turns) {
    const Cut cut = cut_at(u, turn.corners, turn.cells);
    for (const std::size_t k : turn.cells) {
      bounded_[k].cuts.push_back(part(cut, cells_.cells[k], u));
      bounded_[k].at.push_back(u);
    }
    for (std::size_t s = 0; s < cells_.sides.size(); ++s) {
      const RingSide& side = cells_.sides[s];
      if (u_[side.from] != u || u_[side.to] != u) continue;
      const auto [low, high] = std::minmax(places_[side.from].v, places_[side.to].v);
      for (const std::size_t node : cut) {
        if (node == side.from || node == side.to) continue;
        if (places_[node].v > low && places_[node].v < high) on_sides_[s].push_back(node);
      }
    }
  }
}

/// u of the corner of the cell's chains that is nearest, if it is near enough; else u.
double Mesher::near_corner(const Cell& cell, double u, double within) const {
  double nearest = u, least = within;
  for (const std::size_t chain : {cell.low, cell.high}) {
    const auto& corners = cells_.chains[chain].corners;
    const std::size_t i = corner_before(cells_, cells_.chains[chain], u);
    for (std::size_t k = i; k < std::min(i + 2, corners.size()); ++k) {
      const double away = std::abs(u_[corners[k]] - u);
      if (away > least) continue;
      nearest = u_[corners[k]];
      least = away;
    }
  }
  return nearest;
}

/// Cuts across one cell alone, about a spacing apart.
void Mesher::cut_within(std::size_t k) {
  const Cell& cell = cells_.cells[k];
  Bounded& bounded = bounded_[k];
  const double length = cell.end - cell.start, n = pieces_of(length, spacing_);
  for (double i = 1; i < n; ++i) {
    const double u = near_corner(cell, cell.start + length * (i / n), length / n / 5);
    Cut cut{node_on(cell.low, u)};
    add_between(cut.front(), node_on(cell.high, u), cut);
    bounded.cuts.insert(bounded.cuts.end() - 1, std::move(cut));
    bounded.at.insert(bounded.at.end() - 1, u);
  }
}

/// Puts the nodes within each side in order, and more of them where they are far apart.
void Mesher::divide_sides() {
  for (std::size_t s = 0; s < cells_.sides.size(); ++s) {
    const RingSide& side = cells_.sides[s];
    const MeshPlace &from = places_[side.from], &to = places_[side.to];
    const bool along_cut = u_[side.from] == u_[side.to];
    const auto before = [&](std::size_t a, std::size_t b) {
      if (along_cut) return (places_[a].v < places_[b].v) == (from.v < to.v) && a != b;
      return (u_[a] < u_[b]) == (u_[side.from] < u_[side.to]) && a != b;
    };
    auto& nodes = on_sides_[s];
    std::sort(nodes.begin(), nodes.end(), before);
    if (along_cut) continue;
    std::vector<std::size_t> all;
    std::size_t last = side.from;
    for (std::size_t i = 0; i <= nodes.size(); ++i) {
      const std::size_t next = i < nodes.size() ? nodes[i] : side.to;
      const double u = u_[last], du = u_[next] - u;
      const double v = places_[last].v, dv = places_[next].v - v;
      const double n = std::max(1.0, std::round(std::hypot(du, dv) / spacing_));
      for (double k = 1; k < n; ++k) all.push_back(add_node(u + du * (k / n), v + dv * (k / n)));
      if (i < nodes.size()) all.push_back(next);
      last = next;
    }
    nodes = std::move(all);
  }
}

std::vector<std::vector<std::size_t>> Mesher::rings() const {
  std::vector<std::vector<std::size_t>> out;
  std::size_t side = 0;
  for (const auto& ring : rings_) {
    std::vector<std::size_t> nodes;
    for (const std::size_t corner : ring) {
      nodes.push_back(corner);
      nodes.insert(nodes.end(), on_sides_[side].begin(), on_sides_[side].end());
      ++side;
    }
    out.push_back(std::move(nodes));
  }
  return out;
}

/// All nodes of a chain by rising u.
std::vector<std::size_t> Mesher::nodes_of(const Chain& chain) const {
  std::vector<std::size_t> nodes{chain.corners.front()};
  for (std::size_t i = 0; i < chain.sides.size(); ++i) {
    const auto& within = on_sides_[chain.sides[i]];
    if (cells_.sides[chain.sides[i]].from == chain.corners[i]) {
      nodes.insert(nodes.end(), within.begin(), within.end());
    } else {
      nodes.insert(nodes.end(), within.rbegin(), within.rend());
    }
    nodes.push_back(chain.corners[i + 1]);
  }
  return nodes;
}

void Mesher::fill(PourMesh& mesh) const {
  std::vector<std::vector<std::size_t>> chains;
  for (const Chain& chain : cells_.chains) chains.push_back(nodes_of(chain));
  const auto after = [&](const std::vector<std::size_t>& nodes, double u) {
    return std::upper_bound(nodes.begin(), nodes.end(), u,
                            [&](double at, std::size_t node) { return at < u_[node]; });
  };
  std::vector<CellNode> way;
  for (std::size_t k = 0; k < bounded_.size(); ++k) {
    const auto &low = chains[cells_.cells[k].low], &high = chains[cells_.cells[k].high];
    for (std::size_t i = 0; i + 1 < bounded_[k].cuts.size(); ++i) {
      const Cut &left = bounded_[k].cuts[i], &right = bounded_[k].cuts[i + 1];
      const double start = bounded_[k].at[i], end = bounded_[k].at[i + 1];
      auto l = after(low, start), h = after(high, start);
      const auto inside = [&](const auto& at, const auto& nodes) {
        return at != nodes.end() && u_[*at] < end;
      };
      if (!inside(l, low) && !inside(h, high)) {
        zip(left, right, mesh);
        continue;
      }
      way.clear();
      for (const std::size_t node : left) way.push_back({node, node != left.front()});
      while (inside(l, low) || inside(h, high)) {
        const bool upper = !inside(l, low) || (inside(h, high) && u_[*h] < u_[*l]);
        way.push_back({upper ? *h++ : *l++, upper});
      }
      for (const std::size_t node : right) way.push_back({node, node == right.back()});
      fill_monotone(way, mesh);
    }
  }
}

/// Numbers for places, the same for the same place.
std::vector<std::size_t> numbered(const Polygon& ring, std::vector<MeshPlace>& corners,
                                  std::map<std::pair<double, double>, std::size_t>& known,
                                  bool along_x) {
  std::vector<std::size_t> numbers;
  for (const Point& p : ring) {
    const double x = p.x.in_nm(), y = p.y.in_nm();
    const auto [at, added] = known.try_emplace({x, y}, corners.size());
    if (added) corners.push_back(along_x ? MeshPlace{x, y} : MeshPlace{y, -x});
    numbers.push_back(at->second);
  }
  return numbers;
}

}  // namespace

PourMesh mesh_of(const Polygon& outline, const std::vector<Polygon>& holes, Length spacing) {
  const Rectangle box = bounding_box(outline);
  const bool along_x = box.length >= box.depth;
  std::vector<MeshPlace> corners;
  std::map<std::pair<double, double>, std::size_t> known;
  std::vector<std::vector<std::size_t>> rings;
  const auto add_ring = [&](const Polygon& polygon, bool anticlockwise) {
    rings.push_back(numbered(polygon, corners, known, along_x));
    if ((signed_area(polygon) > Area{}) != anticlockwise) {
      std::reverse(rings.back().begin() + 1, rings.back().end());
    }
  };
  add_ring(outline, true);
  for (const Polygon& hole : holes) add_ring(hole, false);

  Mesher mesher(std::move(corners), std::move(rings), spacing.in_nm());
  PourMesh mesh;
  mesh.rings = mesher.rings();
  for (const auto& [u, v] : mesher.take_places()) {
    mesh.nodes.push_back(along_x ? Point{Length::nm(u), Length::nm(v)}
                                 : Point{Length::nm(-v), Length::nm(u)});
  }
  mesher.fill(mesh);
  make_delaunay(mesh);
  return mesh;
}

}  // namespace strikeoff
