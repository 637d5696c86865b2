// SPDX-License-Identifier: MIT
#include <cmath>

#include "render/json_parts.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

/// What is not given is null.
Json value(double number) {
  return std::isnan(number) ? Json() : Json(json::number(number));
}

Json plan_number(const PlanNumber& number) {
  return {{"name", number.name},
          {"pointer", number.pointer},
          {"value", value(number.value)},
          {"unit", number.unit}};
}

Json input(const WhyInput& input) {
  Json result = {{"symbol", input.symbol}};
  if (input.is_list) {
    result["values"] = json::array(input.values, value);
  } else {
    result["value"] = input.values.empty() ? Json() : value(input.values.front());
  }
  result["unit"] = input.unit;
  result["origin"] = input.origin;
  return result;
}

void add_working(const Working& working, Json& object) {
  object["formula"] = working.formula;
  object["worked"] = working.worked;
  if (working.result) object["result"] = value(*working.result);
  object["inputs"] = json::array(working.inputs, input);
}

Json step(const WhyStep& step) {
  Json result = plan_number(step.number);
  result["words"] = step.words;
  add_working(step.working, result);
  return result;
}

Json kind(const ExplainedKind& kind) {
  return {{"name", kind.name},
          {"words", kind.words},
          {"numbers", json::array(kind.numbers, plan_number)}};
}

}  // namespace

std::string render_json(const Explanation& why) {
  Json file = {{"format", "strikeoff-why/1"}};
  file.add(plan_number(why.number));
  file["words"] = why.words;
  add_working(why.working, file);
  file["rests_on"] = json::array(why.rests_on, step);
  file["source"] = why.source;
  file["known"] = why.known;
  file["others"] = json::array(why.others, plan_number);
  file["kind_size"] = why.kind_size;
  return json_file(file);
}

std::string render_json(const std::vector<ExplainedKind>& kinds) {
  return json_file({{"format", "strikeoff-why-list/1"}, {"kinds", json::array(kinds, kind)}});
}

}  // namespace strikeoff
