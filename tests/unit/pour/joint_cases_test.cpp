// SPDX-License-Identifier: MIT
// Pours whose joints once came out wrong. Beat and waits are worked by hand beside each.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "strikeoff/planner.h"
#include "support/plan_parts.h"
#include "support/read.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// A bag of 12 L of a mix with no grain over 4 mm.
std::string mix(int working_min) {
  return fmt::format(
      R"({{"name": "invented mix", "bag": "22 kg", "yield": "12 L",
          "water": {{"least": "2.8 L", "most": "3.2 L"}}, "working_time": "{} min", "at": "20 C",
          "aggregate": "4 mm"}})",
      working_min);
}

/// One mixes, one carries and places. Mixer: 1 + 3 + 0.5 + 0.5 = 5 min, the beat; water to placed:
/// 3 + 0.5 + 0.5 + 2 = 6 min. So a joint waits 5 min a batch and 6: 11, 16, 21 min.
std::string job(const std::string& slabs, int working_min, int bags_per_batch = 1) {
  return fmt::format(
      R"({{"slabs": [{}], "mix": {}, "site": {{"water_temperature": "20 C"}},
          "crew": {{"mixers": 1, "roles": [["mix"], ["carry", "place"]], "bags_per_batch": {},
                    "times": {{"load": "1 min", "mix": "3 min", "discharge": "30 s",
                               "reset": "30 s", "carry": "30 s", "return": "30 s",
                               "place": "2 min"}}}}}})",
      slabs, mix(working_min), bags_per_batch);
}

std::string slab(const std::string& name, const std::string& base, int thickness_mm,
                 const std::string& more = "") {
  return fmt::format(R"({{"name": "{}", "base": {}, "support": "ground", "thickness": "{} mm"{}}})",
                     name, base, thickness_mm, more);
}

std::string rectangle(int length_mm, int depth_mm) {
  return fmt::format(R"({{"rectangle": {{"length": "{} mm", "depth": "{} mm"}}}})", length_mm,
                     depth_mm);
}

std::string opening(int x_mm, int y_mm, int length_mm, int depth_mm) {
  return fmt::format(
      R"(, "openings": [{{"name": "hole", "at": ["{} mm", "{} mm"],
          "rectangle": {{"length": "{} mm", "depth": "{} mm"}}}}])",
      x_mm, y_mm, length_mm, depth_mm);
}

Plan plan_of(const std::string& text) {
  return make_plan(job_of(text));
}

double wait_min(const Plan& plan) {
  return in_minutes(plan.pour.edge_wait_max);
}

double apart_mm(const Point& a, const Point& b) {
  return std::hypot((a.x - b.x).in_mm(), (a.y - b.y).in_mm());
}

}  // namespace

TEST_CASE("a sliver left over at a slab's end stops no pour, whichever slab is named first",
          "[joints]") {
  // 61.2 L and 33.3 L are 9 bags with a tenth to spare, so batches of 10.5 L: the first slab takes
  // 5.83 of them and leaves a ribbon of 600 x 73 mm, the second takes 3.17 and leaves one of 363.
  const std::string a = slab("counter", rectangle(2550, 600), 40);
  const std::string b = slab("side table", rectangle(1388, 600), 40);
  for (const std::string& slabs : {fmt::format("{},{}", a, b), fmt::format("{},{}", b, a)}) {
    CAPTURE(slabs);
    const Plan plan = plan_of(job(slabs, 24));  // 14.4 min for a joint
    REQUIRE(plan.pour.batches == 9);
    CHECK(plan.pour.gap == 1);
    CHECK(wait_min(plan) == Approx(11));
    CHECK(level_of(plan, "cold-joint") == Level::ok);
    CHECK(level_of(plan, "own-age") == Level::ok);
    for (const Joint& joint : plan.pour.joints) CHECK(joint.length.in_mm() == Approx(600));
  }
}

TEST_CASE("a wide pad is poured in narrow strips where cells would go cold", "[joints]") {
  // 720 L are 66 bags: strips 45 mm wide across the 2.4 m. Cells at least 200 mm deep would be five
  // in a row and wait 5 x 5 + 6 = 31 min of the 27.
  const Plan plan = plan_of(job(slab("pad", rectangle(3000, 2400), 100), 45));
  REQUIRE(plan.pour.batches == 66);
  CHECK(plan.pour.gap == 1);
  CHECK(wait_min(plan) == Approx(11));
  CHECK(level_of(plan, "cold-joint") != Level::stop);
  for (const Joint& joint : plan.pour.joints) CHECK(joint.length.in_mm() == Approx(2400));
}

