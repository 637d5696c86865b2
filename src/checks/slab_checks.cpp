// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "checks/checks.h"
#include "checks/rails.h"
#include "core/format.h"

namespace strikeoff {
namespace {

/// One slab as the job gives it and as it was planned.
struct Subject {
  const Slab& slab;
  const SlabPlan& plan;
  const Mix& mix;
  Units units;
};

/// The side with the least of something; nothing when every side meets a wall.
template <class Measure>
const Side* least_side(const Slab& slab, Measure measure) {
  const Side* least = nullptr;
  for (const Side& side : slab.sides) {
    if (side.wall) continue;
    if (least == nullptr || measure(side) < measure(*least)) least = &side;
  }
  return least;
}

/// The space between the panel and the slab's edge somewhere.
struct Slot {
  Length width;  // negative: the panel sticks out
  std::string where;
  bool corner = false;
};

/// The slot at a rounded or cut-off corner; at a wall only where the panel sticks out, for there is
/// no slot along a wall.
std::optional<Slot> corner_slot(const Subject& subject, const CornerCut& cut) {
  const auto& sides = subject.slab.sides;
  const Point& panel = subject.plan.panel[cut.corner];
  const Length away = distance(panel, subject.plan.outline);
  const Slot slot{contains(subject.plan.outline, panel) ? away : -away,
                  fmt::format("corner {}", sides[cut.corner].corner), true};
  const bool wall =
      sides[cut.corner].wall || sides[(cut.corner + sides.size() - 1) % sides.size()].wall;
  if (wall && slot.width >= Length{}) return std::nullopt;
  return slot;
}

/// Nothing without a panel, or when every side meets a wall.
std::optional<Slot> least_slot(const Subject& subject) {
  if (!subject.slab.panel) return std::nullopt;
  const auto slot_of = [](const Side& side) { return side.overhang - side.panel_overhang; };
  const Side* side = least_side(subject.slab, slot_of);
  if (side == nullptr) return std::nullopt;
  Slot least{slot_of(*side), "the " + side->name};
  for (const CornerCut& cut : subject.slab.corner_cuts) {
    const auto slot = corner_slot(subject, cut);
    if (slot && slot->width < least.width) least = *slot;
  }
  return least;
}

/// "It is 6 mm: set the panel back to leave 12 mm."
std::string widen(const Slot& slot, Length good, Units units) {
  const std::string is = slot.width < Length{} ? "The panel sticks out of the slab there"
                                               : "It is " + show(slot.width, units);
  return fmt::format("{}: {} to leave {}.", is,
                     slot.corner ? "cut the panel's corner back" : "set the panel back",
                     show(good, units));
}

std::optional<Check> slot_width(const Subject& subject) {
  const auto place = least_slot(subject);
  if (!place) return std::nullopt;
  const Length slot = place->width;
  const Length grain = subject.mix.aggregate.value_or(Length{});
  // 3 times the aggregate for free flow, 1.5 times as the least clear gap: ACI 301/318 spacing
  // rules, from memory; 12 mm and 5 mm are assumptions.
  const Length good = std::max(Length::mm(12), grain * 3);
  const Length least = std::max(Length::mm(5), grain * 1.5);
  Check check = measured(
      "slot-width",
      fmt::format("{}: the mix can fill the edge beside the panel", subject.slab.name), slot, good,
      "slot = overhang less panel overhang; caution under the larger of 12 mm and "
      "3 x aggregate, stop under the larger of 5 mm and 1.5 x aggregate (assumption)");
  if (slot < least) {
    check.level = Level::stop;
    check.limit = least.in_mm();
    check.title =
        fmt::format("{}: the slot at {} is too narrow to fill", subject.slab.name, place->where);
    check.advice = widen(*place, good, subject.units);
  } else if (slot < good) {
    check.level = Level::caution;
    check.title = fmt::format("{}: the slot at {} is narrow", subject.slab.name, place->where);
    check.advice = fmt::format(
        "It is {}, {} would fill by itself: use a fine, flowing mix and work "
        "it in along the edge.",
        show(slot, subject.units), show(good, subject.units));
  } else if (!subject.mix.aggregate) {
    check.level = Level::caution;
    check.title =
        fmt::format("{}: whether the grains pass the slot is not known", subject.slab.name);
    check.advice = fmt::format("The slot is {}: the largest grains should be under a third of it.",
                               show(slot, subject.units));
  }
  return check;
}

Check thin_slab(const Subject& subject) {
  const Length thickness = subject.plan.least_thickness;
  const Length label = subject.mix.least_thickness.value_or(Length{});
  const Length good =
      std::max({Length::mm(25), subject.mix.aggregate.value_or(Length{}) * 3, label});
  const std::string over = subject.slab.panel ? " over the panel" : "";
  Check check =
      measured("thin-slab", subject.slab.name + ": thick enough" + over, thickness, good,
               "the larger of 1 in (25 mm, assumption), 3 x aggregate and the bag's least "
               "thickness, which alone is a stop");
  if (thickness < label) {
    check.level = Level::stop;
    check.limit = label.in_mm();
    check.title = subject.slab.name + ": thinner than the bag allows";
    check.advice =
        fmt::format("Only {}{}, the bag asks for {}: make the {}.", show(thickness, subject.units),
                    over, show(label, subject.units),
                    subject.slab.panel ? "edge thicker or the panel thinner" : "slab thicker");
  } else if (thickness < good) {
    check.level = Level::caution;
    check.title = subject.slab.name + ": thin" + over;
    check.advice = fmt::format("Only {}, {} is safer: make the {} thicker, or reinforce it.",
                               show(thickness, subject.units), show(good, subject.units),
                               subject.slab.panel ? "edge" : "slab");
  } else if (!subject.mix.aggregate || !subject.mix.least_thickness) {
    check.level = Level::caution;
    check.title = subject.slab.name + ": the least thickness of this mix is not known";
    check.advice = fmt::format("It is {} at its thinnest: compare with the bag's data sheet.",
                               show(thickness, subject.units));
  }
  return check;
}

std::optional<Check> rail(const Subject& subject) {
  const auto narrowest = narrowest_rail(subject.plan);
  if (!narrowest) return std::nullopt;
  // 2T and 75 mm: assumption; corners and thin bars are where worktops break in transport.
  const Length good = std::max(subject.slab.thickness * 2, Length::mm(75));
  Check check = measured(
      "narrow-rail", subject.slab.name + ": the slab beside openings is wide enough",
      narrowest->width, good, "the larger of twice the thickness and 3 in (75 mm) (assumption)");
  if (narrowest->width < good) {
    const std::string& opening = subject.slab.openings[narrowest->opening].name;
    check.level = Level::caution;
    check.title = fmt::format("{}: a narrow rail beside {}", subject.slab.name, opening);
    check.advice = fmt::format(
        "Only {} wide, {} is safer: move or shrink the opening, or lay a bar in "
        "the rail.",
        show(narrowest->width, subject.units), show(good, subject.units));
  }
  return check;
}

/// Depth of concrete that holds this side's overhang.
Length root_depth(const Slab& slab, const Side& side) {
  const bool panel_passes = slab.panel && side.panel_overhang > Length{};
  return panel_passes ? slab.thickness - slab.panel->thickness : slab.thickness;
}

Length most_overhang(const Slab& slab, const Side& side) {
  return std::min(root_depth(slab, side) * 4, Length::mm(300));
}

std::optional<Check> overhang(const Subject& subject) {
  const Side* worst = least_side(subject.slab, [&](const Side& side) {
    return side.bracket ? 0 : -(side.overhang / most_overhang(subject.slab, side));
  });
  if (worst == nullptr || worst->bracket || worst->overhang <= Length{}) return std::nullopt;
  const Length most = most_overhang(subject.slab, *worst);
  Check check =
      measured("overhang", subject.slab.name + ": the overhang is short for its depth",
               worst->overhang, most,
               "lesser of 4 x depth at the base's face and 12 in (300 mm); caution from "
               "half of it (assumption); bending is not worked out. ACI 318-19 14.1.3, from "
               "memory, lets no plain concrete cantilever as a structural member");
  if (worst->overhang > most) {
    check.level = Level::stop;
    check.title = fmt::format("{}: the {} hangs out too far", subject.slab.name, worst->name);
    check.advice = fmt::format(
        "{} out, {} at most unless brackets carry it: carry it, or make it "
        "shorter or thicker.",
        show(worst->overhang, subject.units), show(most, subject.units));
  } else if (worst->overhang > most / 2) {
    check.level = Level::caution;
    check.title = fmt::format("{}: the {} hangs out far", subject.slab.name, worst->name);
    check.advice = fmt::format(
        "{} out: nobody sits or leans hard on it; put steel near its top, or "
        "brackets beneath.",
        show(worst->overhang, subject.units));
  }
  return check;
}

/// Overhangs that the job says are carried; nothing where there are none.
std::optional<Check> brackets(const Subject& subject) {
  const Side* worst = least_side(subject.slab, [&](const Side& side) {
    return side.bracket ? -(side.overhang / most_overhang(subject.slab, side)) : 0;
  });
  if (worst == nullptr || !worst->bracket || worst->overhang <= Length{}) return std::nullopt;
  const Length most = most_overhang(subject.slab, *worst);
  Check check =
      measured("overhang", fmt::format("{}: brackets carry the {}", subject.slab.name, worst->name),
               worst->overhang, most,
               "lesser of 4 x depth at the base's face and 12 in (300 mm) without brackets; "
               "brackets every 24 in (600 mm) at most: common practice, no source");
  if (worst->overhang > most / 2) check.level = Level::caution;
  check.advice = fmt::format(
      "{} out: set a bracket at each end and every {} at most before the pour, fixed to the base's "
      "frame and rated for the slab's weight and people leaning on it.",
      show(worst->overhang, subject.units), subject.units == Units::us ? "2 ft" : "600 mm");
  return check;
}

std::optional<Check> base_load(const Subject& subject, const std::optional<Pressure>& limit) {
  if (subject.slab.support == Support::ground && !limit) return std::nullopt;
  const Pressure load = subject.plan.base_load;
  const std::string weight = show(subject.plan.mass, subject.units);
  Check check;
  check.code = "base-load";
  check.title = fmt::format("{}: the base carries the slab ({})", subject.slab.name, weight);
  check.value = in_kilopascals(load);
  check.unit = "kPa";
  check.basis = "weight over the base's area; people and full buckets come on top";
  if (!limit) {
    check.level = Level::caution;
    check.title = fmt::format("{}: what the base carries is not known", subject.slab.name);
    check.advice = fmt::format(
        "The slab weighs {}, {} of base: ask the maker of the base, and add "
        "people and buckets on pour day.",
        weight, show(load, subject.units));
    return check;
  }
  check.limit = in_kilopascals(*limit);
  if (load > *limit) {
    check.level = Level::stop;
    check.title = fmt::format("{}: too heavy for the base", subject.slab.name);
    check.advice =
        fmt::format("{} against {} allowed: strengthen the base, or make the slab thinner.",
                    show(load, subject.units), show(*limit, subject.units));
  }
  return check;
}

std::optional<Check> reinforcement(const Subject& subject) {
  const Rectangle box = bounding_box(subject.plan.outline);
  const Length longest = std::max(box.length, box.depth);
  // Joint spacing of unreinforced slabs on ground, 24 to 36 times the thickness (ACI 302.1R); the
  // wider end, since a top on a base is less held back.
  const Length most = subject.slab.thickness * 36;
  const bool is_long = longest > most;
  if (!is_long && subject.plan.openings.empty()) return std::nullopt;
  Check check =
      measured("reinforcement", subject.slab.name + ": steel or fiber is advised", longest, most,
               "36 x thickness: joint spacing of plain slabs on ground, ACI 302.1R; bars at "
               "openings: common practice");
  check.level = Level::caution;
  if (is_long) {
    check.advice =
        "It is long for its thickness and may crack across: use mesh, bars or fiber as "
        "the bag's data sheet allows.";
  }
  if (!subject.plan.openings.empty()) {
    check.advice += check.advice.empty() ? "" : " ";
    check.advice += "At each opening lay a bar along both long sides and one across each corner.";
  }
  return check;
}

}  // namespace

std::vector<Check> slab_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const Subject subject{job.slabs[i], plan.slabs[i], job.mix, job.units};
    const std::size_t first = checks.size();
    add(slot_width(subject), checks);
    add(thin_slab(subject), checks);
    add(rail(subject), checks);
    add(overhang(subject), checks);
    add(brackets(subject), checks);
    add(base_load(subject, job.limits.base_load), checks);
    add(reinforcement(subject), checks);
    set_about(job.slabs[i].name, first, checks);
  }
  return checks;
}

}  // namespace strikeoff
