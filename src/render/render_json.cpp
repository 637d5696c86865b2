// SPDX-License-Identifier: MIT
#include <cmath>
#include <stdexcept>

#include "core/format.h"
#include "render/json_parts.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace json {

double number(double value) {
  if (!std::isfinite(value)) throw std::logic_error("a number of the plan is not finite");
  return value + 0.0;  // -0 + 0 is 0
}

}  // namespace json

namespace {

Json job(const Plan& plan) {
  Json result = {{"name", plan.name}};
  if (plan.date) result["date"] = iso(*plan.date);
  result["units"] = plan.units == Units::us ? "us" : "metric";
  result["currency"] = plan.currency;
  return result;
}

Json assumption(const Assumption& assumption) {
  return {{"path", assumption.path}, {"value", assumption.value}, {"reason", assumption.reason}};
}

}  // namespace

std::string render_json(const Plan& plan) {
  const Json file = {{"format", "strikeoff-plan/1"},
                     {"job", job(plan)},
                     {"assumptions", json::array(plan.assumptions, assumption)},
                     {"slabs", json::array(plan.slabs, json::slab)},
                     {"mix", json::mix(plan.mix)},
                     {"batches", json::array(plan.batches, json::batch)},
                     {"pour", json::pour(plan.pour)},
                     {"site", json::site(plan.site)},
                     {"hardening", json::hardening(plan.hardening)},
                     {"handling", json::handling(plan.handling)},
                     {"finish", json::finish(plan.finish)},
                     {"cut_list", json::cut_list(plan.cut_list)},
                     {"materials", json::array(plan.materials, json::material)},
                     {"cost", json::cost(plan.cost)},
                     {"schedule", json::array(plan.schedule, json::task)},
                     {"checks", json::array(plan.checks, json::check)}};
  return json_file(file);
}

}  // namespace strikeoff