TEST_CASE("a wide pad is poured in cells where those have time to spare", "[joints]") {
  // Two bags a batch, 33 of them: strips 91 mm wide, under 200, so three cells a row: 21 min of 36.
  const Plan plan = plan_of(job(slab("pad", rectangle(3000, 2400), 100), 60, 2));
  REQUIRE(plan.pour.batches == 33);
  CHECK(plan.pour.gap == 3);
  CHECK(wait_min(plan) == Approx(21));
  CHECK(level_of(plan, "cold-joint") == Level::ok);
}

TEST_CASE("a ring is poured on two fronts in turn, or each batch shared where that is too slow",
          "[joints]") {
  // 94.5 L are 9 bags. Bands 300 mm wide: half a batch advances one by 230 mm.
  const std::string ring = slab("surround", rectangle(1500, 1200), 75, opening(300, 300, 900, 600));
  const Plan in_turn = plan_of(job(ring, 28));  // 16.8 min for a joint
  CHECK(in_turn.pour.gap <= 2);
  CHECK(wait_min(in_turn) <= 16 + 1e-9);
  CHECK(level_of(in_turn, "cold-joint") != Level::stop);
  // 13.8 min: gap 1 alone, 11 min and what the splitting takes.
  const Plan shared = plan_of(job(ring, 23));
  CHECK(shared.pour.gap == 1);
  CHECK(level_of(shared, "cold-joint") != Level::stop);
}

TEST_CASE("a ring of two lifts is not stopped where strips across it knit", "[joints]") {
  // 226.8 L are 21 bags; strips of lower and upper lift in turn meet two batches on: 16 min, and
  // two for the splitting, of 18.
  const Plan plan =
      plan_of(job(slab("surround", rectangle(1500, 1200), 180, opening(300, 300, 900, 600)), 30));
  CHECK(plan.pour.gap <= 2);
  CHECK(level_of(plan, "cold-joint") != Level::stop);
}

TEST_CASE("a drain that shifts one row of cells makes no batch wait for a corner", "[joints]") {
  // 15 batches of two bags, strips of 132 mm, under 200: two cells a row, 16 min of the 21.
  for (const int x : {300, 500, 700, 900, 1100, 1300}) {
    CAPTURE(x);
    const Plan plan =
        plan_of(job(slab("pad", rectangle(2000, 1600), 100, opening(x, 550, 150, 150)), 35, 2));
    CHECK(plan.pour.gap == 2);
    CHECK(wait_min(plan) == Approx(16));
    CHECK(level_of(plan, "cold-joint") == Level::ok);
    for (const Joint& joint : plan.pour.joints) {
      CAPTURE(joint.first, joint.second);
      CHECK((joint.second - joint.first < plan.pour.gap || joint.length > mm(100)));
    }
  }
}

TEST_CASE("no joint of an L runs into its inner corner", "[joints]") {
  // 78 L are 8 bags; a batch is 325 mm of an arm 600 mm wide. Both arms are alike, so the joint in
  // the middle would run from corner to corner; likewise mirrored and upside down. Clear of the
  // corner: max(2 x 50, 100) = 100 mm. Moved there with as much on both sides it is 868 mm long.
  const std::vector<std::string> written{
      R"([["0 mm","0 mm"],["1600 mm","0 mm"],["1600 mm","600 mm"],["600 mm","600 mm"],
          ["600 mm","1600 mm"],["0 mm","1600 mm"]])",
      R"([["0 mm","0 mm"],["1600 mm","0 mm"],["1600 mm","1600 mm"],["1000 mm","1600 mm"],
          ["1000 mm","600 mm"],["0 mm","600 mm"]])",
      R"([["0 mm","1000 mm"],["1000 mm","1000 mm"],["1000 mm","0 mm"],["1600 mm","0 mm"],
          ["1600 mm","1600 mm"],["0 mm","1600 mm"]])"};
  const std::vector<Point> inner{{mm(600), mm(600)}, {mm(1000), mm(600)}, {mm(1000), mm(1000)}};
  for (std::size_t k = 0; k < written.size(); ++k) {
    CAPTURE(k);
    const Plan plan = plan_of(job(slab("L", R"({"corners": )" + written[k] + "}", 50), 24));
    REQUIRE(plan.pour.batches == 8);
    CHECK(plan.pour.gap == 1);
    CHECK(wait_min(plan) == Approx(11));
    CHECK(level_of(plan, "cold-joint") == Level::ok);
    CHECK(level_of(plan, "joint-at-corner") == Level::ok);
    for (const Joint& joint : plan.pour.joints) {
      CAPTURE(joint.first, joint.second);
      CHECK(joint.length.in_mm() <= 1.6 * 600);
      REQUIRE(joint.line.size() >= 2);
      for (const Point& end : {joint.line.front(), joint.line.back()}) {
        CHECK(apart_mm(end, inner[k]) >= 100 - 1e-3);
      }
    }
  }
}
