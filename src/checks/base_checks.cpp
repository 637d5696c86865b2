// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <cmath>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "core/vec.h"

namespace strikeoff {
namespace {

/// More than this is better put right at the base than poured (assumption).
constexpr Length level_enough = Length::mm(6);
/// Diagonals that differ by less are not seen (assumption).
constexpr Length square_enough = Length::mm(6);

/// "12 in right and 3 in back from the base's zero point".
std::string place(const Point& at, Units units) {
  const auto way = [&](Length by, const char* forwards, const char* backwards) {
    return fmt::format("{} {}", show(Length::nm(std::abs(by.in_nm())), units),
                       by < Length{} ? backwards : forwards);
  };
  return fmt::format("{} and {} from the base's zero point", way(at.x, "right", "left"),
                     way(at.y, "back", "forward"));
}

std::optional<Check> base_level(const Slab& slab, const SlabPlan& plan, Units units) {
  if (slab.levels.empty()) return std::nullopt;
  Check check = measured("base-level", slab.name + ": the base is level enough", plan.base_low,
                         level_enough, basis("base-level"));
  if (plan.base_low <= level_enough) return check;
  check.level = Level::caution;
  check.title =
      fmt::format("{}: the base is {} out of level", slab.name, show(plan.base_low, units));
  check.advice = slab.support == Support::ground ? "Fill and tamp the bed level"
                 : slab.panel                    ? "Shim the base or the panel level"
                                                 : "Shim the base level";
  if (plan.level_correction > Volume{}) {
    check.advice += fmt::format(", or pour the hollow: the plan counts {} for it",
                                show_concrete(plan.level_correction, units));
  }
  check.advice += fmt::format(". It is lowest {}; the strips there are taller.",
                              place(plan.base_low_at, units));
  return check;
}

std::optional<Check> closing_error(const Slab& slab, Units units) {
  if (!slab.closing) return std::nullopt;
  Check check = measured("closing-error",
                         fmt::format("{}: the walk round the base ends {} from its start",
                                     slab.name, show(slab.closing->by, units)),
                         slab.closing->by, slab.closing->allowed, basis("closing-error"));
  if (slab.closing->by > slab.closing->allowed) {
    check.level = Level::caution;
    check.advice = fmt::format("{} is the most that a tape leaves: measure the runs again.",
                               show(slab.closing->allowed, units));
  }
  return check;
}

std::optional<Check> out_of_square(const Slab& slab, Units units) {
  if (!slab.diagonal || slab.base.size() != 4) return std::nullopt;
  const auto diagonal = [&](std::size_t k) { return distance(slab.base[k], slab.base[k + 2]); };
  const Length apart = Length::nm(std::abs((diagonal(0) - diagonal(1)).in_nm()));
  Check check = measured(
      "out-of-square", slab.name + ": the base is square enough", apart, square_enough,
      basis("out-of-square",
            fmt::format("as measured, they miss each other by {} ({} allowed)",
                        show(slab.diagonal->by, units), show(slab.diagonal->allowed, units))));
  if (apart <= square_enough) return check;
  check.level = Level::caution;
  check.title = fmt::format("{}: the base is out of square, its diagonals differ by {}", slab.name,
                            show(apart, units));
  check.advice =
      "The slab follows the base: set each corner of the forms by the base, not by a square, and "
      "cut their ends to the angles of the cut list.";
  return check;
}

/// Water that runs to a wall stands in the joint there.
std::optional<Check> fall_to_wall(const Slab& slab) {
  if (!slab.fall || !slab.sides[slab.fall->side].wall) return std::nullopt;
  Check check;
  check.code = "fall-to-wall";
  check.level = Level::caution;
  check.title = slab.name + ": the top falls towards a wall";
  check.advice = "Water will stand in the joint there: let it fall to a free side.";
  check.basis = basis("fall-to-wall");
  return check;
}

}  // namespace

std::vector<Check> base_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const std::size_t first = checks.size();
    add(base_level(job.slabs[i], plan.slabs[i], job.units), checks);
    add(closing_error(job.slabs[i], job.units), checks);
    add(out_of_square(job.slabs[i], job.units), checks);
    add(fall_to_wall(job.slabs[i]), checks);
    set_about(job.slabs[i].name, first, checks);
  }
  return checks;
}

}  // namespace strikeoff
