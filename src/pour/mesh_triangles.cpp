// SPDX-License-Identifier: MIT
#include "pour/mesh_triangles.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

#include "pour/mesh_vector.h"

namespace strikeoff {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

double twice_area(const PourMesh& mesh, std::size_t a, std::size_t b, std::size_t c) {
  return cross(from_to(mesh.nodes[a], mesh.nodes[b]), from_to(mesh.nodes[a], mesh.nodes[c]));
}

void add(std::size_t a, std::size_t b, std::size_t c, PourMesh& mesh) {
  if (a == b || b == c || c == a) return;
  if (twice_area(mesh, a, b, c) < 0) std::swap(b, c);
  mesh.triangles.push_back({a, b, c});
}

double squared_length(const PourMesh& mesh, std::size_t a, std::size_t b) {
  const MeshVector v = from_to(mesh.nodes[a], mesh.nodes[b]);
  return dot(v, v);
}

/// The sine of the turn at b on the way from a to c: positive to the left.
double turn(const PourMesh& mesh, std::size_t a, std::size_t b, std::size_t c) {
  const double size = std::sqrt(squared_length(mesh, a, b) * squared_length(mesh, b, c));
  return size > 0 ? twice_area(mesh, a, b, c) / size : 0;
}

/// The triangles of a mesh with who lies across each side: side e of a triangle is opposite its
/// corner e.
class Flips {
 public:
  explicit Flips(PourMesh& mesh) : mesh_(mesh), across_(mesh.triangles.size()) {
    find_neighbours();
  }

  void run();
  /// Nodes on the region's sides: the two nodes they come between, in the order of the rings.
  [[nodiscard]] const std::map<std::pair<std::size_t, std::size_t>, std::size_t>& splits() const {
    return splits_;
  }

 private:
  using Triangle = std::array<std::size_t, 3>;

  void find_neighbours();
  void flip_all(std::vector<std::size_t> waiting);
  [[nodiscard]] std::vector<std::size_t> split_obtuse();
  void split(std::size_t t, std::size_t e, double share);
  [[nodiscard]] std::size_t side_towards(std::size_t t, std::size_t other) const {
    const auto& sides = across_[t];
    return static_cast<std::size_t>(std::find(sides.begin(), sides.end(), other) - sides.begin());
  }
  [[nodiscard]] bool should_flip(std::size_t t, std::size_t e) const;
  void flip(std::size_t t, std::size_t e);
  void replace_neighbour(std::size_t t, std::size_t from, std::size_t to) {
    if (t == none) return;
    std::replace(across_[t].begin(), across_[t].end(), from, to);
  }

