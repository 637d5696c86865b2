// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <cmath>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using text::heading;
using text::paragraph;

/// "10:54 (+0:49)", or without a clock "+0:49".
std::string moment(const Plan& rest, Duration at) {
  const bool seconds = text::has_seconds(at);
  const std::string stopwatch = text::stopwatch(at, seconds);
  const std::string clock = text::time_of_day(rest.date, at, seconds);
  return clock.empty() ? stopwatch : fmt::format("{} ({})", clock, stopwatch);
}

/// A deadline is rounded towards the safe side, down to the minute.
std::string deadline(const Plan& rest, Duration by) {
  return moment(rest, minutes(std::floor(in_minutes(by) + 1e-9)));
}

text::Text title(const Resume& resume) {
  const Plan& rest = resume.rest;
  const int in_hand = resume.begun - resume.placed;
  std::string state = count(resume.placed, "batch", "batches") + " placed";
  if (in_hand > 0) state += fmt::format(", {} in hand", in_hand);
  std::string text = "REST OF THE POUR";
  if (!rest.name.empty()) text += ": " + rest.name;
  return paragraph("", text) + paragraph("", moment(rest, resume.now) + ": " + state);
}

std::string doses(const Batch& batch, Units units) {
  std::string text;
  for (const BatchDose& dose : batch.doses) {
    if (dose.doses <= 0) continue;
    text += fmt::format("; {}: {}", dose.name, text::doses(dose.doses, dose.amount, units));
  }
  return text;
}

const Batch* find_batch(const Plan& rest, int number) {
  for (const Batch& batch : rest.batches) {
    if (batch.number == number) return &batch;
  }
  return nullptr;
}

text::Text next(const Resume& resume) {
  if (!resume.next) return "";
  const Plan& rest = resume.rest;
  const NextBatch& next = *resume.next;
  std::string first =
      fmt::format("WATER INTO BATCH {} {}", next.number,
                  next.contact > resume.now ? "AT " + moment(rest, next.contact) : "NOW");
  if (next.latest_contact) first += ", AT THE LATEST " + deadline(rest, *next.latest_contact);
  text::Text text = paragraph("  ", first + ".");
  const Batch* batch = find_batch(rest, next.number);
  if (!batch) return text;
  text +=
      paragraph("  ", fmt::format("{}, {} OF WATER ({} on a scale){}.", text::bags(batch->bags),
                                  show_water(batch->water, rest.units),
                                  show(batch->water_mass, rest.units), doses(*batch, rest.units)));
  return text;
}

text::Text edge(const Resume& resume) {
  if (!resume.meet_by) return "";
  const bool is_late = resume.stop_end && !resume.stop_end->is_for_bags;
  if (is_late && !resume.next) return "";
  return paragraph(
      "  ",
      fmt::format("MEET THE WET EDGE BY {}: batch {} placed, in {}.",
                  deadline(resume.rest, *resume.meet_by), resume.meet_with,
                  show(minutes(std::floor(in_minutes(*resume.meet_by - resume.now) + 1e-9)))));
}

text::Text stop_end(const Resume& resume) {
  if (!resume.stop_end) return "";
  const StopEnd& stop = *resume.stop_end;
  const Units units = resume.rest.units;
  std::string first = stop.after == 0 ? "STOP: NO BATCH GOES IN"
                                      : fmt::format("STOP-END AFTER BATCH {}", stop.after);
  if (stop.is_for_bags) first += ", UNLESS MORE BAGS COME";
  text::Text text = paragraph("  ", first + ": " + stop.reason + ".");
  if (stop.length > Length{}) {
    std::string where;
    for (const Joint& joint : stop.joints) {
      const std::string line = text::joint_line(joint, units);
      if (line.empty()) continue;
      where += (where.empty() ? " From " : "; and from ") + line;
      if (resume.rest.slabs.size() > 1) where += fmt::format(" ({})", joint.slab);
    }
    text += paragraph(
        "  ", fmt::format(
                  "Stand a board on edge there, {} long, oiled and screwed to the form.{}{} "
                  "Fill up to it, square and the full depth, and rod along it.",
                  show(text::on_tape(stop.length, units), units), where, where.empty() ? "" : "."));
  }
  return text + paragraph("  ", fmt::format("{} out today. Once the slab is hard: take the "
                                            "board away, roughen and wet the face, then go on.",
                                            stop.leaves_out == 1
                                                ? "1 batch stays"
                                                : fmt::format("{} batches stay", stop.leaves_out)));
}

text::Text now(const Resume& resume) {
  text::Text text;
  if (!resume.in_hand.empty()) text += paragraph("  ", "IN HAND: " + resume.in_hand);
  text += next(resume) + edge(resume) + stop_end(resume);
  if (text.empty()) {
    text = paragraph("  ",
                     "Nothing more to mix: by this log the forms are full. Where they are "
                     "not, fill them at once from the spare bag.");
  }
  return heading("NOW") + text;
}

text::Text left(const Resume& resume) {
  const Plan& rest = resume.rest;
  text::Table table({{""}, {""}});
  table.add({"Filled", show_concrete(resume.filled, rest.units) +
                           (resume.placed < resume.begun ? ", with what is in hand" : "") +
                           ", as the plan counts it"});
  table.add({"Still to fill", show_concrete(resume.left, rest.units)});
  table.add(
      {"Bags", fmt::format("{} used, {} needed, {} left{}", show_number(resume.bags_used, 2),
                           show_number(resume.bags_needed, 2), show_number(resume.bags_left, 2),
                           resume.bags_left_is_known ? "" : " by the plan: count them")});
  if (rest.pour.working_time && rest.pour.usable) {
    table.add(
        {"Working time", fmt::format("{}, of which a joint may use {}",
                                     show(*rest.pour.working_time), show(*rest.pour.usable))});
  }
  if (!rest.batches.empty()) table.add({"Last one placed", moment(rest, rest.pour.end)});
  return heading("LEFT") + text::placed(table);
}

}  // namespace

std::string render_text(const Resume& resume, const TextPage& page) {
  text::Text result = title(resume) + now(resume) + left(resume);
  if (!resume.rest.batches.empty()) {
    result += heading("BATCHES") + text::clock_table(resume.rest);
  }
  return (result + text::checks(resume.rest)).str(page);
}

}  // namespace strikeoff
