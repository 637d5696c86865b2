// SPDX-License-Identifier: MIT
#include "checks/checks.h"

#include <algorithm>
#include <utility>

namespace strikeoff {

Check measured(std::string code, std::string title, Length value, Length limit, std::string basis) {
  Check check;
  check.code = std::move(code);
  check.title = std::move(title);
  check.value = value.in_mm();
  check.limit = limit.in_mm();
  check.unit = "mm";
  check.basis = std::move(basis);
  return check;
}

void add(const std::optional<Check>& check, std::vector<Check>& checks) {
  if (check) checks.push_back(*check);
}

void set_about(const std::string& name, std::size_t first, std::vector<Check>& checks) {
  for (std::size_t i = first; i < checks.size(); ++i) checks[i].about = name;
}

std::vector<Check> run_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (auto group : {pour_checks(job, plan), mix_checks(job, plan), site_checks(job, plan),
                     base_checks(job, plan), slab_checks(job, plan), opening_checks(job, plan),
                     overhang_checks(job, plan), support_checks(job, plan), steel_checks(job, plan),
                     ground_checks(job, plan), panel_checks(job, plan), stiffness_checks(job, plan),
                     form_checks(job, plan), hardening_checks(job, plan), lift_checks(job, plan),
                     safety_checks(job, plan)}) {
    checks.insert(checks.end(), group.begin(), group.end());
  }
  std::stable_sort(checks.begin(), checks.end(),
                   [](const Check& a, const Check& b) { return a.level > b.level; });
  return checks;
}

bool has_stop(const Plan& plan) {
  return std::any_of(plan.checks.begin(), plan.checks.end(),
                     [](const Check& check) { return check.level == Level::stop; });
}

}  // namespace strikeoff
