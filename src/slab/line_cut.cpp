// SPDX-License-Identifier: MIT
#include "slab/line_cut.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

#include "core/vec.h"

namespace strikeoff {
namespace {

/// One line of a saw along x or y, with what is kept on its left.
struct SawLine {
  Point a, b;
  HalfPlane left = left_of(a, b);

  [[nodiscard]] double depth(const Point& p) const { return left.depth(vec(p)); }
  /// Exactly on the line.
  [[nodiscard]] Point crossing(const Point& in, const Point& out) const {
    const double deep = depth(in), beyond = depth(out);
    Point p = beyond < 0 ? between(in, out, deep / (deep - beyond)) : out;
    (a.y == b.y ? p.y : p.x) = a.y == b.y ? a.y : a.x;
    return p;
  }
};

/// The parts of an outline kept in one go, from where it comes in over the line to where it leaves,
/// both crossings too.
std::vector<Polygon> chains_of(const Polygon& polygon, const SawLine& line) {
  const std::size_t n = polygon.size();
  const auto kept = [&](std::size_t i) { return line.depth(polygon[i % n]) > 0; };
  std::vector<Polygon> chains;
  std::size_t start = 0;
  while (start < n && kept(start)) ++start;
  for (std::size_t i = start; i < start + n; ++i) {
    const Point &here = polygon[i % n], &next = polygon[(i + 1) % n];
    if (!kept(i) && kept(i + 1)) chains.push_back({line.crossing(next, here)});
    if (kept(i + 1)) chains.back().push_back(next);
    if (kept(i) && !kept(i + 1)) chains.back().push_back(line.crossing(here, next));
  }
  return chains;
}

/// For each chain, the one that goes on where it leaves. Along the line the outline comes in and
/// leaves by turns; between the first two crossings the line is inside, and so on.
std::vector<std::size_t> successors(const std::vector<Polygon>& chains, const SawLine& line) {
  std::vector<std::pair<double, std::size_t>> enter, leave;
  for (std::size_t i = 0; i < chains.size(); ++i) {
    enter.emplace_back(-dot(line.left.way, vec(chains[i].front())), i);
    leave.emplace_back(-dot(line.left.way, vec(chains[i].back())), i);
  }
  std::sort(enter.begin(), enter.end());
  std::sort(leave.begin(), leave.end());
  std::vector<std::size_t> next(chains.size());
  for (std::size_t i = 0; i < chains.size(); ++i) next[leave[i].second] = enter[i].second;
  return next;
}

void add_part(Polygon part, std::vector<Polygon>& parts) {
  part.erase(std::unique(part.begin(), part.end()), part.end());
  while (part.size() > 1 && part.front() == part.back()) part.pop_back();
  if (part.size() >= 3 && signed_area(part) >= Length::mm(1) * Length::mm(1)) {
    parts.push_back(std::move(part));
  }
}

std::vector<Polygon> cut(const std::vector<Polygon>& polygons, const SawLine& line) {
  std::vector<Polygon> parts;
  for (const Polygon& polygon : polygons) {
    const auto outside = [&](const Point& p) { return line.depth(p) < 0; };
    if (std::none_of(polygon.begin(), polygon.end(), outside)) {
      parts.push_back(polygon);
      continue;
    }
    const std::vector<Polygon> chains = chains_of(polygon, line);
    const std::vector<std::size_t> next = successors(chains, line);
    std::vector<bool> done(chains.size());
    for (std::size_t i = 0; i < chains.size(); ++i) {
      Polygon part;
      for (std::size_t k = i; !done[k]; k = next[k]) {
        done[k] = true;
        part.insert(part.end(), chains[k].begin(), chains[k].end());
      }
      add_part(std::move(part), parts);
    }
  }
  return parts;
}

/// From each odd crossing of an outline to the next.
LineSpans between_pairs(std::vector<Length> crossings) {
  std::sort(crossings.begin(), crossings.end());
  LineSpans spans;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    spans.push_back({crossings[i], crossings[i + 1]});
  }
  return joined(std::move(spans));
}

}  // namespace

std::vector<Polygon> parts_inside(const Polygon& polygon, const Rectangle& rectangle) {
  const Polygon corners = corners_of(rectangle);
  std::vector<Polygon> parts{polygon};
  constexpr std::array<std::size_t, 4> sides{0, 2, 3, 1};  // along x first
  for (const std::size_t k : sides) parts = cut(parts, {corners[k], corners[(k + 1) % 4]});
  return parts;
}

Rectangle turned(const Rectangle& r) {
  return {{r.at.y, r.at.x}, r.depth, r.length};
}

Polygon turned(Polygon polygon) {
  for (Point& p : polygon) std::swap(p.x, p.y);
  std::reverse(polygon.begin(), polygon.end());
  return polygon;
}

Length total(const LineSpans& spans) {
  Length sum;
  for (const LineSpan& s : spans) sum += s.to - s.from;
  return sum;
}

LineSpans joined(LineSpans spans) {
  std::sort(spans.begin(), spans.end(), [](const LineSpan& a, const LineSpan& b) {
    return std::pair(a.from, a.to) < std::pair(b.from, b.to);
  });
  LineSpans result;
  for (const LineSpan& s : spans) {
    if (s.to <= s.from) continue;
    if (!result.empty() && s.from <= result.back().to) {
      result.back().to = std::max(result.back().to, s.to);
    } else {
      result.push_back(s);
    }
  }
  return result;
}

LineSpans common(const LineSpans& a, const LineSpans& b) {
  LineSpans result;
  for (auto i = a.begin(), j = b.begin(); i != a.end() && j != b.end();) {
    const LineSpan both{std::max(i->from, j->from), std::min(i->to, j->to)};
    if (both.from < both.to) result.push_back(both);
    i->to < j->to ? ++i : ++j;
  }
  return result;
}

LineSpans less(const LineSpans& a, const LineSpans& b) {
  LineSpans result;
  for (LineSpan rest : a) {
    for (const LineSpan& gone : b) {
      if (gone.to <= rest.from || rest.to <= gone.from) continue;
      if (rest.from < gone.from) result.push_back({rest.from, gone.from});
      rest.from = gone.to;
    }
    if (rest.from < rest.to) result.push_back(rest);
  }
  return result;
}

LineSpans inside(const Polygon& polygon, Length y) {
  std::vector<Length> crossings;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    if ((a.y <= y) == (b.y <= y)) continue;
    crossings.push_back(a.x + (b.x - a.x) * ((y - a.y) / (b.y - a.y)));
  }
  return between_pairs(std::move(crossings));
}

LineSpans beside(const Polygon& polygon, const Point& a, const Point& b, bool left) {
  constexpr double hair = 1e-6;  // metres: far below a tape, far above rounding
  const HalfPlane line = left_of(a, b);
  const double edge = left ? hair : -hair;
  std::vector<Length> crossings;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Point &c = polygon[i], &d = polygon[(i + 1) % polygon.size()];
    const double from = line.depth(vec(c)), to = line.depth(vec(d));
    if ((from <= edge) == (to <= edge)) continue;
    const Point crossing = between(c, d, std::clamp(from / (from - to), 0.0, 1.0));
    crossings.push_back(Length::m(dot(line.way, vec(a, crossing))));
  }
  return between_pairs(std::move(crossings));
}

}  // namespace strikeoff
