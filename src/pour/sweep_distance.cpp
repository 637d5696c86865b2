// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>
#include <functional>
#include <queue>
#include <utility>

#include "pour/mesh_vector.h"
#include "pour/sweep_field.h"

namespace strikeoff {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);

/// How far a node is, and from which node the way there is straight, if that is known.
struct Reach {
  double away = HUGE_VAL;
  std::size_t source = none;
};

/// True when the straight line from the source to c runs between a and b.
bool passes_between(const Point& source, const Point& a, const Point& b, const Point& c) {
  const MeshVector way = from_to(source, c);
  const double of_a = cross(way, from_to(source, a)), of_b = cross(way, from_to(source, b));
  return (of_a <= 0) != (of_b <= 0) || of_a == 0 || of_b == 0;
}

/// True when the way from a by b to c goes straight on.
bool in_line(const Point& a, const Point& b, const Point& c) {
  const MeshVector ab = from_to(a, b), bc = from_to(b, c);
  const double size = length(ab) * length(bc);
  return ab.x * bc.x + ab.y * bc.y >= 0 && std::abs(cross(ab, bc)) <= 1e-9 * size;
}

/// How far c is when a straight front passed a and b at these distances and goes on to c between
/// them; HUGE_VAL when it does not (Kimmel and Sethian 1998, from memory).
double straight_front(const Point& a, double away_a, const Point& b, double away_b,
                      const Point& c) {
  const MeshVector ab = from_to(a, b), ac = from_to(a, c);
  const double base = length(ab);
  const double along = (ab.x * ac.x + ab.y * ac.y) / base, above = std::abs(cross(ab, ac)) / base;
  const double cosine = (away_b - away_a) / base;
  if (!(std::abs(cosine) < 1)) return HUGE_VAL;
  const double sine = std::sqrt(1 - cosine * cosine);
  const double foot = along - above * cosine / sine;  // where the way to c crosses the line
  if (foot < 0 || foot > base) return HUGE_VAL;
  return away_a + along * cosine + above * sine;
}

}  // namespace

std::vector<double> SweepFields::distance(const std::vector<std::size_t>& start) const {
  std::vector<Reach> reach(nodes_.size());
  std::vector<bool> settled(nodes_.size(), false);
  using Entry = std::pair<double, std::size_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> next;
  const auto offer = [&](std::size_t node, double away, std::size_t source) {
    if (away >= reach[node].away) return;
    reach[node] = {away, source};
    next.emplace(away, node);
  };
  const auto along_side = [&](std::size_t a, std::size_t c) {
    const std::size_t before = reach[a].source;
    const double away = reach[a].away + length(from_to(nodes_[a], nodes_[c]));
    if (re_entrant_[a]) {
      offer(c, away, a);
    } else {
      const bool straight = before != none && in_line(nodes_[before], nodes_[a], nodes_[c]);
      offer(c, away, straight ? before : none);
    }
  };
  const auto through = [&](std::size_t a, std::size_t b, std::size_t c) {
    const std::size_t source = reach[a].source;
    if (source != none && source == reach[b].source) {
      if (!passes_between(nodes_[source], nodes_[a], nodes_[b], nodes_[c])) return;
      const double on = length(from_to(nodes_[source], nodes_[c]));
      offer(c, std::max(reach[source].away + on, reach[a].away), source);
    } else {
      const double away =
          straight_front(nodes_[a], reach[a].away, nodes_[b], reach[b].away, nodes_[c]);
      offer(c, std::max(away, reach[a].away), none);
    }
  };

  for (const std::size_t node : start) offer(node, 0, node);
  double farthest = 0;
  while (!next.empty()) {
    const std::size_t node = next.top().second;
    next.pop();
    if (settled[node]) continue;
    settled[node] = true;
    farthest = reach[node].away;
    for (std::size_t k = first_around_[node]; k < first_around_[node + 1]; ++k) {
      const auto& t = triangles_[around_[k]];
      for (std::size_t i = 0; i < 3; ++i) {
        const std::size_t c = t[i],
                          other = t[(i + 1) % 3] == node ? t[(i + 2) % 3] : t[(i + 1) % 3];
        if (c == node || settled[c]) continue;
        along_side(node, c);
        if (settled[other]) through(node, other, c);
      }
    }
  }
  std::vector<double> field;
  for (const Reach& r : reach) {
    field.push_back(r.away > farthest ? 1 : farthest > 0 ? r.away / farthest : 0);
  }
  return field;
}

}  // namespace strikeoff
