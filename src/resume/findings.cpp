// SPDX-License-Identifier: MIT
#include "resume/findings.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/format.h"
#include "pour/crew.h"

namespace strikeoff {
namespace {

constexpr auto knit_basis =
    "a joint may use the job's share of the working time, from the older batch's water until the "
    "younger one is placed";

Check timed(const char* code, Level level, std::string title) {
  Check check;
  check.code = code;
  check.level = level;
  check.title = std::move(title);
  return check;
}

/// "batch 3", "batches 3 and 4".
std::string numbered(const std::vector<int>& numbers) {
  std::string text = numbers.size() == 1 ? "batch " : "batches ";
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    if (i > 0) text += i + 1 == numbers.size() ? " and " : ", ";
    text += std::to_string(numbers[i]);
  }
  return text;
}

std::optional<Check> crew_is_whole(const Job& job) {
  const Pace beat = pace(job.crew);
  if (beat.missing.empty()) return std::nullopt;
  Check check = timed("crew", Level::stop, "The crew cannot pour: " + beat.bottleneck);
  check.advice = "Give every role to someone; the times here are those of one batch alone.";
  return check;
}

/// The worst joint still to be made.
std::optional<Check> wet_edge(const Job& job, const Resume& resume) {
  if (!resume.rest.pour.usable) {
    Check check = timed("wet-edge", Level::caution,
                        "Until when the wet edge can be met is not known: the bag gives no time");
    check.advice =
        "Try the edge: a rod pushed in and drawn out must leave no hole. Where it does, make a "
        "stop-end.";
    return check;
  }
  const OpenJoint* worst = nullptr;
  for (const OpenJoint& open : resume.joints) {
    if (!worst || *open.margin < *worst->margin) worst = &open;
  }
  if (!worst) return std::nullopt;
  Check check = timed("wet-edge", Level::ok, "Every joint still to come is made in time");
  check.value = in_minutes(worst->joint.wait);
  check.limit = in_minutes(*resume.rest.pour.usable);
  check.unit = "min";
  check.basis = knit_basis;
  const auto touching = fmt::format("batches {} and {}", worst->joint.first, worst->joint.second);
  if (resume.stop_end && !resume.stop_end->is_for_bags) {
    check.level = Level::stop;
    check.title = fmt::format("The edge of {} cannot be met in time", touching);
    check.advice = "Make the stop-end named above; a joint that is too old does not knit.";
  } else if (*worst->margin < job.limits.margin) {
    check.level = Level::caution;
    check.title = fmt::format("The edge of {} is met with {} to spare", touching,
                              show(std::max(*worst->margin, Duration{})));
    check.advice = "Have the next batch dry in its mixer and its water measured.";
  }
  return check;
}

std::optional<Check> made_too_late(const Resume& resume, const std::vector<Joint>& made) {
  if (!resume.rest.pour.usable) return std::nullopt;
  const Duration usable = *resume.rest.pour.usable;
  const Joint* worst = nullptr;
  int late = 0;
  for (const Joint& joint : made) {
    if (joint.wait <= usable + seconds(1e-6)) continue;
    ++late;
    if (!worst || joint.wait > worst->wait) worst = &joint;
  }
  if (!worst) return std::nullopt;
  Check check = timed("joint-waited", Level::caution,
                      late == 1 ? fmt::format("The joint of batches {} and {} waited too long",
                                              worst->first, worst->second)
                                : fmt::format("{} joints waited too long", late));
  check.value = in_minutes(worst->wait);
  check.limit = in_minutes(usable);
  check.unit = "min";
  check.advice =
      "While both sides still give way, rod across it into the older side. It may show as a line "
      "and be weak there: note where.";
  check.basis = knit_basis;
  return check;
}

Check bags(const Resume& resume, const std::string& by) {
  const std::string need = show_number(resume.bags_needed, 2),
                    left = show_number(resume.bags_left, 2);
  Check check = timed("bags-left", Level::ok,
                      fmt::format("The bags are enough: {} needed, {} left", need, left));
  check.value = resume.bags_left;
  check.limit = resume.bags_needed;
  check.unit = "bags";
  if (resume.bags_short > 0) {
    const bool goes_on = resume.stop_end && resume.stop_end->is_for_bags;
    check.level = goes_on ? Level::stop : Level::caution;
    check.title = fmt::format(
        "{} too few: {} needed, {} left",
        count(static_cast<int>(std::ceil(resume.bags_short - 1e-9)), "bag", "bags"), need, left);
    check.advice = goes_on ? fmt::format(
                                 "Get more of the same mix{}; without them end the slab at the "
                                 "stop-end named above. More water does not stretch a bag: it "
                                 "weakens it.",
                                 by)
                           : "Get more of the same mix for the day the rest is poured.";
  } else if (!resume.bags_left_is_known) {
    check.basis = "bags planned to be bought less those used; give bags_left to be sure";
  }
  return check;
}

/// When the batch that has no bags gets its water.
std::string bags_by(const Resume& resume) {
  if (!resume.stop_end || !resume.stop_end->is_for_bags) return "";
  const int first =
      resume.begun +
      static_cast<int>(
          std::floor(resume.bags_left / std::max(resume.rest.batches.back().bags, 1e-9) + 1e-9)) +
      1;
  for (const Batch& batch : resume.rest.batches) {
    if (batch.number != first) continue;
    return fmt::format(", to be here in {}", show(batch.contact - resume.now));
  }
  return "";
}

std::optional<Check> water(const Job& job, const Plan& plan, const PourLog& log) {
  std::vector<int> wetter, drier;
  double most = 0;  // L per bag
  for (const LoggedBatch& batch : log.batches) {
    const double per_bag = in_litres(water_of(batch, plan)) / bags_of(batch, plan);
    most = std::max(most, per_bag);
    // 1 % is what a careful crew keeps to (assumption).
    const double off = per_bag / in_litres(plan.mix.water_per_bag) - 1;
    if (off > 0.01 + 1e-9) wetter.push_back(batch.number);
    if (off < -0.01 - 1e-9) drier.push_back(batch.number);
  }
  if (wetter.empty() && drier.empty()) return std::nullopt;
  Check check = timed("water-drift", Level::caution, "Not all batches had the planned water");
  if (!wetter.empty()) {
    check.advice +=
        fmt::format("More in {}: softer and slower to set, weaker, paler, and it shrinks more. ",
                    numbered(wetter));
  }
  if (!drier.empty()) {
    check.advice +=
        fmt::format("Less in {}: stiffer, sets sooner, darker, harder to close at the joint. ",
                    numbered(drier));
  }
  if (job.mix.water_most && most > in_litres(*job.mix.water_most) * (1 + 1e-9)) {
    check.title = "A batch had more water than the bag allows";
  }
  check.advice += "Measure the rest as planned: a third colour helps nobody.";
  check.basis = "strength and colour follow the water (direction only; common practice)";
  return check;
}

std::vector<Check> depths(const Job& job, const Filling& filling) {
  std::vector<Check> checks;
  for (const DepthFound& depth : filling.depths) {
    const bool deeper = depth.deeper > Length{};
    const Length by = deeper ? depth.deeper : -depth.deeper;
    if (by < Length::mm(0.5)) continue;  // below what a tape shows
    Check check =
        timed("form-depth", Level::caution,
              fmt::format("{}: the form is {} {} than planned on average, {} {} in what is left",
                          depth.slab, show(by, job.units), deeper ? "deeper" : "shallower",
                          show_concrete(deeper ? depth.more : -depth.more, job.units),
                          deeper ? "more" : "less"));
    check.value = depth.deeper.in_mm();
    check.unit = "mm";
    check.basis = "mean of the depths in the log less the planned ones, over the area left";
    checks.push_back(std::move(check));
  }
  return checks;
}

}  // namespace

