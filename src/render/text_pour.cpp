// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "render/text_sections.h"
#include "render/text_table.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

std::string pace(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  std::string text =
      fmt::format("From its first water a batch takes {} until it is placed.", show(pour.lead));
  if (pour.batches > 1) {
    text = fmt::format("Start a batch every {}{}: {} sets this pace. ", show(pour.takt),
                       pour.takt_is_bound ? " at best" : "", pour.bottleneck) +
           text;
  }
  if (pour.takt_is_bound) {
    text += " Someone's jobs do not follow one another, so the real pace is slower: rehearse it.";
  }
  return text;
}

std::string edges(const Plan& plan) {
  const PourPlan& pour = plan.pour;
  if (pour.batches < 2) return "One batch: no edge waits for another.";
  std::string text = "A fresh edge waits " + edge_verdict(pour) + ".";
  if (pour.gap_is_assumed) {
    text +=
        " The outline is not a rectangle: each batch is taken to touch only the one before and "
        "the one after it, which is not shown to be so.";
  }
  return text;
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

/// Where a zone lies, by the box around it, measured from the lower left corner of the slab.
std::string place(const Zone& zone, const Plan& plan) {
  const auto slab = std::find_if(plan.slabs.begin(), plan.slabs.end(),
                                 [&](const SlabPlan& s) { return s.name == zone.slab; });
  const bool several = plan.slabs.size() > 1;
  if (slab == plan.slabs.end() || zone.outline.empty()) return zone.slab;
  const Rectangle all = bounding_box(slab->outline);
  const Rectangle box = bounding_box(zone.outline);
  const Length left = box.at.x - all.at.x;
  const Length low = box.at.y - all.at.y;
  const std::string along = show(box.length, plan.units) == show(all.length, plan.units)
                                ? "whole length"
                                : range(left, left + box.length, plan.units) + " along";
  const std::string deep = show(box.depth, plan.units) == show(all.depth, plan.units)
                               ? "whole depth"
                               : range(low, low + box.depth, plan.units) + " deep";
  return (several ? zone.slab + ": " : "") + along + ", " + deep;
}

std::string places(const Batch& batch, const Plan& plan) {
  std::vector<std::string> all;
  for (const Zone& zone : batch.zones) all.push_back(place(zone, plan));
  return joined(all, "; ");
}

std::string meet_by(const Batch& batch) {
  return batch.meet_by ? stopwatch(*batch.meet_by) : "-";
}

/// The clock table. A column stands only where the plan has something to say in it.
std::string timetable(const Plan& plan) {
  const bool clock = plan.date && plan.date->time;
  const bool mixers = std::any_of(plan.batches.begin(), plan.batches.end(),
                                  [](const Batch& batch) { return batch.mixer > 1; });
  std::vector<Column> columns = {{"Batch", Align::right}, {"Water in", Align::right}};
  if (clock) columns.push_back({"Clock", Align::right});
  if (mixers) columns.push_back({"Mixer", Align::right});
  columns.push_back({"Placed from", Align::right});
  columns.push_back({"to", Align::right});
  columns.push_back({"Edge met by", Align::right});
  columns.push_back({"Where"});
  Table table(std::move(columns));
  for (const Batch& batch : plan.batches) {
    std::vector<std::string> row = {std::to_string(batch.number), stopwatch(batch.contact)};
    if (clock) row.push_back(time_of_day(plan.date, batch.contact));
    if (mixers) row.push_back(std::to_string(batch.mixer));
    row.push_back(stopwatch(batch.place_start));
    row.push_back(stopwatch(batch.place_end));
    row.push_back(meet_by(batch));
    row.push_back(places(batch, plan));
    table.add(std::move(row));
  }
  return table.str();
}

}  // namespace

std::string pour(const Plan& plan) {
  if (plan.batches.empty()) return "";
  std::string result = heading("POUR") + paragraph("  ", pace(plan)) +
                       paragraph("  ", edges(plan)) + paragraph("  ", working_time(plan));
  if (!plan.pour.water_rule.empty()) result += paragraph("  Water: ", plan.pour.water_rule);
  if (!plan.pour.retarder_reason.empty()) {
    result += paragraph("  Retarder: ", plan.pour.retarder_reason);
  }
  if (!plan.pour.smallest_crew.empty()) result += paragraph("  Crew: ", plan.pour.smallest_crew);
  result += "\n" + timetable(plan) + "\n";
  return result +
         paragraph("  ",
                   "Times are h:min or h:min:s after the first water of batch 1: start a stopwatch "
                   "then. \"Edge met by\": the batches that touch this one must be placed by then. "
                   "\"Where\": measured from the left end of the slab along its length, and from "
                   "its front edge into its depth.");
}

}  // namespace strikeoff::text
