// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

/// A slab on the ground is named by its joints, and weighs on nothing that could give way.
bool stands_on_base(const SlabPlan& slab) {
  return !slab.control_joints;
}

std::string weight_line(const SlabPlan& slab, Units units) {
  const SlabLoads& loads = slab.loads;
  const std::string fresh = show(loads.fresh, units), hard = show(slab.mass, units);
  return fmt::format(
      "The slab weighs {}. On pour day {} with the heaviest batch and {} ({}, an assumption); "
      "bucket and panel are not counted",
      fresh == hard ? fresh : fmt::format("{} fresh, {} hard", fresh, hard),
      show(loads.pour_day, units), count(loads.people, "person who places", "people who place"),
      show(loads.people_mass, units));
}

/// A plan with more supports than this lists the heaviest ones.
constexpr std::size_t most_listed = 12;

Text bearing_table(const SlabPlan& slab, Units units) {
  std::vector<Bearing> heaviest = slab.loads.bearings;
  if (heaviest.size() > most_listed) {
    std::stable_sort(heaviest.begin(), heaviest.end(),
                     [](const Bearing& a, const Bearing& b) { return a.mass > b.mass; });
    heaviest.resize(most_listed);
  }
  Table table({{"On"},
               {"Slab near it", Align::right},
               {"Weight", Align::right},
               {"Pour day, at most", Align::right}});
  for (const Bearing& one : heaviest) {
    table.add({one.on, show(one.area, units), show(one.mass, units), show(one.pour_day, units)});
  }
  Text rest;
  if (heaviest.size() < slab.loads.bearings.size()) {
    rest = paragraph("  ", fmt::format("These are the {} heaviest of {}.", heaviest.size(),
                                       slab.loads.bearings.size()));
  }
  return placed(table) + rest +
         paragraph("  ",
                   "An estimate: each part of the slab counted for the support nearest to "
                   "it. The base's own sides may carry some of it.");
}

std::string leaning_line(const Cantilever& worst) {
  const std::string side = the_side(worst.side);
  if (!worst.strength) {
    return fmt::format(
        "When {} holds someone who leans on it is not known: the job does not give "
        "the bag's strength",
        side);
  }
  if (!worst.lean_from) {
    return fmt::format("By the bag's strength {} never holds someone who leans on it safely", side);
  }
  return fmt::format("Nobody leans on {} before {} after the first water", side,
                     show(*worst.lean_from));
}

}  // namespace

Text weights(const Plan& plan) {
  Text text;
  const bool several = plan.slabs.size() > 1;
  for (const SlabPlan& slab : plan.slabs) {
    if (!stands_on_base(slab)) continue;
    const std::string name = several ? slab.name + ": " : "";
    text += paragraph("  ", name + weight_line(slab, plan.units) + ".");
    if (!slab.loads.bearings.empty()) text += bearing_table(slab, plan.units);
    if (slab.loads.worst) {
      text += paragraph("  ", name + leaning_line(*slab.loads.worst) + ".");
    }
  }
  return text.empty() ? "" : heading("WEIGHTS") + text;
}

}  // namespace strikeoff::text
