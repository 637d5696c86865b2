// SPDX-License-Identifier: MIT
#include "pour/courses.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "pour/joint_corners.h"
#include "pour/slab_ends.h"
#include "pour/sweep_field.h"

namespace strikeoff {
namespace {

std::vector<Polygon> holes_of(const SlabPlan& shape) {
  std::vector<Polygon> holes;
  for (const OpeningPlan& opening : shape.openings) {
    holes.push_back(chords(opening.edge, drawn_within));
  }
  return holes;
}

bool runs_along_x(const SlabPlan& shape) {
  const Rectangle box = bounding_box(shape.outline);
  return box.length >= box.depth;
}

/// About so many nodes: fine enough for fronts that are pulled straight in the end.
constexpr double wanted_nodes = 600;

struct EndPair {
  std::size_t a = 0, b = 0;
  Length length;
};

std::vector<EndPair> pairs_of(const std::vector<SlabEnd>& ends) {
  std::vector<EndPair> pairs;
  for (std::size_t b = 0; b < ends.size(); ++b) {
    for (std::size_t a = 0; a < b; ++a) {
      if (!are_adjacent(ends[a], ends[b])) {
        pairs.push_back({a, b, ends[a].length + ends[b].length});
      }
    }
  }
  std::stable_sort(pairs.begin(), pairs.end(), [](const EndPair& p, const EndPair& q) {
    return p.length < q.length - Length::mm(0.001);
  });
  return pairs;
}

/// From the left, else from the front.
bool comes_first(const SlabEnd& a, const SlabEnd& b) {
  const double apart = (a.middle.x - b.middle.x).in_mm();
  return std::abs(apart) > 1 ? apart < 0 : a.middle.y < b.middle.y;
}

}  // namespace

std::unique_ptr<Course> plain_course(const SlabPlan& shape, const SlabVolume& volume) {
  return straight_course(shape.outline, holes_of(shape), runs_along_x(shape), volume);
}

bool is_plain(const SlabPlan& shape) {
  return shape.openings.empty() && shape.outline.size() == 4 && is_right_angled(shape.outline);
}

std::vector<std::unique_ptr<Course>> other_courses(const Slab& slab, const SlabPlan& shape,
                                                   const SlabVolume& volume, std::size_t most) {
  const Length spacing = Length::m(std::sqrt(shape.top_area.si() / wanted_nodes));
  const std::vector<Polygon> holes = holes_of(shape);
  std::vector<std::unique_ptr<Course>> courses;
  const auto mesh = std::make_shared<const WalkedMesh>(mesh_of(shape.outline, holes, spacing));
  if (!mesh->is_sound || mesh->mesh.rings.empty() || most == 0) return courses;

  const std::vector<Point> corners = crack_corners(shape);
  const Length clearance = corner_clearance(shape);
  const SweepFields fields(mesh->mesh);
  const std::vector<SlabEnd> ends = ends_of(slab, shape, mesh->mesh);
  const std::vector<EndPair> pairs = pairs_of(ends);
  // About a quarter of them from one end only.
  const std::size_t alone = std::min(ends.size(), (most + 2) / 4);
  for (std::size_t i = 0; i < pairs.size() && courses.size() + alone < most; ++i) {
    const bool ahead = comes_first(ends[pairs[i].a], ends[pairs[i].b]);
    const SlabEnd& start = ends[ahead ? pairs[i].a : pairs[i].b];
    const SlabEnd& end = ends[ahead ? pairs[i].b : pairs[i].a];
    courses.push_back(
        field_course(mesh, fields.harmonic(start.nodes, end.nodes), volume, corners, clearance));
    courses.back()->from = start.name;
    courses.back()->towards = end.name;
  }
  for (std::size_t i = 0; i < alone; ++i) {
    courses.push_back(
        field_course(mesh, fields.distance(ends[i].nodes), volume, corners, clearance));
    courses.back()->from = ends[i].name;
    courses.back()->towards = "the farthest places";
  }
  if (courses.size() < most) {
    courses.push_back(straight_course(shape.outline, holes, !runs_along_x(shape), volume));
  }
  return courses;
}

}  // namespace strikeoff
