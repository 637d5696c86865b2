// SPDX-License-Identifier: MIT
#include "pour/front_slide.h"

#include <cmath>

namespace strikeoff {
namespace {

struct EdgePlace {
  std::size_t edge = 0;
  double at = 0;  // 0 to 1
};

double length_nm(const WalkedMesh& m, std::size_t edge) {
  const Point &a = m.mesh.nodes[m.edges[edge].from], &b = m.mesh.nodes[m.edges[edge].to];
  return std::hypot((b.x - a.x).in_nm(), (b.y - a.y).in_nm());
}

/// True where the edge turns into the region from this ring edge to the next.
bool is_re_entrant(const WalkedMesh& m, std::size_t edge) {
  const RingEdge &here = m.edges[edge], &next = m.edges[here.next];
  return next.corner && signed_area({m.mesh.nodes[here.from], m.mesh.nodes[next.from],
                                     m.mesh.nodes[next.to]}) < Area{};
}

std::optional<EdgePlace> moved(const WalkedMesh& m, EdgePlace place, double by) {
  double at = place.at * length_nm(m, place.edge) + by;
  while (at > length_nm(m, place.edge)) {
    if (is_re_entrant(m, place.edge)) return std::nullopt;
    at -= length_nm(m, place.edge);
    place.edge = m.edges[place.edge].next;
  }
  while (at < 0) {
    const std::size_t ring = m.edges[place.edge].ring;
    place.edge = (place.edge == m.first_of[ring] ? m.first_of[ring + 1] : place.edge) - 1;
    if (is_re_entrant(m, place.edge)) return std::nullopt;
    at += length_nm(m, place.edge);
  }
  place.at = at / length_nm(m, place.edge);
  return place;
}

Point point_at(const WalkedMesh& m, const EdgePlace& place) {
  const Point &a = m.mesh.nodes[m.edges[place.edge].from],
              &b = m.mesh.nodes[m.edges[place.edge].to];
  return {a.x + (b.x - a.x) * place.at, a.y + (b.y - a.y) * place.at};
}

}  // namespace

std::optional<FrontLine> slid(const WalkedMesh& mesh, const FrontLine& line, Length up_by,
                              Length down_by) {
  // Where the edge goes from behind the front to before it, on is more behind; where it comes back,
  // back is.
  const auto up = moved(mesh, {line.up, line.up_at}, up_by.in_nm());
  const auto down = moved(mesh, {line.down, line.down_at}, -down_by.in_nm());
  if (!up || !down) return std::nullopt;
  const FrontLine next{
      up->edge, down->edge, up->at, down->at, {point_at(mesh, *up), point_at(mesh, *down)}};
  const Front straight = straightened(mesh, {next});
  if (straight.front().line.size() != 2) return std::nullopt;
  return next;
}

}  // namespace strikeoff
