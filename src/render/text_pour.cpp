// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

std::string pace(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  std::string text =
      fmt::format("From its first water a batch takes {} until it is placed.", show(pour.lead));
  if (pour.batches > 1) {
    text = fmt::format("Start a batch every {}, a pace set by {}. ", show(pour.takt),
                       pour.bottleneck) +
           text;
  }
  return text;
}

std::string edges(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  if (pour.batches < 2) return "One batch: no edge waits for another.";
  const std::string chain = pour.chain.empty() ? "" : " The longest wait: " + pour.chain + ".";
  return "A fresh edge waits " + edge_verdict(pour) + "." + chain;
}

std::string working_time(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  std::string text =
      fmt::format("The fresh mix will be about {}", show(pour.mix_temperature, plan.units));
  if (!pour.working_time) return text + ".";
  return text + fmt::format(
                    " and stay workable for about {}, an estimate: the bucket test on the "
                    "day decides.",
                    show(*pour.working_time));
}

/// "Start at the left end, go to the right end.": each slab's course, where it is cut at all.
std::string course(const Sweep& sweep, const Plan& plan) {
  const bool is_cut = std::any_of(plan.pour.joints.begin(), plan.pour.joints.end(),
                                  [&](const Joint& joint) { return joint.slab == sweep.slab; });
  if (!is_cut) return "";
  std::string text = plan.slabs.size() > 1 ? sweep.slab + ": start at " : "Start at ";
  text += fmt::format("{}, go to {}", sweep.from, sweep.towards);
  if (sweep.fronts == Fronts::in_turn) {
    text += ", batches in turn to the one front and to the other";
  } else if (sweep.fronts == Fronts::shared) {
    text += ", each batch shared by both fronts";
  } else if (sweep.cells > 1) {
    text += fmt::format(", in rows of up to {} batches side by side", sweep.cells);
  }
  if (sweep.lifts > 1) {
    text += fmt::format(", in {} lifts: a batch in each from the bottom up, then the next place",
                        sweep.lifts);
  }
  return text + ".";
}

Text courses(const Plan& plan) {
  Text text;
  for (const Sweep& sweep : plan.pour.sweeps) {
    if (const std::string line = course(sweep, plan); !line.empty()) {
      text += paragraph("  ", line);
    }
  }
  return text;
}

/// How long the wet edge is and how far a batch moves it.
std::string wet_edge(const Plan& plan) {
  if (plan.pour.joint_length <= Length{}) return "";
  const auto by_advance = [](const Batch& a, const Batch& b) { return a.advance < b.advance; };
  const auto [least, most] =
      std::minmax_element(plan.batches.begin(), plan.batches.end(), by_advance);
  const auto shown = [&](Length length) { return show(on_tape(length, plan.units), plan.units); };
  const std::string low = shown(least->advance), high = shown(most->advance);
  return fmt::format("The wet edge is up to {} long; {}.", shown(plan.pour.wet_edge_max),
                     low == high ? "each batch moves it on by " + low
                                 : fmt::format("a batch moves it on by {} to {}", low, high));
}

/// Null where the plan has none of that name.
const SlabPlan* slab_named(const std::string& name, const Plan& plan) {
  const auto slab = std::find_if(plan.slabs.begin(), plan.slabs.end(),
                                 [&](const SlabPlan& s) { return s.name == name; });
  return slab == plan.slabs.end() ? nullptr : &*slab;
}

/// Where a zone lies, by the box around it, measured from the lower left corner of the slab:
/// "left 23 1/2 to 47 in, front 0 to 14 in". A direction it fills is not named.
std::string place(const Zone& zone, const Plan& plan) {
  const SlabPlan* slab = slab_named(zone.slab, plan);
  if (slab == nullptr || zone.outline.empty()) return zone.slab;
  const Rectangle all = bounding_box(slab->outline);
  const Rectangle box = bounding_box(zone.outline);
  const auto along = [&](const char* edge, Length start, Length length, Length whole) {
    if (show(length, plan.units) == show(whole, plan.units)) return std::string();
    return edge + (" " + range(on_tape(start, plan.units), on_tape(start + length, plan.units),
                               plan.units));
  };
  std::vector<std::string> parts;
  for (const std::string& part : {along("left", box.at.x - all.at.x, box.length, all.length),
                                  along("front", box.at.y - all.at.y, box.depth, all.depth)}) {
    if (!part.empty()) parts.push_back(part);
  }
  const std::string where = parts.empty() ? "all of it" : joined(parts, ", ");
  return plan.slabs.size() > 1 ? zone.slab + ": " + where : where;
}

/// Beside a side that is all but straight a zone may keep a sliver: "left 38 to 38 in".
bool is_sliver(const Zone& zone, const Plan& plan) {
  const Rectangle box = bounding_box(zone.outline);
  const std::string nothing = show(Length{}, plan.units);
  return show(on_tape(box.length, plan.units), plan.units) == nothing ||
         show(on_tape(box.depth, plan.units), plan.units) == nothing;
}

