// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <cmath>

#include "checks/checks.h"
#include "checks/rails.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check slab_check(const Job& job, const Plan& plan, const std::string& code) {
  for (const auto& group :
       {slab_checks(job, plan), opening_checks(job, plan), overhang_checks(job, plan),
        support_checks(job, plan), steel_checks(job, plan)}) {
    const Check check = find_check(group, code);
    if (!check.code.empty()) return check;
  }
  return {};
}

/// The bench with an opening at this place of the base frame.
struct Opened {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  void open(Rectangle at) {
    job.slabs.front().openings.push_back({"sink", at, true});
    plan.slabs.front().openings.push_back({outline_of(at, {}), at});
  }
};

}  // namespace

TEST_CASE("the slot at the rim has two limits from grain and width", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  const auto level = [&](double slot_mm, double grain_mm) {
    Side& side = job.slabs.front().sides[2];
    side.overhang = Length::mm(20);
    side.panel_overhang = Length::mm(20 - slot_mm);
    job.mix.aggregate = Length::mm(grain_mm);
    return slab_check(job, plan, "slot-width").level;
  };
  CHECK(level(12, 4) == Level::ok);
  CHECK(level(11.9, 4) == Level::caution);
  CHECK(level(6, 4) == Level::caution);  // 1.5 x 4
  CHECK(level(5.9, 4) == Level::stop);
  CHECK(level(5, 1) == Level::caution);
  CHECK(level(4.9, 1) == Level::stop);
  CHECK(level(14.9, 5) == Level::caution);  // 3 x 5
  CHECK(level(15, 5) == Level::ok);
}

TEST_CASE("an unknown aggregate never passes and no panel has no slot", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  CHECK(slab_check(job, plan, "slot-width").level == Level::ok);
  job.mix.aggregate = std::nullopt;
  CHECK(slab_check(job, plan, "slot-width").level == Level::caution);
  CHECK(slab_check(job, plan, "thin-slab").level == Level::caution);
  job.slabs.front().panel = std::nullopt;
  CHECK(slab_check(job, plan, "slot-width").code.empty());
}

TEST_CASE("a wall has no slot to fill", "[checks]") {
  Job job = potting_bench_job();
  Side& back = job.slabs.front().sides[2];
  back.wall = true;
  back.overhang = back.panel_overhang = Length{};
  CHECK(slab_check(job, potting_bench_plan(), "slot-width").level == Level::ok);
}

TEST_CASE("thin is a caution and thinner than the bag allows a stop", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  job.mix.least_thickness = Length::mm(13);
  const auto level = [&](double mm) {
    plan.slabs.front().least_thickness = Length::mm(mm);
    return slab_check(job, plan, "thin-slab").level;
  };
  CHECK(level(25) == Level::ok);
  CHECK(level(24.9) == Level::caution);
  CHECK(level(13) == Level::caution);
  CHECK(level(12.9) == Level::stop);
  job.mix.aggregate = Length::mm(10);
  CHECK(level(29.9) == Level::caution);  // 3 x 10
  CHECK(level(30) == Level::ok);
}

TEST_CASE("thickness is over the panel only where there is one", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto check = [&](double mm) {
    plan.slabs.front().least_thickness = Length::mm(mm);
    return slab_check(job, plan, "thin-slab");
  };
  CHECK(check(25.4).title == "bench: thick enough over the panel");
  CHECK(check(20).title == "bench: thin over the panel");
  CHECK(check(12).advice.find("the panel thinner") != std::string::npos);
  job.slabs.front().panel = std::nullopt;
  CHECK(check(25.4).title == "bench: thick enough");
  CHECK(check(20).title == "bench: thin");
  CHECK(check(20).advice.find("make the slab thicker") != std::string::npos);
  CHECK(check(12).advice.find("panel") == std::string::npos);
}

TEST_CASE("the rail beside an opening is measured to the outline and to the next one", "[checks]") {
  Opened bench;  // outline to (77 1/8, 25 1/8) in
  CHECK_FALSE(narrowest_rail(bench.plan.slabs.front()));
  const auto in = [](double v) { return Length::inches(v); };
  bench.open({{in(30), in(5)}, in(20), in(15)});
  CHECK(narrowest_rail(bench.plan.slabs.front())->width.in_in() == Approx(5.125));
  bench.open({{in(53), in(22.125)}, in(1), in(1)});  // 2 before the back
  CHECK(narrowest_rail(bench.plan.slabs.front())->width.in_in() == Approx(2));
  bench.plan.slabs.front().openings.pop_back();
  bench.open({{in(51), in(21)}, in(1), in(1)});
  CHECK(narrowest_rail(bench.plan.slabs.front())->width.in_in() == Approx(std::sqrt(2.0)));
}

