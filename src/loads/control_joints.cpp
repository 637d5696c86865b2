// SPDX-License-Identifier: MIT
#include "loads/control_joints.h"

#include <algorithm>
#include <cmath>

namespace strikeoff {
namespace {

int panels_along(Length side, Length most) {
  return std::max(1, static_cast<int>(std::ceil(side / most - 1e-9)));
}

std::vector<Length> places(Length side, int panels) {
  std::vector<Length> result;
  for (int i = 1; i < panels; ++i) result.push_back(side * (static_cast<double>(i) / panels));
  return result;
}

}  // namespace

double joint_factor(const Mix& mix) {
  return mix.aggregate.value_or(Length{}) < Length::inches(0.75) ? 24 : 30;
}

ControlJoints control_joints(const Slab& slab, const SlabPlan& plan, const Mix& mix) {
  ControlJoints joints;
  joints.apart = std::min(slab.thickness * joint_factor(mix), most_joint_spacing);
  joints.depth = slab.thickness / 4;
  const Rectangle box = bounding_box(plan.outline);
  int across = panels_along(box.length, joints.apart);
  int along = panels_along(box.depth, joints.apart);
  // The longer side of the panels is cut until no panel is too long for its width; a short one has
  // no need (assumption: half the spacing).
  const auto length = [&] { return box.length / across; };
  const auto depth = [&] { return box.depth / along; };
  const auto too_long = [&](Length longer, Length shorter) {
    return longer > joints.apart / 2 && longer > shorter * (longest_panel + 1e-9);
  };
  while (too_long(length(), depth())) ++across;
  while (too_long(depth(), length())) ++along;
  joints.from_left = places(box.length, across);
  joints.from_front = places(box.depth, along);
  return joints;
}

}  // namespace strikeoff