/// True when the box around a zone says where it is.
bool fills_its_box(const Zone& zone) {
  return zone.outline.size() == 4 && is_right_angled(zone.outline);
}

/// Slabs with zones that no box describes: their joints are listed from end to end.
std::vector<std::string> slabs_by_joints(const Plan& plan) {
  std::vector<std::string> slabs;
  for (const Batch& batch : plan.batches) {
    for (const Zone& zone : batch.zones) {
      const bool known = std::find(slabs.begin(), slabs.end(), zone.slab) != slabs.end();
      if (!known && !fills_its_box(zone) && !is_sliver(zone, plan)) slabs.push_back(zone.slab);
    }
  }
  return slabs;
}

/// "joint with 3 to joint with 5": between the batches before and after it in this slab.
std::string between_joints(const Batch& batch, const std::string& slab, const Plan& plan) {
  std::vector<std::string> before, after;
  for (const Joint& joint : plan.pour.joints) {
    if (joint.slab != slab || joint.line.empty()) continue;
    const auto add = [](std::vector<std::string>& numbers, int number) {
      const std::string text = std::to_string(number);
      if (std::find(numbers.begin(), numbers.end(), text) == numbers.end()) numbers.push_back(text);
    };
    if (joint.second == batch.number) add(before, joint.first);
    if (joint.first == batch.number) add(after, joint.second);
  }
  std::string text;
  if (before.empty() && after.empty()) text = "all of it";
  if (before.empty() && !after.empty())
    text = "the start, to the joint with " + joined(after, ", ");
  if (!before.empty() && after.empty())
    text = "from the joint with " + joined(before, ", ") + " on";
  if (!before.empty() && !after.empty()) {
    text = "between the joints with " + joined(before, ", ") + " and " + joined(after, ", ");
  }
  return plan.slabs.size() > 1 ? slab + ": " + text : text;
}

/// " (lift 2)" where the slab is filled in lifts.
std::string lift_of(const Zone& zone, const Plan& plan) {
  const bool in_lifts =
      std::any_of(plan.pour.sweeps.begin(), plan.pour.sweeps.end(),
                  [&](const Sweep& sweep) { return sweep.slab == zone.slab && sweep.lifts > 1; });
  return in_lifts ? fmt::format(" (lift {})", zone.lift) : "";
}

std::string places(const Batch& batch, const std::vector<std::string>& by_joints,
                   const Plan& plan) {
  std::vector<std::string> all;
  for (const Zone& zone : batch.zones) {
    if (is_sliver(zone, plan)) continue;
    const bool joints = std::find(by_joints.begin(), by_joints.end(), zone.slab) != by_joints.end();
    const std::string where =
        (joints ? between_joints(batch, zone.slab, plan) : place(zone, plan)) + lift_of(zone, plan);
    if (std::find(all.begin(), all.end(), where) == all.end()) all.push_back(where);
  }
  return joined(all, "; ");
}

/// "the front, 230 mm from the left", "320 mm in from the front, 640 mm from the left".
std::string end_words(const JointEnd& end, Units units) {
  const auto tape = [&](Length length) { return show(on_tape(length, units), units); };
  const std::string in = end.inward > Length{} ? tape(end.inward) + " in from " : "";
  return fmt::format("{}{}, {} from {}", in, end.on, tape(end.away), end.from);
}

/// Where to hold the board for each joint of those slabs.
Text joint_table(const std::vector<std::string>& slabs, const Plan& plan) {
  std::vector<Column> columns = {{"Joint"}};
  if (plan.slabs.size() > 1) columns.push_back({"Slab"});
  columns.push_back({"From"});
  columns.push_back({"To"});
  columns.push_back({"Long", Align::right});
  Table table(std::move(columns));
  for (const Joint& joint : plan.pour.joints) {
    const bool listed = std::find(slabs.begin(), slabs.end(), joint.slab) != slabs.end();
    if (!listed || joint.line.empty()) continue;
    std::vector<std::string> row = {fmt::format("{}-{}", joint.first, joint.second)};
    if (plan.slabs.size() > 1) row.push_back(joint.slab);
    for (const JointEnd& end : joint.ends) row.push_back(end_words(end, plan.units));
    row.push_back(show(on_tape(joint.length, plan.units), plan.units));
    table.add(std::move(row));
  }
  return placed(table);
}

bool any_seconds(const std::vector<Batch>& batches) {
  return std::any_of(batches.begin(), batches.end(), [](const Batch& batch) {
    return has_seconds(batch.contact) || has_seconds(batch.place_start) ||
           has_seconds(batch.place_end);
  });
}

