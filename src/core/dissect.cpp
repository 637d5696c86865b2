// SPDX-License-Identifier: MIT
#include "core/dissect.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/vec.h"

namespace strikeoff {
namespace {

constexpr double touching = 1e-9;  // m: a nanometre

/// A corner and the half-edge that leaves it; what lies to the left of that is the part `number`
/// where a cut says so.
struct Node {
  Point at;
  std::size_t next = 0, before = 0;
  int number = -1;
};

/// Where a cut meets an edge of the boundary.
struct Meeting {
  std::size_t edge = 0;       // of the boundary, by the node that it leaves
  double along = 0;           // the edge, from 0 to 1
  std::size_t cut = 0;
  double along_cut = 0;
  double turn = 0;            // from the edge to the side of the cut inside, radians
  Point at;
  std::size_t node = 0;
};

class Rings {
 public:
  void add(const Polygon& ring, bool is_hole) {
    const std::size_t first = nodes_.size(), n = ring.size();
    for (std::size_t i = 0; i < n; ++i) {
      nodes_.push_back({ring[is_hole ? n - 1 - i : i], first + (i + 1) % n,
                        first + (i + n - 1) % n});
    }
  }

  bool cut(const std::vector<Cut>& cuts) {
    std::vector<Meeting> meetings;
    for (std::size_t i = 0; i < cuts.size(); ++i) {
      if (!meet(cuts[i], i, meetings)) return false;
    }
    insert(meetings);
    std::stable_sort(meetings.begin(), meetings.end(), [](const Meeting& a, const Meeting& b) {
      return a.cut != b.cut ? a.cut < b.cut : a.along_cut < b.along_cut;
    });
    for (std::size_t i = 0; i < meetings.size(); i += 2) {
      if (i + 1 == meetings.size() || meetings[i].cut != meetings[i + 1].cut) return false;
      link(meetings[i].node, meetings[i + 1].node, cuts[meetings[i].cut]);
    }
    return true;
  }

  [[nodiscard]] std::optional<std::vector<CutPart>> parts() const {
    std::vector<CutPart> parts;
    std::vector<bool> seen(nodes_.size());
    for (std::size_t start = 0; start < nodes_.size(); ++start) {
      if (seen[start]) continue;
      CutPart part;
      for (std::size_t i = start; !seen[i]; i = nodes_[i].next) {
        seen[i] = true;
        part.outline.push_back(nodes_[i].at);
        part.number = std::max(part.number, nodes_[i].number);
      }
      tidy(part.outline);
      if (part.outline.size() < 3) continue;
      if (signed_area(part.outline) < Area{}) return std::nullopt;
      parts.push_back(std::move(part));
    }
    return parts;
  }

 private:
  [[nodiscard]] Vec way(std::size_t edge) const {
    return vec(nodes_[edge].at, nodes_[nodes_[edge].next].at);
  }

  /// The edge on which the cut begins or ends.
  bool attach(const Point& at, Vec inwards, std::size_t cut, double along_cut,
              std::vector<Meeting>& meetings) const {
    std::optional<Meeting> best;
    double least = touching;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      const Vec w = way(i), p = vec(nodes_[i].at, at);
      const double length = w.length();
      if (length <= 0) continue;
      const double along = std::clamp(dot(p, w) / (length * length), 0.0, 1.0);
      const double away = (p - w * along).length();
      // At a corner both edges are as near; the cut runs inside of one of them at least.
      if (away > least + 1e-15 || cross(w, inwards) <= 0) continue;
      least = std::min(away, least);
      best = {i, along, cut, along_cut, std::atan2(cross(w, inwards), dot(w, inwards)), at, 0};
    }
    if (best) meetings.push_back(*best);
    return best.has_value();
  }

