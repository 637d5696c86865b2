// SPDX-License-Identifier: MIT
#include "slab/line_cut.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "core/vec.h"

namespace strikeoff {
namespace {

/// One line of a saw along x or y, and the side of it that is kept.
struct SawLine {
  bool along_x;
  Length at;
  bool keep_greater;

  /// How deep a point lies in the side kept.
  [[nodiscard]] Length depth(const Point& p) const {
    const Length d = (along_x ? p.y : p.x) - at;
    return keep_greater ? d : -d;
  }
  /// Rising so that the part kept lies on the right of the way.
  [[nodiscard]] Length way(const Point& p) const {
    const Length w = along_x ? p.x : -p.y;
    return keep_greater ? -w : w;
  }
  [[nodiscard]] Point crossing(const Point& in, const Point& out) const {
    const Length deep = depth(in), beyond = depth(out);
    Point p = out;
    if (beyond < Length{}) {
      const double t = deep / (deep - beyond);
      p = {in.x + (out.x - in.x) * t, in.y + (out.y - in.y) * t};
    }
    (along_x ? p.y : p.x) = at;
    return p;
  }
};

/// Corners kept in one go, from where the outline comes in over the line to where it leaves.
struct Chain {
  Polygon corners;  // both crossings too
};

std::vector<Chain> chains_of(const Polygon& polygon, const SawLine& line) {
  const std::size_t n = polygon.size();
  const auto kept = [&](std::size_t i) { return line.depth(polygon[i % n]) > Length{}; };
  std::vector<Chain> chains;
  std::size_t start = 0;
  while (start < n && kept(start)) ++start;
  for (std::size_t i = start; i < start + n; ++i) {
    const Point &here = polygon[i % n], &next = polygon[(i + 1) % n];
    if (!kept(i) && kept(i + 1)) chains.push_back({{line.crossing(next, here)}});
    if (kept(i + 1)) chains.back().corners.push_back(next);
    if (kept(i) && !kept(i + 1)) chains.back().corners.push_back(line.crossing(here, next));
  }
  return chains;
}

/// For each chain, the one that goes on where it leaves. Along the line the outline comes in and
/// leaves by turns; between the first two crossings the line is inside, and so on.
std::vector<std::size_t> successors(const std::vector<Chain>& chains, const SawLine& line) {
  std::vector<std::pair<Length, std::size_t>> enter, leave;
  for (std::size_t i = 0; i < chains.size(); ++i) {
    enter.emplace_back(line.way(chains[i].corners.front()), i);
    leave.emplace_back(line.way(chains[i].corners.back()), i);
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
    const auto outside = [&](const Point& p) { return line.depth(p) < Length{}; };
    if (std::none_of(polygon.begin(), polygon.end(), outside)) {
      parts.push_back(polygon);
      continue;
    }
    const std::vector<Chain> chains = chains_of(polygon, line);
    const std::vector<std::size_t> next = successors(chains, line);
    std::vector<bool> done(chains.size());
    for (std::size_t i = 0; i < chains.size(); ++i) {
      Polygon part;
      for (std::size_t k = i; !done[k]; k = next[k]) {
        done[k] = true;
        part.insert(part.end(), chains[k].corners.begin(), chains[k].corners.end());
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

std::vector<Polygon> parts_inside(const Polygon& polygon, const Rectangle& r) {
  std::vector<Polygon> parts = cut({polygon}, {true, r.at.y, true});
  parts = cut(parts, {true, r.at.y + r.depth, false});
  parts = cut(parts, {false, r.at.x, true});
  return cut(parts, {false, r.at.x + r.length, false});
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