std::string deadline(Duration by, bool with_seconds) {
  return with_seconds ? stopwatch(by, with_seconds) : show_deadline(by);
}

/// The clock table. A column stands only where the plan has something to say in it.
Text timetable(const std::vector<std::string>& by_joints, const Plan& plan) {
  const bool clock = plan.date && plan.date->time;
  const bool seconds = any_seconds(plan.batches);
  const bool mixers = std::any_of(plan.batches.begin(), plan.batches.end(),
                                  [](const Batch& batch) { return batch.mixer > 1; });
  std::vector<Column> columns = {{"Batch", Align::right}, {"Water in", Align::right}};
  if (clock) columns.push_back({"Clock", Align::right});
  if (mixers) columns.push_back({"Mixer", Align::right});
  columns.push_back({"Placing", Align::right});
  columns.push_back({"Placed", Align::right});
  columns.push_back({"Meet by", Align::right});
  columns.push_back({"Where"});
  Table table(std::move(columns));
  for (const Batch& batch : plan.batches) {
    std::vector<std::string> row = {std::to_string(batch.number),
                                    stopwatch(batch.contact, seconds)};
    if (clock) row.push_back(time_of_day(plan.date, batch.contact, seconds));
    if (mixers) row.push_back(std::to_string(batch.mixer));
    row.push_back(stopwatch(batch.place_start, seconds));
    row.push_back(stopwatch(batch.place_end, seconds));
    row.push_back(batch.meet_by ? deadline(*batch.meet_by, seconds) : "-");
    row.push_back(places(batch, by_joints, plan));
    table.add(std::move(row));
  }
  return placed(table);
}

Text remedy(const Remedy& remedy, const Plan& plan) {
  std::string text = (remedy.works ? "" : "Not enough alone: ") + remedy.what;
  if (remedy.cost && remedy.cost->si() > 0) {
    text += " It costs " + show_money(*remedy.cost, plan.currency) + " more.";
  } else if (remedy.cost && remedy.cost->si() < 0) {
    text += " It saves " + show_money(-*remedy.cost, plan.currency) + ".";
  }
  return paragraph("  - ", text);
}

Text changes(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  Text text;
  if (!pour.remedies.empty()) text += "\n  What would mend it:\n";
  for (const Remedy& one : pour.remedies) text += remedy(one, plan);
  if (!pour.changes.empty()) text += "\n  What more would bring:\n";
  for (const Remedy& one : pour.changes) text += remedy(one, plan);
  return text;
}

}  // namespace

Text pour(const Plan& plan) {
  if (plan.batches.empty()) return "";
  Text result =
      heading("POUR") + paragraph("  ", pace(plan)) + paragraph("  ", edges(plan)) + courses(plan);
  if (const std::string edge = wet_edge(plan); !edge.empty()) result += paragraph("  ", edge);
  result += paragraph("  ", working_time(plan));
  if (!plan.pour.water_rule.empty()) result += paragraph("  Water: ", plan.pour.water_rule);
  if (!plan.pour.retarder_reason.empty()) {
    result += paragraph("  Retarder: ", plan.pour.retarder_reason);
  }
  if (!plan.pour.smallest_crew.empty()) result += paragraph("  Crew: ", plan.pour.smallest_crew);
  for (const SettledValue& choice : plan.pour.choices) {
    result += paragraph("  Chosen: ", choice.reason);
  }
  result += changes(plan);
  return result + "\n" + clock_table(plan);
}

Text clock_table(const Plan& plan) {
  const std::vector<std::string> by_joints = slabs_by_joints(plan);
  Text result = timetable(by_joints, plan) + "\n";
  result +=
      paragraph("  ",
                "Times count from the first water of batch 1: start a "
                "stopwatch then. Meet by: every batch that touches this one is placed by "
                "then. Where: \"left 10 to 20\" is 10 to 20 off the slab's left end, \"front\" "
                "the same off its front edge; without \"front\" it is the whole depth.");
  const auto joint =
      std::find_if(plan.pour.joints.begin(), plan.pour.joints.end(), [&](const Joint& one) {
        return !one.line.empty() &&
               std::find(by_joints.begin(), by_joints.end(), one.slab) != by_joints.end();
      });
  if (joint == plan.pour.joints.end()) return result;
  return result + "\n" + joint_table(by_joints, plan) + "\n" +
         paragraph("  ",
                   fmt::format("Joint {0}-{1} is where batch {1} goes against batch {0}. Mark both "
                               "ends before the pour, on the forms or the panel, and pull the mix "
                               "straight along a board from one to the other.",
                               joint->first, joint->second));
}

std::string joint_line(const Joint& joint, Units units) {
  if (joint.ends.size() != 2) return "";
  return end_words(joint.ends[0], units) + " to " + end_words(joint.ends[1], units);
}

}  // namespace strikeoff::text