  bool meet(const Cut& cut, std::size_t number, std::vector<Meeting>& meetings) const {
    const Vec w = vec(cut.from, cut.to);
    const double length = w.length();
    if (!attach(cut.from, w, number, 0, meetings) || !attach(cut.to, -w, number, 1, meetings)) {
      return false;
    }
    const auto beside = [&](std::size_t i) { return cross(w, vec(cut.from, nodes_[i].at)) / length; };
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      const double a = beside(i), b = beside(nodes_[i].next);
      if ((a > 0) == (b > 0)) continue;
      const double along = a / (a - b);
      const Point at = between(nodes_[i].at, nodes_[nodes_[i].next].at, along);
      const double along_cut = dot(vec(cut.from, at), w) / (length * length);
      if (along_cut * length <= touching || (1 - along_cut) * length <= touching) continue;
      if (along_cut < 0 || along_cut > 1) continue;
      const Vec edge = way(i), inwards = cross(edge, w) > 0 ? w : -w;
      meetings.push_back({i, along, number, along_cut,
                          std::atan2(cross(edge, inwards), dot(edge, inwards)), at, 0});
    }
    return true;
  }

  /// New corners where cuts meet the boundary; of several in one place the cut that points back
  /// along the edge comes first, so that none cross.
  void insert(std::vector<Meeting>& meetings) {
    std::stable_sort(meetings.begin(), meetings.end(), [](const Meeting& a, const Meeting& b) {
      if (a.edge != b.edge) return a.edge < b.edge;
      return std::abs(a.along - b.along) > 1e-12 ? a.along < b.along : a.turn > b.turn;
    });
    std::size_t edge = nodes_.size(), last = 0;
    for (Meeting& meeting : meetings) {
      if (meeting.edge != edge) last = edge = meeting.edge;
      meeting.node = nodes_.size();
      const std::size_t next = nodes_[last].next;
      nodes_.push_back({meeting.at, next, last});
      nodes_[next].before = meeting.node;
      nodes_[last].next = meeting.node;
      last = meeting.node;
    }
  }

  void link(std::size_t a, std::size_t b, const Cut& cut) {
    const std::size_t a2 = nodes_.size(), b2 = a2 + 1;
    nodes_.push_back({nodes_[a].at, nodes_[a].next, b, nodes_[a].number});
    nodes_.push_back({nodes_[b].at, nodes_[b].next, a, nodes_[b].number});
    nodes_[nodes_[a].next].before = a2;
    nodes_[nodes_[b].next].before = b2;
    nodes_[a].next = b2;
    nodes_[a].number = cut.left;
    nodes_[b].next = a2;
    nodes_[b].number = cut.right;
  }

  /// Without corners that coincide or lie on a straight line, from the leftmost corner, of several
  /// the lowest.
  static void tidy(Polygon& polygon) {
    for (bool changed = true; changed && polygon.size() > 2;) {
      changed = false;
      for (std::size_t i = 0; i < polygon.size() && polygon.size() > 2;) {
        const std::size_t n = polygon.size();
        const Vec in = vec(polygon[(i + n - 1) % n], polygon[i]);
        const Vec out = vec(polygon[i], polygon[(i + 1) % n]);
        const bool is_corner =
            in.length() > touching && out.length() > touching &&
            std::abs(cross(in, out)) > touching * std::max(in.length(), out.length());
        if (is_corner) {
          ++i;
        } else {
          polygon.erase(polygon.begin() + static_cast<std::ptrdiff_t>(i));
          changed = true;
        }
      }
    }
    const auto first = std::min_element(
        polygon.begin(), polygon.end(),
        [](const Point& a, const Point& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    std::rotate(polygon.begin(), first, polygon.end());
  }

  std::vector<Node> nodes_;
};

}  // namespace

std::optional<std::vector<CutPart>> dissect(const Polygon& outline,
                                            const std::vector<Polygon>& holes,
                                            const std::vector<Cut>& cuts,
                                            const std::vector<Cut>& later) {
  Rings rings;
  rings.add(outline, false);
  for (const Polygon& hole : holes) rings.add(hole, true);
  if (!rings.cut(cuts) || !rings.cut(later)) return std::nullopt;
  return rings.parts();
}

}  // namespace strikeoff
