// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "loads/control_joints.h"

namespace strikeoff {
namespace {

// Assumptions, after common practice for floors: thinner slabs curl, and longer panels show it.
constexpr Length thin_on_ground = Length::mm(100);
constexpr double long_for_curling = 30;  // thicknesses

/// "2 joints from front to back, 8 ft apart".
std::string joints_one_way(const std::vector<Length>& places, const char* way, Units units) {
  return fmt::format("{} {}, every {}", count(static_cast<int>(places.size()), "joint", "joints"),
                     way, show(places.front(), units));
}

std::string where_to_cut(const ControlJoints& joints, Units units) {
  std::string text;
  if (!joints.from_left.empty()) {
    text = joints_one_way(joints.from_left, "from front to back", units) + " from the left";
  }
  if (!joints.from_front.empty()) {
    text += (text.empty() ? "" : "; ") +
            joints_one_way(joints.from_front, "from left to right", units) + " from the front";
  }
  return text;
}

bool has_inner_corner(const Slab& slab) {
  for (std::size_t k = 0; k < slab.base.size(); ++k) {
    if (!is_convex_corner(slab.base, k)) return true;
  }
  return false;
}

std::optional<Check> joint_spacing(const CheckedSlab& one) {
  const Rectangle box = bounding_box(one.plan.outline);
  const ControlJoints& joints = *one.plan.control_joints;
  const Units units = one.job.units;
  Check check = measured("joint-spacing", one.slab.name + ": small enough to do without joints",
                         std::max(box.length, box.depth), joints.apart, basis("joint-spacing"));
  const bool inner = has_inner_corner(one.slab);
  if (joints.none() && !inner) return check;
  check.level = Level::caution;
  check.title = one.slab.name + ": it may crack across, joints say where";
  if (!joints.none()) {
    check.advice = fmt::format("Saw or tool {}, {} deep, the same day.",
                               where_to_cut(joints, units), show(joints.depth, units));
  }
  if (inner) {
    check.advice += check.advice.empty() ? "" : " ";
    check.advice += fmt::format("Let a joint {} deep run into each inner corner of the outline.",
                                show(joints.depth, units));
  }
  return check;
}

std::optional<Check> curling(const CheckedSlab& one) {
  const Rectangle box = bounding_box(one.plan.outline);
  const Length longest = std::max(box.length, box.depth);
  Check check = measured("curling", one.slab.name + ": thick and short enough not to curl much",
                         longest, one.slab.thickness * long_for_curling, basis("curling"));
  if (one.slab.thickness < thin_on_ground && longest > one.slab.thickness * long_for_curling) {
    check.level = Level::caution;
    check.title = one.slab.name + ": thin and long, its edges may curl up as the top dries";
    check.advice =
        "Keep the water at the low end, keep the top wet and covered for all of the cure, and let "
        "it dry slowly; closer joints or a thicker slab curl less.";
  }
  return check;
}

}  // namespace

std::vector<Check> ground_checks(const Job& job, const Plan& plan) {
  return for_each_slab(job, plan, [](const CheckedSlab& one, std::vector<Check>& checks) {
    if (!one.plan.control_joints) return;
    add(joint_spacing(one), checks);
    add(curling(one), checks);
  });
}

}  // namespace strikeoff
