// SPDX-License-Identifier: MIT
#include "pour/region_outline.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <map>
#include <tuple>

namespace strikeoff {
namespace {

/// The outline of trapezoids that follow one another.
Polygon outline(const std::vector<Trapezoid>& chain, const Direction& u) {
  Polygon low, high;
  for (const Trapezoid& t : chain) {
    low.push_back(out_of_frame({t.u0, t.lo0}, u));
    low.push_back(out_of_frame({t.u1, t.lo1}, u));
    high.push_back(out_of_frame({t.u0, t.hi0}, u));
    high.push_back(out_of_frame({t.u1, t.hi1}, u));
  }
  low.insert(low.end(), high.rbegin(), high.rend());
  Polygon polygon;
  for (const Point& p : low) {
    while (polygon.size() > 1 &&
           signed_area({polygon[polygon.size() - 2], polygon.back(), p}) == Area{}) {
      polygon.pop_back();
    }
    if (polygon.empty() || !(polygon.back() == p)) polygon.push_back(p);
  }
  if (polygon.front() == polygon.back()) polygon.pop_back();
  return polygon;
}

/// Trapezoids in chains: each goes on where the one before it ended.
std::vector<std::vector<Trapezoid>> chains_of(const Region& region) {
  std::vector<std::vector<Trapezoid>> chains;
  std::map<std::tuple<double, double, double>, std::size_t> open;  // by where a chain ends
  for (const Trapezoid& t : region) {
    const auto before = open.find({t.u0, t.lo0, t.hi0});
    std::size_t chain = chains.size();
    if (before == open.end()) {
      chains.emplace_back();
    } else {
      chain = before->second;
      open.erase(before);
    }
    chains[chain].push_back(t);
    open[{t.u1, t.lo1, t.hi1}] = chain;
  }
  return chains;
}

bool is_along_axis(const Direction& u) {
  return u.x == 0 || u.y == 0;
}

}  // namespace

Corner in_frame(const Point& point, const Direction& u) {
  const double x = point.x.in_nm(), y = point.y.in_nm();
  return {x * u.x + y * u.y, y * u.x - x * u.y};
}

Point out_of_frame(const Corner& corner, const Direction& u) {
  return {Length::nm(corner.u * u.x - corner.v * u.y), Length::nm(corner.u * u.y + corner.v * u.x)};
}

Ring ring_of(const Polygon& polygon, const Direction& u) {
  const auto settle = [&](double x) { return is_along_axis(u) ? x : std::round(x * 64) / 64; };
  Ring ring;
  for (const Point& point : polygon) {
    const Corner corner = in_frame(point, u);
    ring.push_back({settle(corner.u), settle(corner.v)});
  }
  return ring;
}

std::vector<Polygon> outlines_of(const Region& region, const Direction& u) {
  std::vector<Polygon> outlines;
  for (const auto& chain : chains_of(region)) {
    Polygon polygon = outline(chain, u);
    if (polygon.size() >= 3) outlines.push_back(from_lower_left(std::move(polygon)));
  }
  return outlines;
}

Polygon from_lower_left(Polygon polygon) {
  const auto first = std::min_element(
      polygon.begin(), polygon.end(),
      [](const Point& a, const Point& b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  std::rotate(polygon.begin(), first, polygon.end());
  return polygon;
}

}  // namespace strikeoff
