// SPDX-License-Identifier: MIT
#include "render/json_parts.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using json::number;

Json chance(const Chance& chance) {
  return {{"times", chance.times},
          {"chance", number(chance.share)},
          {"low", number(chance.low)},
          {"high", number(chance.high)}};
}

void add(Json& object, const char* key, const std::optional<Chance>& value) {
  if (value) object[key] = chance(*value);
}

void add(Json& object, const char* key, const std::optional<Quantiles>& value) {
  if (!value) return;
  object[key] = {{"p5", number(in_minutes(value->p5))},
                 {"p50", number(in_minutes(value->p50))},
                 {"p95", number(in_minutes(value->p95))}};
}

Json chances(const Odds& odds) {
  Json result = Json::Object{};
  add(result, "cold_joint", odds.cold_joint);
  add(result, "stiff_batch", odds.stiff_batch);
  add(result, "late_trowel", odds.late_trowel);
  add(result, "overrun", odds.overrun);
  result["short_of_mix"] = chance(odds.short_of_mix);
  result["short_with_spare"] = chance(odds.short_with_spare);
  return result;
}

Json joint(const JointShare& joint) {
  Json result = {{"batches", Json::List{joint.first, joint.second}}};
  result.add(chance(joint.worst));
  return result;
}

Json driver(const Driver& driver) {
  return {{"input", driver.name}, {"share", number(driver.share)}};
}

Json remedy(const SaferMix& remedy) {
  Json result = {{"working_time_min", number(in_minutes(remedy.working_time))}};
  if (!remedy.doses) return result;
  result["retarder"] = remedy.retarder;
  result["doses_per_bag"] = number(*remedy.doses);
  result["planned_doses_per_bag"] = number(remedy.planned);
  result["most_doses_per_bag"] = number(*remedy.most_doses);
  result["enough"] = remedy.enough;
  return result;
}

Json odds_assumption(const OddsAssumption& assumption) {
  return {{"what", assumption.what}, {"value", assumption.value}, {"reason", assumption.reason}};
}

Json same(const std::string& text) {
  return text;
}

}  // namespace

std::string render_json(const Odds& odds) {
  Json file = {
      {"format", "strikeoff-odds/1"},
      {"job", odds.name},
      {"runs", odds.runs},
      {"seed", odds.seed},
      {"risk", number(odds.risk)},
      {"batches", odds.batches},
      {"plan_stops", odds.plan_stops},
      {"chances", chances(odds)},
      {"bags", {{"planned", odds.bags}, {"spare", odds.spare_bags}, {"needed", odds.bags_needed}}}};
  if (odds.pour_within) file["pour_within_min"] = number(in_minutes(*odds.pour_within));
  add(file, "end_min", odds.end);
  add(file, "worst_wait_min", odds.worst_wait);
  add(file, "margin_min", odds.margin);
  file["worst_joints"] = json::array(odds.joints, joint);
  file["drivers"] = json::array(odds.drivers, driver);
  if (!odds.drivers.empty()) file["unexplained"] = number(odds.unexplained);
  if (odds.remedy) file["remedy"] = remedy(*odds.remedy);
  file["unknown"] = json::array(odds.unknown, same);
  file["advice"] = json::array(odds.advice, same);
  file["assumptions"] = json::array(odds.assumptions, odds_assumption);
  return json_file(file);
}

}  // namespace strikeoff