TEST_CASE("a rail beside a slanted side or a pointed corner is measured square", "[checks]") {
  const auto in = [](double v) { return Length::inches(v); };
  const auto rail = [&](const std::vector<std::pair<double, double>>& corners, Rectangle opening) {
    SlabPlan slab;
    for (const auto& [x, y] : corners) slab.outline.push_back({in(x), in(y)});
    slab.openings = {{outline_of(opening, {}), opening}};
    return narrowest_rail(slab)->width.in_in();
  };
  // From (45, 45) to x + y = 100: 10/sqrt 2.
  CHECK(rail({{0, 0}, {100, 0}, {0, 100}}, {{in(30), in(30)}, in(15), in(15)}) ==
        Approx(10 / std::sqrt(2.0)));
  // A corner at (50, 20) points at the middle of an opening whose far side is at 15.
  CHECK(rail({{0, 0}, {100, 0}, {100, 60}, {50, 20}, {0, 60}}, {{in(30), in(6)}, in(40), in(9)}) ==
        Approx(5));
}

TEST_CASE("a rail needs twice the thickness or 75 mm", "[checks]") {
  const auto level = [](double rail_mm, double thickness_mm) {
    Opened bench;
    bench.job.slabs.front().thickness = Length::mm(thickness_mm);
    bench.open({{Length::mm(500), Length::inches(-1.125) + Length::mm(rail_mm)},
                Length::mm(300),
                Length::mm(300)});
    return slab_check(bench.job, bench.plan, "narrow-rail").level;
  };
  CHECK(level(75, 30) == Level::ok);
  CHECK(level(74.9, 30) == Level::caution);
  CHECK(level(100, 50) == Level::ok);
  CHECK(level(99.9, 50) == Level::caution);
}

TEST_CASE("an overhang stops at four times its depth or at 300 mm", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  const auto level = [&](double overhang_mm, double panel_overhang_mm, double thickness_mm) {
    Slab& slab = job.slabs.front();
    slab.thickness = Length::mm(thickness_mm);
    slab.panel->thickness = Length::mm(10);
    slab.sides[0].overhang = Length::mm(overhang_mm);
    slab.sides[0].panel_overhang = Length::mm(panel_overhang_mm);
    return slab_check(job, plan, "overhang").level;
  };
  CHECK(level(80, 5, 50) == Level::ok);  // 4 x (50 - 10) = 160
  CHECK(level(80.1, 5, 50) == Level::caution);
  CHECK(level(160, 5, 50) == Level::caution);
  CHECK(level(160.1, 5, 50) == Level::stop);
  CHECK(level(200, 0, 50) == Level::caution);  // the panel stops at the base's face: 4 x 50
  CHECK(level(200.1, 0, 50) == Level::stop);
  CHECK(level(300, 0, 100) == Level::caution);
  CHECK(level(300.1, 0, 100) == Level::stop);
}

TEST_CASE("the overhang judged is the one that uses most of what its depth allows", "[checks]") {
  Job job = potting_bench_job();
  Slab& slab = job.slabs.front();
  slab.thickness = Length::mm(50);
  slab.panel->thickness = Length::mm(25);
  for (Side& side : slab.sides) side.overhang = side.panel_overhang = Length{};
  slab.sides[0].overhang = Length::mm(45);  // of 4 x (50 - 25) = 100
  slab.sides[0].panel_overhang = Length::mm(5);
  slab.sides[2].overhang = Length::mm(120);  // of 4 x 50 = 200, which leaves more to spare
  const Check check = slab_check(job, potting_bench_plan(), "overhang");
  CHECK(check.level == Level::caution);
  CHECK(*check.value == Approx(120));
}

