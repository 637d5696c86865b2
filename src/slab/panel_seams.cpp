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
  const Seam s = seam.along_x ? seam : turned(seam);
  const LineSpan whole{s.from.x, s.from.x + s.length};
  std::vector<Seam> parts;
  for (const LineSpan& span :
       common({whole}, inside(seam.along_x ? area : turned(area), s.from.y))) {
    const Seam part{true, {span.from, s.from.y}, span.to - span.from};
    parts.push_back(seam.along_x ? part : turned(part));
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
  if (partitions.empty()) return sum;
  for (const Seam& seam : seams) {
    const Seam s = seam.along_x ? seam : turned(seam);
    LineSpans held;
    for (const Partition& p : partitions) {
      const auto seen = [&](const Point& at) { return seam.along_x ? at : Point{at.y, at.x}; };
      const Point a = seen(p.from), b = seen(p.to);
      const auto [low, high] = std::minmax({s.from.y, a.y, b.y});
      if (high - low > over_partition) continue;
      held.push_back({std::min(a.x, b.x), std::max(a.x, b.x)});
    }
    const LineSpan whole{s.from.x, s.from.x + s.length};
    sum += seam.length - total(common({whole}, joined(std::move(held))));
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
