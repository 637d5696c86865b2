// SPDX-License-Identifier: MIT
#include "slab/panel_seams.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "slab/line_cut.h"

namespace strikeoff {
namespace {

// Assumptions, from common practice, no source.
constexpr Length beside_opening = Length::mm(75);  // a seam this near leaves a weak strip
constexpr Length over_partition = Length::mm(20);  // a seam this near is held by it

/// The length of a seam that lies in an opening, where it is cut away.
Length inside(const Seam& seam, const Rectangle& opening) {
  const Seam s = seam.along_x ? seam : turned(seam);
  const Rectangle o = seam.along_x ? opening : turned(opening);
  if (s.from.y <= o.at.y || s.from.y >= o.at.y + o.depth) return {};
  const Length from = std::max(s.from.x, o.at.x);
  const Length to = std::min(s.from.x + s.length, o.at.x + o.length);
  return std::max(to - from, Length{});
}

}  // namespace

Seam turned(const Seam& seam) {
  return {!seam.along_x, {seam.from.y, seam.from.x}, seam.length};
}

std::vector<Seam> seams_in(const Polygon& area, const Seam& seam) {
  const Length across = seam.along_x ? seam.from.y : seam.from.x;
  const Length from = seam.along_x ? seam.from.x : seam.from.y;
  std::vector<Seam> parts;
  for (const LineSpan& s :
       common({{from, from + seam.length}}, inside(seam.along_x ? area : turned(area), across))) {
    const Point at = seam.along_x ? Point{s.from, across} : Point{across, s.from};
    parts.push_back({seam.along_x, at, s.to - s.from});
  }
  return parts;
}

Length through_openings(const std::vector<Seam>& seams, const std::vector<Rectangle>& cut_out) {
  Length sum;
  for (const Seam& seam : seams) {
    for (const Rectangle& opening : cut_out) sum += inside(seam, opening);
  }
  return sum;
}

Length seam_length(const std::vector<Seam>& seams, const std::vector<Rectangle>& cut_out) {
  Length sum;
  for (const Seam& seam : seams) sum += seam.length;
  return sum - through_openings(seams, cut_out);
}

Length badly_placed(const std::vector<Seam>& seams, const std::vector<Rectangle>& cut_out) {
  Length sum;
  for (const Rectangle& o : cut_out) {
    const Rectangle weak{{o.at.x - beside_opening, o.at.y - beside_opening},
                         o.length + beside_opening * 2,
                         o.depth + beside_opening * 2};
    for (const Seam& seam : seams) sum += inside(seam, weak);
  }
  return sum;
}

Length unsupported(const std::vector<Seam>& seams, const std::vector<Partition>& partitions) {
  Length sum;
  for (const Seam& seam : seams) {
    const Length across = seam.along_x ? seam.from.y : seam.from.x;
    const Length from = seam.along_x ? seam.from.x : seam.from.y;
    LineSpans held;
    for (const Partition& p : partitions) {
      const Length a = seam.along_x ? p.from.y : p.from.x, b = seam.along_x ? p.to.y : p.to.x;
      if (std::max(across, std::max(a, b)) - std::min(across, std::min(a, b)) > over_partition) {
        continue;
      }
      const Length u = seam.along_x ? p.from.x : p.from.y, v = seam.along_x ? p.to.x : p.to.y;
      held.push_back({std::min(u, v), std::max(u, v)});
    }
    sum += seam.length - total(common({{from, from + seam.length}}, joined(std::move(held))));
  }
  return sum;
}

std::vector<Length> good_joints(const std::vector<Partition>& partitions,
                                const std::vector<Rectangle>& cut_out, bool across_x) {
  constexpr std::size_t most = 12;
  std::vector<Length> at;
  for (const Partition& p : partitions) {
    const Length a = across_x ? p.from.x : p.from.y, b = across_x ? p.to.x : p.to.y;
    if (a == b) at.push_back(a);
  }
  for (const Rectangle& o : cut_out) {
    const Length low = across_x ? o.at.x : o.at.y, size = across_x ? o.length : o.depth;
    at.push_back(low - beside_opening);
    at.push_back(low + size + beside_opening);
  }
  if (at.size() > most) at.resize(most);
  return at;
}

}  // namespace strikeoff
