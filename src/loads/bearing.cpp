// SPDX-License-Identifier: MIT
#include "loads/bearing.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/outlines.h"
#include "core/vec.h"
#include "slab/heights.h"

namespace strikeoff {
namespace {

/// A place that carries, and the support it belongs to.
struct SupportPoint {
  Point at;
  std::size_t support = 0;
};

// Points closer together than this gain nothing (assumption).
constexpr Length least_space = Length::mm(25);
constexpr Length same_place = Length::mm(0.001);

/// The middles of equal pieces of each partition. Partitions of one length have their points at the
/// same places along it.
std::vector<SupportPoint> support_points(const Slab& slab) {
  std::vector<SupportPoint> points;
  for (const Point& leg : slab.legs) points.push_back({leg, points.size()});
  Length total;
  for (const Partition& line : slab.partitions) total += distance(line.from, line.to);
  const double room = most_support_points - static_cast<double>(slab.legs.size()) -
                      static_cast<double>(slab.partitions.size());
  const Length space = std::max(least_space, total / room);
  for (std::size_t k = 0; k < slab.partitions.size(); ++k) {
    const Partition& line = slab.partitions[k];
    const int pieces = static_cast<int>(std::ceil(distance(line.from, line.to) / space));
    for (int i = 0; i < pieces; ++i) {
      const Point at = between(line.from, line.to, (i + 0.5) / pieces);
      // Where two cross, the first has the place.
      const bool taken = std::any_of(points.begin(), points.end(), [&](const SupportPoint& other) {
        return distance(other.at, at) < same_place;
      });
      if (!taken) points.push_back({at, slab.legs.size() + k});
    }
  }
  return points;
}

/// The line midway between two places, the first on its left.
struct MidLine {
  Point a, b;
};

MidLine midway(const Point& near, const Point& far) {
  const Point a{(near.x + far.x) / 2, (near.y + far.y) / 2};
  return {a, {a.x - (far.y - near.y), a.y + (far.x - near.x)}};
}

Length farthest(const Outline& region, const Point& from) {
  Length most;
  for (const Point& corner : corners_of(bounding_box(region))) {
    most = std::max(most, distance(corner, from));
  }
  return most;
}

/// The lines that bound what of `whole` is nearest to one of the points: each of them was needed
/// when it was met, going outwards. Others farther than twice the reach of what is left cannot
/// take any of it.
std::vector<MidLine> cell_lines(const Outline& whole, const std::vector<SupportPoint>& points,
                                std::size_t k) {
  const Point& here = points[k].at;
  std::vector<std::pair<Length, std::size_t>> others;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i != k) others.emplace_back(distance(points[i].at, here), i);
  }
  std::sort(others.begin(), others.end());
  std::vector<MidLine> lines;
  Outline rest = whole;
  for (const auto& [away, i] : others) {
    if (rest.empty() || away > 2 * farthest(rest, here)) break;
    lines.push_back(midway(here, points[i].at));
    rest = clipped(rest, lines.back().a, lines.back().b);
  }
  return lines;
}

Outline cut_by(Outline region, const std::vector<MidLine>& lines) {
  for (const MidLine& line : lines) {
    if (region.empty()) break;
    region = clipped(region, line.a, line.b);
  }
  return region;
}

/// Concrete and area over a part of the slab that straight lines cut out of it: `measure_slab`'s
/// sum.
class Shares {
 public:
  Shares(const Slab& slab, const SlabPlan& plan, Length strip)
      : slab_(slab), plan_(plan), heights_(slab) {
    if (has_apron(slab)) inner_ = inside_aprons(slab, strip);
  }

  void add(const std::vector<MidLine>& lines, Area& area, Volume& concrete) const {
    const Outline part = cut_by(plan_.edge, lines);
    if (part.empty()) return;
    area += strikeoff::area(part);
    concrete += over(part) + apron(part);
    for (const OpeningPlan& opening : plan_.openings) {
      const Outline hole = cut_by(opening.edge, lines);
      if (hole.empty()) continue;
      area -= strikeoff::area(hole);
      concrete -= over(hole);
    }
  }

 private:
  [[nodiscard]] Volume over(const Outline& part) const {
    Volume volume = strikeoff::area(part) * slab_.thickness;
    if (slab_.panel) {
      volume -= Area::from_si(common_moments(part, plan_.panel).one) * slab_.panel->thickness;
    }
    if (!heights_.are_none()) volume += heights_.under(part) + heights_.over(part);
    return volume;
  }
  [[nodiscard]] Volume apron(const Outline& part) const {
    if (inner_.empty()) return {};
    return (strikeoff::area(part) - Area::from_si(common_moments(part, inner_).one)) *
           slab_.apron_depth;
  }

  const Slab& slab_;
  const SlabPlan& plan_;
  Heights heights_;
  Polygon inner_;
};

}  // namespace

std::vector<Bearing> bearings(const Slab& slab, const SlabPlan& plan, Length strip) {
  std::vector<Bearing> result;
  if (slab.support == Support::ground) return result;
  for (std::size_t k = 0; k < slab.legs.size(); ++k) {
    result.push_back({"leg " + std::to_string(k + 1), {}, {}, {}});
  }
  for (std::size_t k = 0; k < slab.partitions.size(); ++k) {
    result.push_back({"partition " + std::to_string(k + 1), {}, {}, {}});
  }
  const std::vector<SupportPoint> points = support_points(slab);
  const Shares shares(slab, plan, strip);
  std::vector<Volume> concrete(result.size());
  for (std::size_t k = 0; k < points.size(); ++k) {
    const std::size_t support = points[k].support;
    shares.add(cell_lines(plan.edge, points, k), result[support].area, concrete[support]);
  }
  for (std::size_t i = 0; i < result.size(); ++i) {
    result[i].mass = plan.mass * (concrete[i] / plan.concrete);
  }
  return result;
}

}  // namespace strikeoff
