// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <set>
#include <string_view>

#include "core/format.h"
#include "core/outlines.h"
#include "plan/tasks.h"
#include "slab/corners.h"

namespace strikeoff {
namespace {

bool has_role(const Plan& plan, std::string_view role) {
  return std::any_of(plan.cut_list.parts.begin(), plan.cut_list.parts.end(),
                     [&](const Part& part) { return part.role == role; });
}

bool has_soffit(const Plan& plan) {
  return has_role(plan, "soffit strip") || has_role(plan, "soffit panel");
}

bool any_slab_needs(const Plan& plan, Length FormQuantities::*work) {
  return std::any_of(plan.slabs.begin(), plan.slabs.end(),
                     [&](const SlabPlan& slab) { return slab.forms.*work > Length{}; });
}

bool any_slab(const Job& job, bool (*has)(const Slab&)) {
  return std::any_of(job.slabs.begin(), job.slabs.end(), has);
}

/// What each slab has of something, the slab named where there are several: "bench: the back".
template <class ListOne>
std::string by_slab(const Job& job, ListOne list_one) {
  std::string text;
  for (const Slab& slab : job.slabs) {
    const std::vector<std::string> items = list_one(slab);
    if (items.empty()) continue;
    text += text.empty() ? "" : "; ";
    if (job.slabs.size() > 1) text += slab.name + ": ";
    text += joined(items, ", ");
  }
  return text;
}

/// "the back", "edge 3": sides that meet a wall.
std::string walls(const Job& job) {
  return by_slab(job, [](const Slab& slab) {
    std::vector<std::string> names;
    for (const Side& side : slab.sides) {
      if (side.wall) names.push_back(the_side(side.name));
    }
    return names;
  });
}

/// How the tops of the edge strips are set where they follow a fall or an uneven base: a strip is
/// as high as its deepest place needs, so elsewhere its foot goes lower.
std::string strip_tops(const Job& job) {
  const bool us = job.units == Units::us;
  const Length reach = us ? Length::inches(48) : Length::m(1);
  return by_slab(job, [&](const Slab& slab) {
    std::vector<std::string> how;
    if (slab.fall) {
      how.push_back(fmt::format("down {} in every {} towards {}",
                                show(reach * slab.fall->slope, job.units), us ? "4 ft" : "1 m",
                                the_side(slab.sides[slab.fall->side].name)));
    } else if (!slab.levels.empty()) {
      how.push_back(fmt::format("all in one level, {} above the highest place of the {}",
                                show(slab.thickness, job.units),
                                slab.support == Support::base ? "base" : "ground"));
    }
    return how;
  });
}

/// "flush with the top of the base", and how far below it under an apron.
std::string soffit_tops(const Job& job) {
  const std::string lower = by_slab(job, [&](const Slab& slab) {
    std::vector<std::string> depth;
    if (has_apron(slab)) depth.push_back(show(slab.apron_depth, job.units));
    return depth;
  });
  const std::string flush = "Fix the soffit strips, flush with the top of the base";
  return lower.empty() ? flush : flush + "; those under an apron lower down by " + lower;
}

/// Openings that the panel has too.
std::string cut_openings(const Job& job) {
  return by_slab(job, [](const Slab& slab) {
    std::vector<std::string> names;
    for (const Opening& opening : slab.openings) {
      if (opening.through && slab.panel) names.push_back(opening.name);
    }
    return names;
  });
}

/// "Bed the panels, leaving 1/8 in between sheets, and screw them to the base"
std::string bed_panels(const Job& job, const Plan& plan) {
  std::string gap = any_slab_needs(plan, &FormQuantities::seams) ? ", sheets butted tight," : "";
  for (const Slab& slab : job.slabs) {
    if (slab.panel && slab.panel_gap > Length{} && !gap.empty()) {
      gap = fmt::format(", leaving {} between sheets,", show(slab.panel_gap, job.units));
      break;
    }
  }
  return fmt::format("Bed the panels{} and screw them to the base", gap);
}

/// Marks of the soffit panels.
std::string soffit_panels(const Plan& plan) {
  std::string marks;
  for (const Part& part : plan.cut_list.parts) {
    if (part.role == "soffit panel") marks += (marks.empty() ? "" : ", ") + part.mark;
  }
  return marks;
}

/// "600 mm", or where they differ "600 mm (bench), 450 mm (hearth)": of the slabs that have some.
std::string apart(const Plan& plan, Length FormQuantities::*spacing) {
  std::vector<std::string> each;
  std::set<Length> known;
  for (const SlabPlan& slab : plan.slabs) {
    if (slab.forms.*spacing <= Length{}) continue;
    known.insert(slab.forms.*spacing);
    each.push_back(fmt::format("{} ({})", show(slab.forms.*spacing, plan.units), slab.name));
  }
  if (known.size() == 1) return show(*known.begin(), plan.units);
  return joined(each, ", ");
}

/// The sides whose overhang brackets carry.
std::string bracketed(const Job& job) {
  return by_slab(job, [](const Slab& slab) {
    std::vector<std::string> names;
    for (const Side& side : slab.sides) {
      if (side.bracket && !side.wall && side.overhang > Length{}) names.push_back(side.name);
    }
    return names;
  });
}

/// Of all slabs: rounded corners that are bent, and those that a block makes.
struct RoundedCorners {
  bool bent = false, blocks = false;
};

RoundedCorners rounded_corners(const Job& job) {
  RoundedCorners corners;
  for (const Slab& slab : job.slabs) {
    if (slab.corner_cuts.empty()) continue;
    const Polygon outline = sharp_outline(slab);
    if (!filled_corners(slab, outline, job.forms).empty()) corners.blocks = true;
    for (const Face& face : form_faces(slab, outline, job.forms)) {
      if (face.kind == Face::Kind::bend) corners.bent = true;
      if (face.kind == Face::Kind::block) corners.blocks = true;
    }
  }
  return corners;
}

/// An apron's end stands open where a plain side comes next.
bool has_open_apron(const Slab& slab) {
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side &side = slab.sides[k], &next = slab.sides[(k + 1) % slab.sides.size()];
    if (side.apron != next.apron && !side.wall && !next.wall) return true;
  }
  return false;
}

/// Soffits, and what stands on those under aprons.
std::vector<std::string> soffit_tasks(const Job& job, const Plan& plan) {
  if (!has_soffit(plan)) return {};
  if (!any_slab(job, has_apron)) return {soffit_tops(job)};
  std::vector<std::string> tasks{
      soffit_tops(job), "Glue the foam to the base behind the apron, standing on the soffit"};
  if (any_slab(job, has_open_apron)) {
    tasks.push_back("Close the ends of the apron with their pieces, from the soffit up");
  }
  return tasks;
}

/// What goes with the edge strips: rounded corners, splices, openings.
std::vector<std::string> after_edges(const Job& job, const Plan& plan) {
  std::vector<std::string> tasks;
  const RoundedCorners corners = rounded_corners(job);
  if (corners.bent) {
    tasks.push_back(
        "Bend the two thin layers round each bent corner, one over the other; screw their ends "
        "to a cleat over the joint with a straight strip, and where two bends meet keep the joints "
        "of the layers apart");
  }
  const bool spliced = std::any_of(plan.slabs.begin(), plan.slabs.end(),
                                   [](const SlabPlan& slab) { return slab.forms.splices > 0; });
  if (spliced) tasks.push_back("Screw a cleat over each splice, from the outside");
  if (corners.blocks) {
    tasks.push_back(
        "Fix the blocks of the rounded corners, the side cut to the arc towards the concrete");
  }
  if (any_slab(job, [](const Slab& slab) { return !slab.openings.empty(); })) {
    tasks.push_back("Fix the knock-outs of the openings");
  }
  return tasks;
}

/// Diagonals say whether four corners are square, and nothing about any other outline.
std::string check_forms(const Job& job) {
  const bool four_corners = any_slab(
      job, [](const Slab& slab) { return slab.sides.size() == 4 && slab.corner_cuts.empty(); });
  const bool fall = any_slab(job, [](const Slab& slab) { return slab.fall.has_value(); });
  return fmt::format("Check {}, heights and {}; mend before sealing",
                     fall ? "level or fall" : "level",
                     four_corners ? "both diagonals" : "the lengths of all sides");
}

/// Gravel that drains and carries evenly: 100 mm, common practice for slabs on the ground.
std::string sub_base(const Job& job, const Plan& plan) {
  constexpr Length gravel = Length::mm(100);
  Volume volume;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    if (job.slabs[i].support == Support::ground) volume += plan.slabs[i].area * gravel;
  }
  return fmt::format(
      "Spread gravel under the slab, dampen and compact it to {} in two layers: about {} once "
      "compacted, more as it is bought; where frost or the local code asks for more, that",
      show(gravel, job.units), show_concrete(volume, job.units));
}

