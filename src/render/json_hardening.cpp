// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

Json strength_point(const StrengthPoint& point) {
  return {{"age_h", number(in_hours(point.age))},
          {"equivalent_h", number(in_hours(point.equivalent))},
          {"strength_mpa", number(in_megapascals(point.strength))}};
}

Json expected_strength(const ExpectedStrength& expected) {
  Json result = {{"when", expected.when}};
  result.add(strength_point(expected.point));
  return result;
}

Json step_milestone(const Milestone& step) {
  Json result = {{"step", step.step}};
  if (step.label) result["label_h"] = number(in_hours(*step.label));
  if (step.strength) result["strength_mpa"] = number(in_megapascals(*step.strength));
  if (step.strong) result["strong_h"] = number(in_hours(*step.strong));
  if (step.from) result["from_h"] = number(in_hours(*step.from));
  result["reason"] = step.reason;
  return result;
}

}  // namespace

Json hardening(const HardeningPlan& plan) {
  Json result = {{"coldest_c", number(plan.coldest.in_c())},
                 {"warmest_c", number(plan.warmest.in_c())},
                 {"mean_c", number(plan.mean.in_c())}};
  if (plan.slowing) result["slowing"] = number(*plan.slowing);
  result["curve"] = plan.curve;
  if (plan.ultimate) result["ultimate_mpa"] = number(in_megapascals(*plan.ultimate));
  result["strength"] = array(plan.strength, strength_point);
  result["expected"] = array(plan.expected, expected_strength);
  result["milestones"] = array(plan.milestones, step_milestone);
  if (plan.start_by) result["start_by"] = *plan.start_by;
  return result;
}

}  // namespace strikeoff::json
