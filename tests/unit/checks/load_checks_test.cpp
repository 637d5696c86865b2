// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "loads/control_joints.h"
#include "loads/steel.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// The bench with a front that hangs out: stress and strength in MPa.
Check bending(double stress, std::optional<double> strength,
              std::optional<Duration> lean_from = {}) {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  Cantilever worst;
  worst.side = "front";
  worst.own = megapascals(stress / 2);
  worst.leaning = megapascals(stress / 2);
  if (strength) worst.strength = megapascals(*strength);
  worst.lean_from = lean_from;
  plan.slabs.front().loads.worst = worst;
  return find_check(overhang_checks(job, plan), "overhang-bending");
}

/// The bench on a partition that carries 60 kg, 150 kg on pour day.
Check support(std::optional<double> limit) {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.slabs.front().loads.bearings = {{"leg 1", {}, kilograms(40), kilograms(130)},
                                       {"leg 2", {}, kilograms(60), kilograms(150)}};
  if (limit) job.limits.support_load = kilograms(*limit);
  return find_check(support_checks(job, plan), "support-load");
}

/// Steel in a bench whose thinnest place is `thickness`, in mm.
Check cover(double thickness, Reinforcement given, std::optional<double> grain = 1) {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  job.slabs.front().reinforcement = given;
  job.mix.aggregate = std::nullopt;
  if (grain) job.mix.aggregate = Length::mm(*grain);
  SlabPlan& shape = plan.slabs.front();
  shape.least_thickness = Length::mm(thickness);
  shape.steel = plan_steel(job.slabs.front(), shape, job.mix);
  return find_check(steel_checks(job, plan), "cover");
}

Reinforcement bars(double diameter_mm, std::optional<double> cover_mm) {
  Reinforcement given{ReinforcementKind::bar, Length::mm(diameter_mm), {}, {}};
  if (cover_mm) given.cover = Length::mm(*cover_mm);
  return given;
}

Check ground(double length_mm, double depth_mm, double thickness_mm, const std::string& code) {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  Slab& slab = job.slabs.front();
  SlabPlan& shape = plan.slabs.front();
  slab.support = Support::ground;
  slab.thickness = Length::mm(thickness_mm);
  slab.base = corners_of({{}, Length::mm(length_mm), Length::mm(depth_mm)});
  shape.outline = slab.base;
  shape.control_joints = control_joints(slab, shape, job.mix);
  return find_check(ground_checks(job, plan), code);
}

}  // namespace

TEST_CASE("an overhang stressed over a third of its strength is a caution", "[checks]") {
  CHECK(bending(0.999, 3).level == Level::ok);
  CHECK(bending(1.001, 3).level == Level::caution);
  CHECK(bending(1.999, 3).level == Level::caution);  // 3/1.5
  CHECK(bending(2.001, 3).level == Level::stop);
  CHECK(*bending(1.001, 3).limit == Approx(1));
  CHECK(*bending(2.001, 3).limit == Approx(2));
  CHECK(*bending(0.8, 3).value == Approx(0.8));
}

TEST_CASE("an overhang of unknown strength never passes", "[checks]") {
  const Check check = bending(0.001, std::nullopt);
  CHECK(check.level == Level::caution);
  CHECK(*check.value == Approx(0.001));
  CHECK_FALSE(check.limit.has_value());
}

TEST_CASE("an overhang says from when people may lean on it", "[checks]") {
  CHECK(bending(0.5, 3, hours(5)).advice == "Nobody leans on it before 5 h after the first water.");
  CHECK(bending(0.5, 3).advice.empty());
  CHECK(find_check(overhang_checks(potting_bench_job(), potting_bench_plan()), "overhang-bending")
            .code.empty());
}

TEST_CASE("the heaviest support is judged by the job's limit and unknown without", "[checks]") {
  const Check unknown = support(std::nullopt);
  CHECK(unknown.level == Level::caution);
  CHECK(*unknown.value == Approx(60));
  CHECK(unknown.title.find("leg 2 carries about") != std::string::npos);
  CHECK(support(59.9).level == Level::stop);
  CHECK(support(60.1).level == Level::caution);  // the pour day's 150 kg are not
  CHECK(support(149.9).level == Level::caution);
  CHECK(*support(149.9).value == Approx(150));
  CHECK(support(150).level == Level::ok);
  CHECK(support(39.9).advice.find("Too much too: leg 1, 88.2 lb.") != std::string::npos);
  CHECK(support(40.1).advice.find("leg 1") == std::string::npos);
  CHECK(support(129.9).advice.find("Too much too: leg 1, 286.6 lb.") != std::string::npos);
  CHECK(find_check(support_checks(potting_bench_job(), potting_bench_plan()), "support-load")
            .code.empty());
}

TEST_CASE("a base that carries the slab but not its pour day is a caution", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();  // 0.83 kPa
  plan.slabs.front().loads.pour_day_load = kilopascals(1.2);
  const auto check = [&](double limit) {
    job.limits.base_load = kilopascals(limit);
    return find_check(support_checks(job, plan), "base-load");
  };
  CHECK(check(1.2).level == Level::ok);
  CHECK(check(1.19).level == Level::caution);
  CHECK(*check(1.19).value == Approx(1.2));
  CHECK(check(0.83).level == Level::caution);
  CHECK(check(0.829).level == Level::stop);
}

