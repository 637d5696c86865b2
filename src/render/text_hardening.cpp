// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

constexpr double noticed = 1.05;  // less slowing is within any label's rounding

std::string slowing_words(const HardeningPlan& plan, Units units) {
  const std::string air = plan.coldest == plan.warmest
                              ? show(plan.coldest, units)
                              : fmt::format("{} at night, {} by day", show(plan.coldest, units),
                                            show(plan.warmest, units));
  return fmt::format("In this air ({}) the slab takes {} times as long as the bag says.", air,
                     show_number(*plan.slowing, 1));
}

/// Under a few per cent of any label's strength there is none to speak of.
constexpr Pressure none_yet = megapascals(0.1);

std::string strength_words(const HardeningPlan& plan, Units units) {
  std::vector<std::string> parts;
  for (const ExpectedStrength& expected : plan.expected) {
    const Pressure reached = expected.point.strength;
    const std::string strength = reached < none_yet ? "none yet" : show_strength(reached, units);
    parts.push_back(expected.when == "strip" ? strength + " when it is stripped"
                                             : strength + " after " + expected.when);
  }
  return "Strength to expect, an estimate from the bag's: " + joined(parts, ", ") + ".";
}

}  // namespace

Text hardening(const Plan& plan) {
  const HardeningPlan& hard = plan.hardening;
  Text result;
  if (hard.slowing && *hard.slowing >= noticed) {
    result += paragraph("  ", slowing_words(hard, plan.units));
  }
  if (!hard.expected.empty()) result += paragraph("  ", strength_words(hard, plan.units));
  if (hard.start_by) {
    result += paragraph("  ", fmt::format("Begin the pour by {} at the latest, to use it in time.",
                                          readable(*hard.start_by)));
  }
  if (result.empty()) return "";
  Table table({{"Step"}, {"Waits for"}});
  for (const Milestone& step : hard.milestones) {
    if (step.from) table.add({step.step, step.reason});
  }
  return heading("HARDENING") + result + placed(table);
}

}  // namespace strikeoff::text
