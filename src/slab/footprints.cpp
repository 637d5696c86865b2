// SPDX-License-Identifier: MIT
#include "slab/footprints.h"

#include <algorithm>
#include <set>

#include "core/vec.h"

namespace strikeoff {
namespace {

/// Less is rounding, or the wedge of a corner that counts as square.
constexpr Area least_overlap = Area::from_si(10e-6);

bool turns_round(const Face& face, const StripEnds& ends) {
  return distance(face.from, face.to) + ends.left.outer + ends.right.outer < Length{};
}

/// The outer end that leaves the strips of both faces room, however they are cut.
Length fair_end(const Face& before, const Face& after, Length own, Length thickness) {
  const bool formed = !before.wall && !after.wall && is_straight(before) && is_straight(after);
  return formed ? thickness * turn_at({before.from, before.to, after.to}, 1).tan_half : own;
}

bool has_no_room(const std::vector<Face>& faces, const std::vector<StripEnds>& ends, std::size_t i,
                 Length thickness) {
  const std::size_t n = faces.size();
  const Face& face = faces[i];
  if (face.wall || !is_straight(face)) return false;
  const Length left = fair_end(faces[(i + n - 1) % n], face, ends[i].left.outer, thickness);
  const Length right = fair_end(face, faces[(i + 1) % n], ends[i].right.outer, thickness);
  return distance(face.from, face.to) + left + right < Length{};
}

struct Placed {
  std::size_t face;
  Rectangle box;
};

}  // namespace

Polygon footprint(const Point& from, const Point& to, const StripEnds& ends, Length inner,
                  Length outer) {
  const Length whole = distance(from, to);
  const double ux = (to.x - from.x) / whole, uy = (to.y - from.y) / whole;
  const auto at = [&](Length along, Length out) {
    return Point{from.x + along * ux + out * uy, from.y + along * uy - out * ux};
  };
  return {at(-ends.left.outer, outer), at(whole + ends.right.outer, outer),
          at(whole + ends.right.inner, inner), at(-ends.left.inner, inner)};
}

std::vector<Polygon> soffit_footprints(const Slab& slab, const Polygon& outline,
                                       const std::vector<StripEnds>& ends) {
  std::vector<Polygon> prints(outline.size());
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const Length overhang = slab.sides[k].overhang;
    if (overhang <= Length{}) continue;
    prints[k] =
        footprint(outline[k], outline[(k + 1) % outline.size()], ends[k], -overhang, Length{});
  }
  return prints;
}

std::vector<Polygon> edge_footprints(const std::vector<Face>& faces,
                                     const std::vector<StripEnds>& ends, Length thickness) {
  std::vector<Polygon> prints(faces.size());
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const Face& face = faces[i];
    const Length inner = distance(face.from, face.to) + ends[i].left.inner + ends[i].right.inner;
    if (face.wall || !is_straight(face) || inner <= Length{} || turns_round(face, ends[i])) {
      continue;
    }
    prints[i] = footprint(face.from, face.to, ends[i], Length{}, thickness);
  }
  return prints;
}

std::vector<std::size_t> faces_without_room(const std::vector<Face>& faces,
                                            const std::vector<StripEnds>& ends, Length thickness) {
  auto prints = edge_footprints(faces, ends, thickness);
  const std::size_t n = faces.size();
  std::set<std::size_t> without;
  std::vector<Placed> placed;
  for (std::size_t i = 0; i < n; ++i) {
    if (has_no_room(faces, ends, i, thickness)) without.insert(i);
    // Behind a wall's line is the wall.
    if (faces[i].wall) prints[i] = footprint(faces[i].from, faces[i].to, {}, Length{}, thickness);
    if (!prints[i].empty()) placed.push_back({i, bounding_box(prints[i])});
  }
  std::sort(placed.begin(), placed.end(),
            [](const Placed& a, const Placed& b) { return a.box.at.x < b.box.at.x; });
  const auto length = [&](std::size_t i) { return distance(faces[i].from, faces[i].to); };
  for (std::size_t p = 0; p < placed.size(); ++p) {
    const Length right = placed[p].box.at.x + placed[p].box.length;
    for (std::size_t q = p + 1; q < placed.size() && placed[q].box.at.x < right; ++q) {
      const std::size_t i = std::min(placed[p].face, placed[q].face);
      const std::size_t j = std::max(placed[p].face, placed[q].face);
      if (!overlaps(placed[p].box, placed[q].box)) continue;
      // Neighbours meet by the corner rules; those beside a strip without room touch there.
      if (j == i + 1 || i + n == j + 1) continue;
      if (j == i + 2 && without.count(i + 1) > 0) continue;
      if (i + n == j + 2 && without.count((j + 1) % n) > 0) continue;
      if (faces[i].wall && faces[j].wall) continue;
      if (area(clipped(outline_of(prints[i]), prints[j])) < least_overlap) continue;
      const bool first = faces[j].wall || (!faces[i].wall && length(i) < length(j));
      without.insert(first ? i : j);
    }
  }
  return {without.begin(), without.end()};
}

}  // namespace strikeoff
