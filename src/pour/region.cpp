// SPDX-License-Identifier: MIT
#include "pour/region.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <span>
#include <utility>

namespace strikeoff {
namespace {

/// A line from smaller to greater u; an edge of a ring that is not across the sweep.
struct Line {
  Corner from, to;
};

/// v on the line; exact at its ends, and everywhere on a line along u.
double at(const Line& line, double u) {
  if (u == line.to.u) return line.to.v;
  const double t = (u - line.from.u) / (line.to.u - line.from.u);
  return line.from.v + t * (line.to.v - line.from.v);
}

double area_of(const Trapezoid& t) {
  return (t.u1 - t.u0) * ((t.hi0 - t.lo0) + (t.hi1 - t.lo1)) / 2;
}

/// The part of a trapezoid between two cuts across it; cuts outside it count as its ends.
Trapezoid between(const Trapezoid& t, double a, double b) {
  const Line low{{t.u0, t.lo0}, {t.u1, t.lo1}}, high{{t.u0, t.hi0}, {t.u1, t.hi1}};
  const double u0 = std::max(a, t.u0), u1 = std::min(b, t.u1);
  return {u0, u1, at(low, u0), at(low, u1), at(high, u0), at(high, u1)};
}

/// The trapezoids between one pair of neighbouring corners.
struct Slice {
  double u0 = 0, u1 = 0;
  std::span<const Trapezoid> trapezoids;
  double area = 0;
};

std::vector<Slice> slices_of(const Region& region) {
  std::vector<Slice> slices;
  for (std::size_t i = 0; i < region.size();) {
    std::size_t end = i;
    double sum = 0;
    for (; end < region.size() && region[end].u0 == region[i].u0; ++end) {
      sum += area_of(region[end]);
    }
    slices.push_back({region[i].u0, region[i].u1, std::span(region).subspan(i, end - i), sum});
    i = end;
  }
  return slices;
}

/// The u up to which the slice holds this area. The area grows as d W0 + d^2 (W1 - W0)/(2 run)
/// for a width across of W0 to W1; solved for d in the form that does not cancel. Cuts next to a
/// corner go through it.
double reach(const Slice& slice, double wanted) {
  double across0 = 0, across1 = 0;
  for (const Trapezoid& t : slice.trapezoids) {
    across0 += t.hi0 - t.lo0;
    across1 += t.hi1 - t.lo1;
  }
  const double slope = (across1 - across0) / (slice.u1 - slice.u0);
  const double root = std::sqrt(std::max(0.0, across0 * across0 + 2 * slope * wanted));
  const double u = slice.u0 + 2 * wanted / (across0 + root);
  constexpr double snap = 1e-3;  // nm
  if (u < slice.u0 + snap) return slice.u0;
  return u > slice.u1 - snap ? slice.u1 : u;
}

/// Where to cut: between the parts, then the region's end.
std::vector<double> cuts(const std::vector<Slice>& slices, double whole,
                         const std::vector<double>& shares) {
  const double all = std::accumulate(shares.begin(), shares.end(), 0.0);
  std::vector<double> at_u;
  double share = 0, before = 0;
  std::size_t i = 0;
  for (std::size_t k = 0; k + 1 < shares.size(); ++k) {
    share += shares[k];
    const double target = whole * (share / all);
    while (i + 1 < slices.size() && before + slices[i].area < target) before += slices[i++].area;
    at_u.push_back(reach(slices[i], target - before));
  }
  at_u.push_back(slices.back().u1);
  return at_u;
}

std::vector<Line> lines_of(const std::vector<Ring>& rings) {
  std::vector<Line> lines;
  for (const Ring& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Corner &a = ring[i], &b = ring[(i + 1) % ring.size()];
      if (a.u < b.u) lines.push_back({a, b});
      if (b.u < a.u) lines.push_back({b, a});
    }
  }
  return lines;
}

std::vector<double> corners_along(const std::vector<Ring>& rings) {
  std::vector<double> u;
  for (const Ring& ring : rings) {
    for (const Corner& corner : ring) u.push_back(corner.u);
  }
  std::sort(u.begin(), u.end());
  u.erase(std::unique(u.begin(), u.end()), u.end());
  return u;
}

}  // namespace