TEST_CASE("an overhang on brackets is not stopped and says what carries it", "[checks]") {
  Job job = potting_bench_job();
  Slab& slab = job.slabs.front();
  for (Side& side : slab.sides) side.overhang = side.panel_overhang = Length{};
  slab.thickness = Length::mm(50);
  slab.sides[1].overhang = Length::mm(320);  // over 4 x 50 and over 300
  CHECK(slab_check(job, potting_bench_plan(), "overhang").level == Level::stop);
  slab.sides[1].bracket = true;
  const Check carried = slab_check(job, potting_bench_plan(), "overhang");
  CHECK(carried.level == Level::caution);
  CHECK(carried.title == "bench: brackets carry the right");
  CHECK(carried.advice.find("every 2 ft at most before the pour") != std::string::npos);
  slab.sides[0].overhang = Length::mm(200.1);  // without a bracket, on the same slab
  CHECK(slab_check(job, potting_bench_plan(), "overhang").level == Level::stop);
  slab.sides[0].overhang = Length{};
  slab.sides[1].overhang = Length::mm(100);
  CHECK(slab_check(job, potting_bench_plan(), "overhang").level == Level::ok);
}

// Panel corner 5/8 in (15.875 mm) inside the sharp corner both ways: a radius r leaves
// r - sqrt(2) (r - 15.875 mm): 12 mm at 25.2 mm, 5 mm at 42.1 mm, nothing at 54.2 mm.
TEST_CASE("the slot at a rounded corner is as narrow as the panel's corner makes it", "[checks]") {
  Job job = potting_bench_job();
  job.mix.aggregate = Length::mm(1);
  Plan plan = potting_bench_plan();
  const Polygon sharp = plan.slabs.front().outline;
  const auto check = [&](double radius_mm) {
    job.slabs.front().corner_cuts = {{2, Length::mm(radius_mm), true}};
    plan.slabs.front().outline =
        chords(with_corners(sharp, job.slabs.front().corner_cuts), drawn_within);
    return slab_check(job, plan, "slot-width");
  };
  job.slabs.front().sides[2].corner = 3;
  CHECK(check(25.1).level == Level::ok);
  CHECK(check(25.4).level == Level::caution);
  CHECK(check(25.4).title == "bench: the slot at corner 3 is narrow");
  CHECK(check(41.9).level == Level::caution);
  CHECK(check(42.3).level == Level::stop);
  CHECK(check(42.3).advice.find("round or cut the slab's corner less, or set the panel back (its "
                                "\"overhang\") to leave 1/2 in") != std::string::npos);
  CHECK(*check(70).value < 0);
  CHECK(check(70).advice.find("sticks out") != std::string::npos);
}

TEST_CASE("every corner whose slot is too narrow is named at once", "[checks]") {
  Job job = potting_bench_job();
  job.mix.aggregate = Length::mm(1);
  Plan plan = potting_bench_plan();
  Slab& slab = job.slabs.front();
  slab.corner_cuts = {{1, Length::mm(42.3), true}, {2, Length::mm(50), true}};
  slab.sides[1].corner = 2;
  slab.sides[2].corner = 3;
  plan.slabs.front().outline =
      chords(with_corners(plan.slabs.front().outline, slab.corner_cuts), drawn_within);
  const Check check = slab_check(job, plan, "slot-width");
  CHECK(check.title == "bench: the slot at corner 3 is too narrow to fill");
  CHECK(check.advice.find(" at corner 2: ") != std::string::npos);
  // A third corner that is wide enough is not.
  slab.corner_cuts[0].size = Length::mm(20);
  plan.slabs.front().outline = corners_of({{}, Length::inches(78.25), Length::inches(26.25)});
  plan.slabs.front().outline =
      chords(with_corners(plan.slabs.front().outline, slab.corner_cuts), drawn_within);
  CHECK(slab_check(job, plan, "slot-width").advice.find("corner 2") == std::string::npos);
}

TEST_CASE("the base is judged by the job's limit and unknown without one", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();  // 0.83 kPa
  CHECK(slab_check(job, plan, "base-load").level == Level::caution);
  CHECK(*slab_check(job, plan, "base-load").value == Approx(0.83));
  job.limits.base_load = kilopascals(0.83);
  CHECK(slab_check(job, plan, "base-load").level == Level::ok);
  job.limits.base_load = kilopascals(0.82);
  CHECK(slab_check(job, plan, "base-load").level == Level::stop);
}

// 1 3/4 in thick: joints every 42 to 63 in on ground by 24 to 36 times the thickness (ACI 302.1R).
TEST_CASE("a top longer than 36 times its thickness is advised steel", "[checks]") {
  Opened bench;
  SlabPlan& shape = bench.plan.slabs.front();
  CHECK(slab_check(bench.job, bench.plan, "reinforcement").level == Level::caution);
  shape.outline = corners_of({{}, Length::inches(63), Length::inches(26.25)});
  CHECK(slab_check(bench.job, bench.plan, "reinforcement").code.empty());
}