/// What the release agent must not touch, for the next mix has to hold on to it.
std::string release_agent(const Job& job) {
  const bool panel = any_slab(job, [](const Slab& slab) { return slab.panel.has_value(); });
  const bool base = any_slab(job, [](const Slab& slab) { return slab.support == Support::base; });
  const std::string agent = "Wipe a thin coat of release agent on the form faces";
  if (panel) return agent + ", none on panel or base";
  return base ? agent + ", none on the base" : agent;
}

/// "the mesh 25 mm (hearth)": the steel of each slab and what must be clear of it.
std::string steel(const Job& job, const Plan& plan) {
  std::vector<std::string> each;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const SteelPlan& needed = plan.slabs[i].steel;
    if (needed.none()) continue;
    each.push_back(fmt::format("{} {}{}", needed.bars.empty() ? "the mesh" : "the bars",
                               show(needed.cover, job.units),
                               job.slabs.size() > 1 ? " (" + job.slabs[i].name + ")" : ""));
  }
  return joined(each, ", ");
}

}  // namespace

std::vector<std::string> form_tasks(const Job& job, const Plan& plan) {
  std::vector<std::string> tasks;
  const auto when = [&](bool needed, std::string task) {
    if (needed) tasks.push_back(std::move(task));
  };
  const bool panel = any_slab(job, [](const Slab& slab) { return slab.panel.has_value(); });
  const bool ground =
      any_slab(job, [](const Slab& slab) { return slab.support == Support::ground; });
  const std::string openings = cut_openings(job), wall = walls(job), panels = soffit_panels(plan);
  const std::string brackets = bracketed(job), tops = strip_tops(job);

  when(ground, "Dig out and level the ground under the slab");
  when(ground, "Compact the ground until a heel leaves no mark");
  when(ground, sub_base(job, plan));
  when(!plan.cut_list.boards.empty() || !plan.cut_list.sheets.empty(),
       "Rip, then crosscut the parts; write the mark on each");
  when(!openings.empty(),
       fmt::format("Cut the openings out of the panels, and out of the base's top where that is "
                   "closed ({})",
                   openings));
  when(panel, bed_panels(job, plan));
  when(any_slab_needs(plan, &FormQuantities::seams), "Seal and tape the seams between panels");
  when(!wall.empty(), fmt::format("Stick the isolation strip along the wall ({})", wall));
  when(any_slab_needs(plan, &FormQuantities::ledger),
       "Screw ledger battens to the base's face where a soffit strip has too little panel above it "
       "for screws, and under knock-outs");
  when(!brackets.empty(),
       fmt::format("Fix the brackets to the base's frame, not its skin, at the ends and no farther "
                   "apart than {} ({})",
                   job.units == Units::us ? "2 ft" : "600 mm", brackets));
  for (std::string& task : soffit_tasks(job, plan)) tasks.push_back(std::move(task));
  when(!panels.empty(),
       fmt::format("Set props under the outer edge of the soffit panels ({}), at the ends and no "
                   "farther apart than {}; stand them on boards and wedge them tight",
                   panels, apart(plan, &FormQuantities::props_apart)));
  when(has_role(plan, "edge strip"),
       fmt::format("Fix the edge strips, screws from the outside, no farther apart than {}",
                   apart(plan, &FormQuantities::screw_spacing)));
  when(ground && has_role(plan, "edge strip"),
       fmt::format("Drive stakes behind the edge strips, at the ends and no farther apart than {}",
                   apart(plan, &FormQuantities::stakes_apart)));
  for (std::string& task : after_edges(job, plan)) tasks.push_back(std::move(task));
  when(has_role(plan, "edge strip") && !tops.empty(),
       fmt::format("Set the tops of the edge strips: {}; where one is higher than needed its foot "
                   "goes lower",
                   tops));
  when(true, check_forms(job));
  when(true, "Seal the form joints from inside; let the sealant cure as its label says");
  when(has_role(plan, "edge strip"), "Tape the cut faces of the edge strips");
  when(true, release_agent(job));
  const std::string reinforcement = steel(job, plan);
  when(!reinforcement.empty(),
       fmt::format("Lay the steel on spacers, tied where it crosses or laps, so far from what it "
                   "lies over, from edges and openings: {}; no release agent on it",
                   reinforcement));
  return tasks;
}

}  // namespace strikeoff
