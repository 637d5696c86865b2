// SPDX-License-Identifier: MIT
// A pad of our own with clipped corners and steel, looked at as its builder would.
#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

#include "plan/tasks.h"
#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "strikeoff/render.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using Catch::Matchers::Contains;

namespace {

/// Steel of that kind, or none where it is empty.
Plan pad(const std::string& steel, const std::string& site = R"({"air": "62 F"})") {
  const std::string reinforcement =
      steel.empty() ? ""
                    : R"("reinforcement": {"kind": ")" + steel +
                          R"(", "diameter": "1/4 in", "spacing": "6 in", "cover": "1 in"},)";
  const ReadResult read = read_job(R"({
    "units": "us",
    "slabs": [{
      "name": "stove pad", "support": "ground",
      "base": {"rectangle": {"length": "48 in", "depth": "40 in"}},
      "walls": ["back"], "thickness": "3 1/2 in",)" +
                                   reinforcement + R"(
      "corner_treatment": [{"corner": 1, "clip": "10 in"}, {"corner": 2, "clip": "10 in"}]
    }],
    "mix": "coarse-75lb",
    "crew": {"mixers": 1, "mixing": 1, "carrying": 1, "placing": 1},
    "site": )" + site + "}");
  REQUIRE(read.job);
  return make_plan(*read.job);
}

std::ptrdiff_t place_of(const Plan& plan, const std::string& beginning) {
  const auto found =
      std::find_if(plan.schedule.begin(), plan.schedule.end(),
                   [&](const Task& task) { return task.task.starts_with(beginning); });
  REQUIRE(found != plan.schedule.end());
  return found - plan.schedule.begin();
}

bool is_ready(const Plan& plan, const std::string& tool) {
  return std::count(plan.also_ready.begin(), plan.also_ready.end(), tool) == 1;
}

}  // namespace

TEST_CASE("zones that meet at a corner are no joint and make nobody wait", "[plan]") {
  const Plan plan = pad("");
  REQUIRE(plan.pour.joints.size() > 5);
  for (const Joint& joint : plan.pour.joints) CHECK(joint.length >= Length::mm(10));
  // Two rows: a batch is met by the one after the next, 2 x 5 min on, placed 7 min after its water.
  CHECK(in_minutes(plan.pour.edge_wait_max) == Approx(17));
}

TEST_CASE("a joint inside the slab says where both its ends are", "[plan]") {
  const Plan plan = pad("");
  const std::string text = render_text(plan);
  CHECK_THAT(text, !Contains("within the slab"));
  const Joint& joint = plan.pour.joints.front();
  CHECK_THAT(text, Contains("Joint 1-2 is where batch 2 goes against batch 1."));
  REQUIRE(joint.ends.size() == 2);
  // One end is on the edge, the other so far in from it.
  const auto inside = std::find_if(joint.ends.begin(), joint.ends.end(),
                                   [](const JointEnd& end) { return end.inward > Length{}; });
  REQUIRE(inside != joint.ends.end());
  CHECK_THAT(text, Contains(" in from the "));
}

TEST_CASE("steel that is bought is laid, after the release agent and before mixing", "[plan]") {
  for (const std::string kind : {"mesh", "bar"}) {
    const Plan plan = pad(kind);
    const std::string task = "Lay the steel on spacers";
    const auto laid = place_of(plan, task);
    CHECK(laid > place_of(plan, "Wipe a thin coat"));
    CHECK(plan.schedule[static_cast<std::size_t>(laid)].phase == "day before");
    CHECK_THAT(plan.schedule[static_cast<std::size_t>(laid)].task,
               Contains(kind == "bar" ? "the bars 1 in" : "the mesh 1 in"));
    CHECK(is_ready(plan, "spacers and tie wire"));
    CHECK(is_ready(plan, "bolt cutter"));
    CHECK_THAT(render_text(plan), Contains(kind == "bar" ? " ft in bars that" : " ft2 in sheets"));
  }
  const Plan plain = pad("");
  CHECK_FALSE(is_ready(plain, "spacers and tie wire"));
  CHECK(std::none_of(plain.schedule.begin(), plain.schedule.end(),
                     [](const Task& one) { return one.task.starts_with("Lay the steel"); }));
}

TEST_CASE("water of a temperature that was asked for says so where it is measured", "[plan]") {
  const Plan asked = pad("", R"({"air": "62 F", "water_temperature": "45 F"})");
  REQUIRE(asked.mix.water_temperature);
  CHECK(asked.mix.water_temperature->in_f() == Approx(45));
  CHECK_THAT(render_text(asked), Contains("of water at 45 F"));
  CHECK_THAT(render_html(asked), Contains("of water at 45 F"));
  CHECK_THAT(asked.schedule[static_cast<std::size_t>(place_of(asked, "Weigh out"))].task,
             Contains("have it at 45 F by a thermometer"));
  CHECK(is_ready(asked, "thermometer for the water"));
  const Plan as_it_comes = pad("");
  CHECK_FALSE(as_it_comes.mix.water_temperature);
  CHECK_THAT(render_text(as_it_comes), !Contains("of water at"));
}