double area(const Region& region) {
  double sum = 0;
  for (const Trapezoid& t : region) sum += area_of(t);
  return sum;
}

Region region_of(const std::vector<Ring>& rings) {
  const std::vector<Line> lines = lines_of(rings);
  const std::vector<double> corners = corners_along(rings);
  Region region;
  for (std::size_t k = 0; k + 1 < corners.size(); ++k) {
    const double a = corners[k], b = corners[k + 1];
    std::vector<std::pair<double, double>> crossings;  // v at a and at b
    for (const Line& line : lines) {
      if (line.from.u <= a && line.to.u >= b) crossings.emplace_back(at(line, a), at(line, b));
    }
    std::sort(crossings.begin(), crossings.end(),
              [](const auto& p, const auto& q) { return p.first + p.second < q.first + q.second; });
    const std::size_t start = region.size();
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      const auto [lo0, lo1] = crossings[i];
      const auto [hi0, hi1] = crossings[i + 1];
      // Rings side by side leave no seam.
      if (region.size() > start && region.back().hi0 == lo0 && region.back().hi1 == lo1) {
        region.back().hi0 = hi0;
        region.back().hi1 = hi1;
      } else {
        region.push_back({a, b, lo0, lo1, hi0, hi1});
      }
    }
  }
  return region;
}

Region between(const Region& region, double a, double b) {
  // Trapezoids are in order of u0; where they end they are in order too, slice by slice.
  const auto first = std::partition_point(region.begin(), region.end(),
                                          [&](const Trapezoid& t) { return t.u1 <= a; });
  Region part;
  if (b <= a) return part;
  for (auto t = first; t != region.end() && t->u0 < b; ++t) part.push_back(between(*t, a, b));
  return part;
}

std::vector<Region> cut_at(const Region& region, const std::vector<double>& at) {
  std::vector<Region> parts;
  double a = region.front().u0;
  for (const double b : at) {
    parts.push_back(between(region, a, b));
    a = std::max(a, b);
  }
  parts.push_back(between(region, a, region.back().u1));
  return parts;
}

std::vector<Region> cut_by_area(const Region& region, const std::vector<double>& shares) {
  std::vector<double> at = cuts(slices_of(region), area(region), shares);
  at.pop_back();
  return cut_at(region, at);
}

std::vector<std::pair<double, double>> across(const Region& region, double u) {
  std::vector<std::pair<double, double>> before, after, both;
  for (const Trapezoid& t : region) {
    if (t.u0 > u) break;
    if (t.u1 < u) continue;
    const Trapezoid here = between(t, u, u);
    if (t.u0 < u) before.emplace_back(here.lo0, here.hi0);
    if (t.u1 > u) after.emplace_back(here.lo0, here.hi0);
  }
  std::sort(before.begin(), before.end());
  std::sort(after.begin(), after.end());
  for (std::size_t i = 0, k = 0; i < before.size() && k < after.size();) {
    const double lo = std::max(before[i].first, after[k].first);
    const double hi = std::min(before[i].second, after[k].second);
    if (lo < hi) {
      if (!both.empty() && both.back().second == lo) {
        both.back().second = hi;
      } else {
        both.emplace_back(lo, hi);
      }
    }
    if (before[i].second < after[k].second) {
      ++i;
    } else {
      ++k;
    }
  }
  return both;
}

double width_after(const Region& region, double u) {
  double sum = 0;
  for (const Trapezoid& t : region) {
    if (t.u0 > u) break;
    if (t.u1 <= u) continue;
    const Trapezoid here = between(t, u, u);
    sum += here.hi0 - here.lo0;
  }
  return sum;
}

}  // namespace strikeoff
