// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "strikeoff/plan.h"

namespace strikeoff::test {

/// The level of the plan's first check of this code; the test fails where there is none.
inline Level level_of(const Plan& plan, const std::string& code) {
  const auto found = std::find_if(plan.checks.begin(), plan.checks.end(),
                                  [&](const Check& check) { return check.code == code; });
  INFO(code);
  REQUIRE(found != plan.checks.end());
  return found->level;
}

/// The slab of this name; the test fails where there is none.
inline const SlabPlan& slab_of(const Plan& plan, const std::string& name) {
  const auto found = std::find_if(plan.slabs.begin(), plan.slabs.end(),
                                  [&](const SlabPlan& slab) { return slab.name == name; });
  INFO(name);
  REQUIRE(found != plan.slabs.end());
  return *found;
}

}  // namespace strikeoff::test