  PourMesh& mesh_;
  std::vector<Triangle> across_;
  std::map<std::pair<std::size_t, std::size_t>, std::size_t> splits_;
};

void Flips::find_neighbours() {
  // The sides that leave each node, bucketed by it.
  const auto& triangles = mesh_.triangles;
  std::vector<std::size_t> first(mesh_.nodes.size() + 1, 0);
  for (const Triangle& t : triangles) {
    for (const std::size_t n : t) ++first[n + 1];
  }
  for (std::size_t n = 0; n < mesh_.nodes.size(); ++n) first[n + 1] += first[n];
  std::vector<std::size_t> next = first, leaving(3 * triangles.size());
  for (std::size_t t = 0; t < triangles.size(); ++t) {
    for (std::size_t c = 0; c < 3; ++c) leaving[next[triangles[t][c]]++] = t;
  }
  for (std::size_t t = 0; t < triangles.size(); ++t) {
    for (std::size_t e = 0; e < 3; ++e) {
      const std::size_t a = triangles[t][(e + 1) % 3], b = triangles[t][(e + 2) % 3];
      across_[t][e] = none;
      for (std::size_t k = first[b]; k < first[b + 1]; ++k) {
        const Triangle& o = triangles[leaving[k]];
        for (std::size_t c = 0; c < 3; ++c) {
          if (o[c] == b && o[(c + 1) % 3] == a) across_[t][e] = leaving[k];
        }
      }
    }
  }
}

/// The angles opposite the side exceed half a turn together: the sine of their sum is negative.
bool Flips::should_flip(std::size_t t, std::size_t e) const {
  const std::size_t o = across_[t][e];
  if (o == none || side_towards(o, t) == 3) return false;
  const Triangle &here = mesh_.triangles[t], &there = mesh_.triangles[o];
  const Point &a = mesh_.nodes[here[(e + 1) % 3]], &b = mesh_.nodes[here[(e + 2) % 3]];
  const Point &c = mesh_.nodes[here[e]], &d = mesh_.nodes[there[side_towards(o, t)]];
  const MeshVector ca = from_to(c, a), cb = from_to(c, b), da = from_to(d, a), db = from_to(d, b);
  const double sine = cross(ca, cb) * dot(da, db) + dot(ca, cb) * cross(db, da);
  const double size = dot(ca, ca) * dot(cb, cb) * dot(da, da) * dot(db, db);
  return sine < 0 && sine * sine > 1e-20 * size;
}

void Flips::flip(std::size_t t, std::size_t e) {
  const std::size_t o = across_[t][e], f = side_towards(o, t);
  const Triangle here = mesh_.triangles[t], there = mesh_.triangles[o];
  const std::size_t c = here[e], a = here[(e + 1) % 3], b = here[(e + 2) % 3], d = there[f];
  const std::size_t bc = across_[t][(e + 1) % 3], ca = across_[t][(e + 2) % 3];
  const std::size_t ad = across_[o][(f + 1) % 3], db = across_[o][(f + 2) % 3];
  mesh_.triangles[t] = {c, a, d};
  across_[t] = {ad, o, ca};
  mesh_.triangles[o] = {d, b, c};
  across_[o] = {bc, t, db};
  replace_neighbour(ad, o, t);
  replace_neighbour(bc, t, o);
}

void Flips::flip_all(std::vector<std::size_t> waiting) {
  // Each flip improves the triangulation, so they end; the bound is a precaution.
  std::size_t left = 1000 * mesh_.triangles.size();
  while (!waiting.empty() && left > 0) {
    const std::size_t t = waiting.back();
    waiting.pop_back();
    for (std::size_t e = 0; e < 3; ++e) {
      if (!should_flip(t, e)) continue;
      const std::size_t o = across_[t][e];
      flip(t, e);
      --left;
      waiting.push_back(o);
      waiting.push_back(t);
      break;
    }
  }
}

/// Puts a node on side e, a side of the region, so far along it.
void Flips::split(std::size_t t, std::size_t e, double share) {
  const std::size_t c = mesh_.triangles[t][e], a = mesh_.triangles[t][(e + 1) % 3],
                    b = mesh_.triangles[t][(e + 2) % 3];
  const std::size_t bc = across_[t][(e + 1) % 3], ca = across_[t][(e + 2) % 3];
  const std::size_t p = mesh_.nodes.size(), o = mesh_.triangles.size();
  const Point from = mesh_.nodes[a], to = mesh_.nodes[b];
  mesh_.nodes.push_back({from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share});
  splits_[{a, b}] = p;
  mesh_.triangles[t] = {c, a, p};
  across_[t] = {none, o, ca};
  mesh_.triangles.push_back({c, p, b});
  across_.push_back({none, bc, t});
  replace_neighbour(bc, t, o);
}

/// The triangles it changed.
std::vector<std::size_t> Flips::split_obtuse() {
  constexpr double flat = 0.02;  // height over base
  std::vector<std::size_t> changed;
  for (std::size_t t = 0, count = mesh_.triangles.size(); t < count; ++t) {
    for (std::size_t e = 0; e < 3; ++e) {
      if (across_[t][e] != none) continue;
      const Triangle& corners = mesh_.triangles[t];
      const Point &c = mesh_.nodes[corners[e]], &a = mesh_.nodes[corners[(e + 1) % 3]],
                  &b = mesh_.nodes[corners[(e + 2) % 3]];
      const MeshVector ca = from_to(c, a), cb = from_to(c, b), ab = from_to(a, b);
      const double base = dot(ab, ab);
      if (dot(ca, cb) >= -1e-9 * base || cross(ca, cb) < flat * base) continue;
      changed.insert(changed.end(), {t, mesh_.triangles.size()});
      split(t, e, -dot(ca, ab) / base);
      break;
    }
  }
  return changed;
}

void Flips::run() {
  std::vector<std::size_t> changed(mesh_.triangles.size());
  std::iota(changed.rbegin(), changed.rend(), std::size_t{0});
  constexpr int rounds = 4;  // a flip may bring an obtuse angle to the side again
  for (int round = 0; round < rounds && !changed.empty(); ++round) {
    flip_all(std::move(changed));
    changed = split_obtuse();
  }
  flip_all(std::move(changed));
}

/// Appends the nodes that have come between two neighbours of a ring, in order.
void add_splits(const std::map<std::pair<std::size_t, std::size_t>, std::size_t>& splits,
                std::size_t a, std::size_t b, std::vector<std::size_t>& ring) {
  const auto split = splits.find({a, b});
  if (split == splits.end()) return;
  add_splits(splits, a, split->second, ring);
  ring.push_back(split->second);
  add_splits(splits, split->second, b, ring);
}

}  // namespace

void zip(std::span<const std::size_t> left, std::span<const std::size_t> right, PourMesh& mesh) {
  std::size_t i = 0, k = 0;
  while (i + 1 < left.size() || k + 1 < right.size()) {
    const bool up_left = k + 1 == right.size() ||
                         (i + 1 < left.size() && squared_length(mesh, left[i + 1], right[k]) <=
                                                     squared_length(mesh, left[i], right[k + 1]));
    if (up_left) {
      add(left[i], right[k], left[i + 1], mesh);
      ++i;
    } else {
      add(left[i], right[k], right[k + 1], mesh);
      ++k;
    }
  }
}

void fill_monotone(std::span<const CellNode> cell, PourMesh& mesh) {
  constexpr double straight = 1e-9;
  std::vector<CellNode> open;  // a side not yet filled, turning away from the other one
  const auto join_all = [&](const CellNode& next) {
    for (std::size_t i = 0; i + 1 < open.size(); ++i) {
      add(open[i].node, open[i + 1].node, next.node, mesh);
    }
  };
  for (std::size_t k = 0; k < cell.size(); ++k) {
    const CellNode& next = cell[k];
    if (k + 1 == cell.size()) {
      join_all(next);
    } else if (open.size() > 1 && next.upper != open.back().upper) {
      join_all(next);
      open.erase(open.begin(), open.end() - 1);
    } else {
      while (open.size() > 1) {
        const std::size_t a = open[open.size() - 2].node, b = open.back().node;
        if ((next.upper ? -1 : 1) * turn(mesh, a, b, next.node) <= straight) break;
        add(a, b, next.node, mesh);
        open.pop_back();
      }
    }
    open.push_back(next);
  }
}

void make_delaunay(PourMesh& mesh) {
  Flips flips(mesh);
  flips.run();
  for (auto& ring : mesh.rings) {
    std::vector<std::size_t> nodes;
    for (std::size_t k = 0; k < ring.size(); ++k) {
      nodes.push_back(ring[k]);
      add_splits(flips.splits(), ring[k], ring[(k + 1) % ring.size()], nodes);
    }
    ring = std::move(nodes);
  }
}

}  // namespace strikeoff
