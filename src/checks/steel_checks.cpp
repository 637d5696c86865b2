// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "loads/steel.h"

namespace strikeoff {
namespace {

bool has_fiber(const Job& job) {
  return std::any_of(job.additives.begin(), job.additives.end(),
                     [](const Additive& a) { return a.kind == AdditiveKind::fiber; });
}

const char* steel_name(ReinforcementKind kind) {
  return kind == ReinforcementKind::mesh ? "mesh" : "bars";
}

/// What holds a crack together: a word, or nothing when nothing does.
const char* what_holds(const CheckedSlab& one) {
  const ReinforcementKind kind = one.slab.reinforcement.kind;
  if (kind == ReinforcementKind::mesh || kind == ReinforcementKind::bar) return steel_name(kind);
  return has_fiber(one.job) ? "fiber" : nullptr;
}

/// Slabs on the ground are parted by joints instead.
std::optional<Check> reinforcement(const CheckedSlab& one) {
  const Rectangle box = bounding_box(one.plan.outline);
  const Length longest = std::max(box.length, box.depth);
  // Joint spacing of unreinforced slabs on ground, 24 to 36 times the thickness (ACI 302.1R); the
  // wider end, since a top on a base is less held back.
  const Length most = one.slab.thickness * 36;
  const bool fiber_without_dose =
      one.slab.reinforcement.kind == ReinforcementKind::fiber && !has_fiber(one.job);
  const bool is_long = one.slab.support == Support::base && longest > most;
  const char* holds = what_holds(one);
  if (!is_long && holds == nullptr && !fiber_without_dose) return std::nullopt;
  Check check = measured("reinforcement", "", longest, most, basis("reinforcement"));
  if (fiber_without_dose) {
    check.level = Level::caution;
    check.title = one.slab.name + ": the fiber has no dose";
    check.advice =
        "Give it under \"additives\" with \"kind\": \"fiber\": doses and cost come from there.";
  } else if (holds != nullptr) {
    check.title =
        fmt::format("{}: {} in the slab {} cracks together", one.slab.name, holds,
                    one.slab.reinforcement.kind == ReinforcementKind::bar ? "hold" : "holds");
  } else {
    check.level = Level::caution;
    check.title = one.slab.name + ": steel or fiber is advised";
    check.advice =
        "It is long for its thickness and may crack across: use mesh, bars or fiber as the bag's "
        "data sheet allows.";
  }
  return check;
}

/// The cover that is left above and below two layers of steel, or of the mesh's wires, that cross.
Length room_for_cover(const CheckedSlab& one, Length diameter) {
  return (one.plan.least_thickness - diameter * 2) / 2;
}

void judge_cover(const CheckedSlab& one, Length diameter, Check& check) {
  const Units units = one.job.units;
  const Length asked = one.plan.steel.cover, good = good_cover(one.job.mix);
  const Length room = room_for_cover(one, diameter);
  const Length cover = std::min(room, asked);
  const Length grain = one.job.mix.aggregate.value_or(Length::mm(0));
  const std::string name = one.slab.name + ": the " + steel_name(one.slab.reinforcement.kind);
  check.value = cover.in_mm();
  check.limit = std::max(asked, good).in_mm();
  check.unit = "mm";
  if (room <= grain) {
    check.level = Level::stop;
    check.title = name + ": no room for mix over and under it";
    check.advice = fmt::format(
        "{} of concrete and two layers of {}: use fiber, thinner steel or a thicker slab.",
        show(one.plan.least_thickness, units), show(diameter, units));
  } else if (room < asked) {
    check.level = Level::caution;
    check.title =
        fmt::format("{}: no room for {} of cover above and below", name, show(asked, units));
    check.advice = fmt::format(
        "{} is what two layers of {} leave in {}: it may rust and crack the top where it gets wet. "
        "Use fiber, steel that does not rust, or a thicker slab.",
        show(room, units), show(diameter, units), show(one.plan.least_thickness, units));
  } else if (asked < good) {
    check.level = Level::caution;
    check.title = fmt::format("{}: {} is little cover", name, show(asked, units));
    check.advice = fmt::format(
        "{} or more keeps it from rust indoors; outdoors and in the ground "
        "more: the local code says how much.",
        show(good, units));
  }
}

std::optional<Check> cover(const CheckedSlab& one) {
  const Reinforcement& given = one.slab.reinforcement;
  if (given.kind != ReinforcementKind::mesh && given.kind != ReinforcementKind::bar) {
    return std::nullopt;
  }
  Check check;
  check.code = "cover";
  check.title = fmt::format("{}: the slab is thick enough for {} and cover", one.slab.name,
                            steel_name(given.kind));
  check.basis = basis("cover");
  if (given.diameter) {
    judge_cover(one, *given.diameter, check);
    return check;
  }
  check.level = Level::caution;
  check.title = fmt::format("{}: whether the {} fit with their cover is not known", one.slab.name,
                            given.kind == ReinforcementKind::bar ? "bars" : "mesh's wires");
  check.advice = fmt::format(
      "Give the \"diameter\" under \"reinforcement\"; {} of cover above and below two layers of it "
      "have to fit in {}.",
      show(one.plan.steel.cover, one.job.units), show(one.plan.least_thickness, one.job.units));
  return check;
}

}  // namespace

std::vector<Check> steel_checks(const Job& job, const Plan& plan) {
  return for_each_slab(job, plan, [](const CheckedSlab& one, std::vector<Check>& checks) {
    add(reinforcement(one), checks);
    add(cover(one), checks);
  });
}

}  // namespace strikeoff
