// SPDX-License-Identifier: MIT
// Laws that hold for a whole plan, whatever the job: what must not change, what must scale, what
// must balance. Jobs are random but seeded; the seed is printed when a law breaks.
#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <random>

#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"

using namespace strikeoff;

namespace {

int draw(std::mt19937_64& random, int low, int high) {
  return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
}

struct SlabText {
  int length_mm, depth_mm, overhang_mm, thickness_mm;
  bool wall;
};

SlabText random_slab(std::mt19937_64& random) {
  return {draw(random, 400, 3000), draw(random, 300, 900), draw(random, 0, 60),
          draw(random, 38, 70), draw(random, 0, 1) == 1};
}

std::string slab_json(const SlabText& slab, const std::string& name, double scale = 1) {
  return fmt::format(
      R"({{"name": "{}", "base": {{"rectangle": {{"length": "{} mm", "depth": "{} mm"}}}},
          "overhang": {{"all": "{} mm"{}}}, {} "thickness": "{} mm",
          "panel": {{"stock": {{"name": "sheet", "length": "{} mm", "width": "{} mm",
                                "thickness": "{} mm"}}, "overhang": "0 mm"}}}})",
      name, slab.length_mm * scale, slab.depth_mm * scale, slab.overhang_mm * scale,
      slab.wall ? R"(, "back": "0 mm")" : "", slab.wall ? R"("walls": ["back"],)" : "",
      slab.thickness_mm * scale, 1200 * scale, 900 * scale, 12 * scale);
}

std::string job_json(const std::string& slabs) {
  return fmt::format(
      R"({{"units": "metric", "slabs": [{}], "mix": "rapid-fine-24kg",
          "crew": {{"mixers": 1, "bags_per_batch": 1}}}})",
      slabs);
}

Plan plan_of(const std::string& json) {
  const ReadResult read = read_job(json);
  CAPTURE(json);
  REQUIRE(read.diagnostics.empty());
  return make_plan(*read.job);
}

}  // namespace

TEST_CASE("water and mass and volume balance over the batches", "[laws]") {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    std::mt19937_64 random(seed);
    const Plan plan = plan_of(
        job_json(slab_json(random_slab(random), "a") + "," + slab_json(random_slab(random), "b")));
    Volume water, zones, slabs, mixed;
    Mass dry;
    double bags = 0;
    for (const Batch& batch : plan.batches) {
      water += batch.water;
      zones += batch.zone;
      mixed += batch.volume;
      dry += batch.dry;
      bags += batch.bags;
    }
    for (const SlabPlan& slab : plan.slabs) slabs += slab.concrete;
    CHECK(water.si() == Approx(plan.mix.water_total.si()).epsilon(1e-12));
    CHECK(zones.si() == Approx(slabs.si()).epsilon(1e-12));
    CHECK(bags == Approx(plan.mix.bags));
    CHECK(dry.si() == Approx(24.0 * bags).epsilon(1e-12));
    CHECK(mixed.si() ==
          Approx((plan.mix.concrete + plan.mix.waste + plan.mix.surplus).si()).epsilon(1e-12));
    for (const Batch& batch : plan.batches) {
      CHECK(batch.water.si() == Approx(plan.batches.front().water.si()));
    }
  }
}

TEST_CASE("scaling every length by k scales the concrete by k cubed", "[laws]") {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    std::mt19937_64 random(seed);
    const SlabText slab = random_slab(random);
    const Volume one = plan_of(job_json(slab_json(slab, "a"))).mix.concrete;
    const Volume two = plan_of(job_json(slab_json(slab, "a", 2))).mix.concrete;
    CHECK(two.si() == Approx(8 * one.si()).epsilon(1e-12));
  }
}

TEST_CASE("the order of slabs changes neither what is bought nor how long it takes", "[laws]") {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    std::mt19937_64 random(seed);
    const std::string a = slab_json(random_slab(random), "a");
    const std::string b = slab_json(random_slab(random), "b");
    const Plan ab = plan_of(job_json(a + "," + b)), ba = plan_of(job_json(b + "," + a));
    CHECK(ab.mix.bags == ba.mix.bags);
    CHECK(ab.mix.concrete.si() == Approx(ba.mix.concrete.si()).epsilon(1e-12));
    CHECK(ab.cost.total.si() == Approx(ba.cost.total.si()));
    CHECK(in_minutes(ab.pour.end) == Approx(in_minutes(ba.pour.end)));
    REQUIRE(ab.cut_list.totals.size() == ba.cut_list.totals.size());
    for (std::size_t i = 0; i < ab.cut_list.totals.size(); ++i) {
      CHECK(ab.cut_list.totals[i].used == ba.cut_list.totals[i].used);
    }
  }
}

TEST_CASE("an outline given as corners from anywhere plans like its rectangle", "[laws]") {
  // Translated, clockwise, or started at another corner: the same slab.
  const std::string rest = R"("overhang": "20 mm", "thickness": "40 mm"}], "mix": "fine-20kg"})";
  const Plan rectangle = plan_of(
      R"({"slabs": [{"base": {"rectangle": {"length": "2000 mm", "depth": "600 mm"}}, )" + rest);
  const auto corners = GENERATE(
      R"([["0 mm","0 mm"],["2000 mm","0 mm"],["2000 mm","600 mm"],["0 mm","600 mm"]])",
      R"([["500 mm","700 mm"],["2500 mm","700 mm"],["2500 mm","1300 mm"],["500 mm","1300 mm"]])",
      R"([["0 mm","0 mm"],["0 mm","600 mm"],["2000 mm","600 mm"],["2000 mm","0 mm"]])",
      R"([["2000 mm","600 mm"],["0 mm","600 mm"],["0 mm","0 mm"],["2000 mm","0 mm"]])");
  const Plan same =
      plan_of(std::string(R"({"slabs": [{"base": {"corners": )") + corners + "}, " + rest);
  CAPTURE(corners);
  CHECK(same.mix.concrete == rectangle.mix.concrete);
  CHECK(same.slabs[0].perimeter == rectangle.slabs[0].perimeter);
  CHECK(same.pour.edge_wait_max == rectangle.pour.edge_wait_max);
  CHECK(same.pour.joint_length == rectangle.pour.joint_length);
  REQUIRE(same.cut_list.parts.size() == rectangle.cut_list.parts.size());
  for (std::size_t i = 0; i < same.cut_list.parts.size(); ++i) {
    CHECK(same.cut_list.parts[i].length == rectangle.cut_list.parts[i].length);
    CHECK(same.cut_list.parts[i].width == rectangle.cut_list.parts[i].width);
    CHECK(same.cut_list.parts[i].quantity == rectangle.cut_list.parts[i].quantity);
  }
}