// Two layers of 6 mm under and over 20 mm need 52 mm.
TEST_CASE("steel needs room for its cover above and below", "[checks]") {
  CHECK(cover(52, bars(6, 20)).level == Level::ok);
  CHECK(cover(51.9, bars(6, 20)).level == Level::caution);
  CHECK(*cover(42, bars(6, 20)).value == Approx(15));
  CHECK(cover(14.1, bars(6, 20)).level == Level::caution);  // 1.05 mm for a grain of 1 mm
  CHECK(cover(14, bars(6, 20)).level == Level::stop);
  CHECK(cover(12, bars(6, 20), std::nullopt).level == Level::stop);
  CHECK(cover(11, bars(6, 20)).level == Level::stop);
}

TEST_CASE("cover under 20 mm or the grain is little", "[checks]") {
  CHECK(cover(100, bars(6, 20)).level == Level::ok);
  CHECK(cover(100, bars(6, 19.9)).level == Level::caution);
  CHECK(cover(100, bars(6, 24), 25).level == Level::caution);
  CHECK(cover(100, bars(6, 25), 25).level == Level::ok);
  CHECK(cover(100, bars(6, std::nullopt), 25).level == Level::ok);
}

TEST_CASE("cover is judged for bars and mesh and unknown without a diameter", "[checks]") {
  CHECK(cover(100, {ReinforcementKind::mesh, {}, {}, {}}).level == Level::caution);
  CHECK_FALSE(cover(100, {ReinforcementKind::mesh, {}, {}, {}}).value.has_value());
  CHECK(cover(100, {ReinforcementKind::fiber, {}, {}, {}}).code.empty());
  CHECK(cover(100, {}).code.empty());
}

TEST_CASE("what holds cracks together is said and fiber needs its dose", "[checks]") {
  Job job = potting_bench_job();  // 78 1/4 in long, 36 x 1 3/4 in = 63 in
  const Plan plan = potting_bench_plan();
  const auto check = [&](ReinforcementKind kind) {
    job.slabs.front().reinforcement.kind = kind;
    return find_check(steel_checks(job, plan), "reinforcement");
  };
  CHECK(check(ReinforcementKind::none).level == Level::caution);
  CHECK(check(ReinforcementKind::mesh).level == Level::ok);
  CHECK(check(ReinforcementKind::bar).level == Level::ok);
  CHECK(check(ReinforcementKind::fiber).title == "bench: the fiber has no dose");
  Additive fiber;
  fiber.kind = AdditiveKind::fiber;
  job.additives.push_back(fiber);
  CHECK(check(ReinforcementKind::fiber).level == Level::ok);
  CHECK(check(ReinforcementKind::none).level == Level::ok);
}

TEST_CASE("sharp corners of an opening ask for bars or a rounding", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  Slab& slab = job.slabs.front();
  const auto check = [&](double radius_mm) {
    slab.openings = {{"sink", {{}, Length::mm(400), Length::mm(300)}, true, Length::mm(radius_mm)}};
    return find_check(opening_checks(job, plan), "opening-corners");
  };
  CHECK(check(25).level == Level::ok);
  CHECK(check(24.9).level == Level::caution);
  CHECK(check(0).title == "bench: cracks may start from the corners of sink");
  job.units = Units::metric;
  slab.reinforcement.diameter = Length::mm(6);
  // 400 + 2 x 240 mm and 2 x 240 mm
  CHECK(check(0).advice ==
        "Round them to 25 mm or more, or lay 2 bars of 880 mm beside sink and 4 "
        "of 480 mm across the corners of sink, halfway up the slab.");
  slab.reinforcement.kind = ReinforcementKind::bar;
  CHECK(check(0).level == Level::ok);
  CHECK(check(0).advice.find("880 mm") != std::string::npos);
}

// 100 mm thick, grain of 1 mm: joints every 24 x 100 = 2400 mm.
TEST_CASE("a slab on the ground longer than its joint spacing asks for joints", "[checks]") {
  CHECK(ground(2400, 2400, 100, "joint-spacing").level == Level::ok);
  const Check check = ground(2401, 2400, 100, "joint-spacing");
  CHECK(check.level == Level::caution);
  CHECK(*check.limit == Approx(2400));
  CHECK(check.advice.find("1 joint from front to back") != std::string::npos);
  CHECK(find_check(ground_checks(potting_bench_job(), potting_bench_plan()), "joint-spacing")
            .code.empty());
}

TEST_CASE("a slab on the ground curls where it is thin and long", "[checks]") {
  CHECK(ground(2970, 600, 99, "curling").level == Level::ok);  // 30 x 99
  CHECK(ground(2971, 600, 99, "curling").level == Level::caution);
  CHECK(ground(5000, 600, 100, "curling").level == Level::ok);
}

TEST_CASE("a slab on the ground is parted by joints and asks for no steel", "[checks]") {
  Job job = potting_bench_job();
  job.slabs.front().support = Support::ground;
  CHECK(find_check(steel_checks(job, potting_bench_plan()), "reinforcement").code.empty());
}
