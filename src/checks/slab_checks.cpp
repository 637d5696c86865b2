// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"

namespace strikeoff {
namespace {

/// The space between the panel and the slab's edge somewhere.
struct Slot {
  Length width;  // negative: the panel sticks out
  std::string where;
  bool corner = false;
};

/// The slot at a rounded or cut-off corner; at a wall only where the panel sticks out, for there is
/// no slot along a wall.
std::optional<Slot> corner_slot(const CheckedSlab& one, const CornerCut& cut) {
  const auto& sides = one.slab.sides;
  const Point& panel = one.plan.panel[cut.corner];
  const Length away = distance(panel, one.plan.outline);
  const Slot slot{contains(one.plan.outline, panel) ? away : -away,
                  fmt::format("corner {}", sides[cut.corner].corner), true};
  const bool wall =
      sides[cut.corner].wall || sides[(cut.corner + sides.size() - 1) % sides.size()].wall;
  if (wall && slot.width >= Length{}) return std::nullopt;
  return slot;
}

/// The narrowest first: that of the sides, and every corner's. None without a panel, or when every
/// side meets a wall.
std::vector<Slot> slots(const CheckedSlab& one) {
  if (!one.slab.panel) return {};
  const auto slot_of = [](const Side& side) { return side.overhang - side.panel_overhang; };
  const Side* side = least_side(one.slab, slot_of);
  if (side == nullptr) return {};
  std::vector<Slot> found{{slot_of(*side), "the " + side->name}};
  for (const CornerCut& cut : one.slab.corner_cuts) {
    if (const auto slot = corner_slot(one, cut)) found.push_back(*slot);
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const Slot& a, const Slot& b) { return a.width < b.width; });
  return found;
}

/// "It is 6 mm, and 8 mm at corner 3: set the panel back to leave 12 mm." `narrow`: how many of
/// the slots are too narrow.
std::string widen(const std::vector<Slot>& slots, std::size_t narrow, Length good, Units units) {
  const Slot& least = slots.front();
  std::string text = least.width < Length{} ? "The panel sticks out of the slab there"
                                            : "It is " + show(least.width, units);
  bool corner = least.corner;
  for (std::size_t k = 1; k < narrow; ++k) {
    text += slots[k].width < Length{}
                ? fmt::format(", and at {}", slots[k].where)
                : fmt::format(", and {} at {}", show(slots[k].width, units), slots[k].where);
    corner = corner && slots[k].corner;
  }
  return fmt::format("{}: {}set the panel back (its \"overhang\") to leave {}.", text,
                     corner ? "round or cut the slab's corner less, or " : "", show(good, units));
}

std::optional<Check> slot_width(const CheckedSlab& one) {
  const std::vector<Slot> all = slots(one);
  if (all.empty()) return std::nullopt;
  const Length slot = all.front().width;
  const std::string& where = all.front().where;
  const Length grain = one.job.mix.aggregate.value_or(Length{});
  // 3 times the aggregate for free flow, 1.5 times as the least clear gap: ACI 301/318 spacing
  // rules, from memory; 12 mm and 5 mm are assumptions.
  const Length good = std::max(Length::mm(12), grain * 3);
  const Length least = std::max(Length::mm(5), grain * 1.5);
  Check check = measured(
      "slot-width", fmt::format("{}: the mix can fill the edge beside the panel", one.slab.name),
      slot, good, basis("slot-width"));
  if (slot < least) {
    check.level = Level::stop;
    check.limit = least.in_mm();
    check.title = fmt::format("{}: the slot at {} is too narrow to fill", one.slab.name, where);
    const auto narrow =
        std::count_if(all.begin(), all.end(), [&](const Slot& each) { return each.width < least; });
    check.advice = widen(all, static_cast<std::size_t>(narrow), good, one.job.units);
  } else if (slot < good) {
    check.level = Level::caution;
    check.title = fmt::format("{}: the slot at {} is narrow", one.slab.name, where);
    check.advice = fmt::format(
        "It is {}, {} would fill by itself: use a fine, flowing mix and work "
        "it in along the edge.",
        show(slot, one.job.units), show(good, one.job.units));
  } else if (!one.job.mix.aggregate) {
    check.level = Level::caution;
    check.title = fmt::format("{}: whether the grains pass the slot is not known", one.slab.name);
    check.advice = fmt::format("The slot is {}: the largest grains should be under a third of it.",
                               show(slot, one.job.units));
  }
  return check;
}

Check thin_slab(const CheckedSlab& one) {
  const Length thickness = one.plan.least_thickness;
  const Length label = one.job.mix.least_thickness.value_or(Length{});
  const Length good =
      std::max({Length::mm(25), one.job.mix.aggregate.value_or(Length{}) * 3, label});
  const std::string over = one.slab.panel ? " over the panel" : "";
  Check check = measured("thin-slab", one.slab.name + ": thick enough" + over, thickness, good,
                         basis("thin-slab"));
  if (thickness < label) {
    check.level = Level::stop;
    check.limit = label.in_mm();
    check.title = one.slab.name + ": thinner than the bag allows";
    check.advice =
        fmt::format("Only {}{}, the bag asks for {}: make the {}.", show(thickness, one.job.units),
                    over, show(label, one.job.units),
                    one.slab.panel ? "edge thicker or the panel thinner" : "slab thicker");
  } else if (thickness < good) {
    check.level = Level::caution;
    check.title = one.slab.name + ": thin" + over;
    check.advice = fmt::format("Only {}, {} is safer: make the {} thicker, or reinforce it.",
                               show(thickness, one.job.units), show(good, one.job.units),
                               one.slab.panel ? "edge" : "slab");
  } else if (!one.job.mix.aggregate || !one.job.mix.least_thickness) {
    check.level = Level::caution;
    check.title = one.slab.name + ": the least thickness of this mix is not known";
    check.advice = fmt::format("It is {} at its thinnest: compare with the bag's data sheet.",
                               show(thickness, one.job.units));
  }
  return check;
}

}  // namespace

std::vector<Check> slab_checks(const Job& job, const Plan& plan) {
  return for_each_slab(job, plan, [](const CheckedSlab& one, std::vector<Check>& checks) {
    add(slot_width(one), checks);
    add(thin_slab(one), checks);
  });
}

}  // namespace strikeoff