std::vector<Check> findings(const Job& job, const Plan& plan, const PourLog& log,
                            const Filling& filling, const Resume& resume,
                            const std::vector<Joint>& made) {
  std::vector<Check> checks;
  const auto add = [&](std::optional<Check> check) {
    if (check) checks.push_back(std::move(*check));
  };
  if (filling.batches_left > 0 || resume.placed < resume.begun) {
    add(crew_is_whole(job));
    add(wet_edge(job, resume));
    add(bags(resume, bags_by(resume)));
  }
  add(made_too_late(resume, made));
  add(water(job, plan, log));
  for (Check& check : depths(job, filling)) checks.push_back(std::move(check));
  std::stable_sort(checks.begin(), checks.end(),
                   [](const Check& a, const Check& b) { return a.level > b.level; });
  return checks;
}

std::string what_to_do_in_hand(const Resume& resume) {
  if (resume.placed == resume.begun) return "";
  std::vector<int> place, keep_out;
  for (int number = resume.placed + 1; number <= resume.begun; ++number) {
    const bool goes_in = !resume.stop_end || number <= resume.stop_end->after;
    (goes_in ? place : keep_out).push_back(number);
  }
  std::string text;
  if (!place.empty()) {
    text = fmt::format(
        "Place {} now{}.", numbered(place),
        resume.stop_end && resume.stop_end->after <= resume.begun ? ", up to the stop-end" : "");
  }
  if (!keep_out.empty()) {
    text += fmt::format(
        "{}Keep {} out of the slab and add no water to it: fill a spare form or a sample with it.",
        text.empty() ? "" : " ", numbered(keep_out));
  }
  return text;
}

}  // namespace strikeoff
