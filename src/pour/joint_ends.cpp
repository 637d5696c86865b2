// SPDX-License-Identifier: MIT
#include "pour/joint_ends.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <map>
#include <string>

#include "core/format.h"
#include "core/outlines.h"

namespace strikeoff {
namespace {

struct Found {
  double away = 0, along = 0, length = 0;  // nm
  std::size_t side = 0;
};

/// `facing`: of the sides that have a place straight across from it.
Found nearest_side(const Polygon& polygon, const Point& p, bool facing) {
  Found best{HUGE_VAL, 0, 0, 0};
  for (std::size_t k = 0; k < polygon.size(); ++k) {
    const Point &a = polygon[k], &b = polygon[(k + 1) % polygon.size()];
    const double x = (b.x - a.x).in_nm(), y = (b.y - a.y).in_nm(), length = std::hypot(x, y);
    const double px = (p.x - a.x).in_nm(), py = (p.y - a.y).in_nm();
    const double at = (px * x + py * y) / length, along = std::clamp(at, 0.0, length);
    const double away = std::hypot(px - along * x / length, py - along * y / length);
    const bool beside = facing && (at != along || px * y > py * x);  // past its end, or behind it
    if (!beside && away < best.away) best = {away, along, length, k};
  }
  return best;
}

JointEnd end_on(const Found& found, double inward, std::size_t sides,
                const std::function<std::string(std::size_t)>& name) {
  const bool from_start = found.along <= found.length / 2;
  const std::size_t beside = (found.side + (from_start ? sides - 1 : 1)) % sides;
  return {name(found.side), name(beside),
          Length::nm(from_start ? found.along : found.length - found.along), Length::nm(inward)};
}

/// How far inside the slab, off its edge and those of its openings; 0 on one.
Length inside(const SlabPlan& shape, const Point& place) {
  constexpr Length beside = Length::mm(0.1);  // arcs are drawn by chords
  Length away = distance(place, shape.outline);
  for (const OpeningPlan& opening : shape.openings) {
    away = std::min(away, distance(place, chords(opening.edge, drawn_within)));
  }
  return away < beside ? Length{} : away;
}

}  // namespace

JointEnd joint_end(const Slab& slab, const SlabPlan& shape, const Point& place) {
  const Polygon sharp = sharp_outline(slab);
  // Inside the slab it is measured from its sides alone.
  if (inside(shape, place) > Length{}) {
    const Found best = nearest_side(sharp, place, true);
    return end_on(best, best.away, sharp.size(),
                  [&](std::size_t k) { return the_side(slab.sides[k].name); });
  }
  Found best = nearest_side(sharp, place, false);
  std::size_t opening = shape.openings.size();
  for (std::size_t i = 0; i < shape.openings.size(); ++i) {
    const Found found = nearest_side(corners_of(shape.openings[i].box), place, false);
    if (found.away >= best.away) continue;
    best = found;
    opening = i;
  }
  if (opening == shape.openings.size()) {
    return end_on(best, 0, sharp.size(),
                  [&](std::size_t k) { return the_side(slab.sides[k].name); });
  }
  // Seen from inside the opening its corners run as the slab's do.
  static constexpr const char* sides[] = {"front", "right", "back", "left"};
  const std::string& given = slab.openings[opening].name;
  const std::string name = given.empty() ? "opening" : given;
  return end_on(best, 0, 4, [&](std::size_t k) { return name + "'s " + sides[k]; });
}

void name_ends(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
               std::vector<Joint>& joints) {
  std::map<std::string, std::size_t> by_name;
  for (std::size_t k = 0; k < slabs.size(); ++k) by_name.try_emplace(slabs[k].name, k);
  for (Joint& joint : joints) {
    const auto found = by_name.find(joint.slab);
    if (joint.line.empty() || found == by_name.end()) continue;
    const Slab& slab = slabs[found->second];
    const SlabPlan& shape = shapes[found->second];
    joint.ends = {joint_end(slab, shape, joint.line.front()),
                  joint_end(slab, shape, joint.line.back())};
  }
}

}  // namespace strikeoff
