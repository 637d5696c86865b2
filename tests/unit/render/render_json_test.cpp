// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "strikeoff/render.h"
#include "support/render_sample.h"

using namespace strikeoff;
using Json = nlohmann::ordered_json;

namespace {

std::vector<std::string> keys(const Json& object) {
  std::vector<std::string> result;
  for (const auto& item : object.items()) result.push_back(item.key());
  return result;
}

}  // namespace

TEST_CASE("the plan file has its parts in a fixed order") {
  const std::string text = render_json(test::printed_bench_plan());
  CHECK(text.starts_with("{\n  \"format\": \"strikeoff-plan/1\",\n"));
  CHECK(text.ends_with("}\n"));
  CHECK(keys(Json::parse(text)) ==
        std::vector<std::string>{"format", "job", "assumptions", "slabs", "mix", "batches", "pour",
                                 "site", "hardening", "handling", "finish", "cut_list", "materials",
                                 "cost", "schedule", "checks"});
}

TEST_CASE("quantities are SI at full precision") {
  const Json plan = Json::parse(render_json(test::printed_bench_plan()));
  CHECK(plan["slabs"][0]["perimeter_mm"] == 5308.6);
  CHECK(plan["slabs"][0]["outline_mm"][1] == Json::array({1958.975, -28.575}));
  CHECK(plan["mix"]["concrete_l"].get<double>() == Approx(45.10411).epsilon(1e-15));
  CHECK(plan["mix"]["water_per_bag_l"].get<double>() == Approx(3.7 * 0.946352946).epsilon(1e-15));
  CHECK(plan["batches"][1]["contact_min"] == 4.5);
  CHECK(plan["pour"]["mix_temperature_c"].get<double>() == Approx(175.0 / 9).epsilon(1e-15));
  CHECK(plan["cut_list"]["parts"][0]["length_mm"] == 2019.3);
  CHECK(plan["cut_list"]["sheets"][0]["pieces"][0]["height_mm"] == 635);
  CHECK(plan["cost"]["total"] == 145.8);
}

TEST_CASE("names and kinds are the words of the plan file") {
  const Json plan = Json::parse(render_json(test::printed_bench_plan()));
  CHECK(plan["job"] == Json({{"name", "greenhouse potting bench"},
                             {"date", "2026-05-09T09:00"},
                             {"units", "us"},
                             {"currency", "USD"}}));
  CHECK(plan["mix"]["doses"][0]["kind"] == "retarder");
  CHECK(plan["checks"][0]["level"] == "caution");
  CHECK(plan["schedule"][0]["start"] == "2026-05-08T09:00");
}

TEST_CASE("what is not known has no key") {
  Plan plan = test::printed_bench_plan();
  plan.date = std::nullopt;
  plan.pour.working_time = plan.pour.usable = plan.pour.margin = std::nullopt;
  plan.batches[0].bucket_mark = std::nullopt;
  plan.schedule[0].start_local = std::nullopt;
  plan.schedule[1].start = plan.schedule[1].end = std::nullopt;
  const Json file = Json::parse(render_json(plan));
  CHECK_FALSE(file["job"].contains("date"));
  CHECK_FALSE(file["pour"].contains("working_time_min"));
  CHECK_FALSE(file["pour"].contains("usable_min"));
  CHECK_FALSE(file["pour"].contains("margin_min"));
  CHECK_FALSE(file["batches"][0].contains("bucket_mark_mm"));
  CHECK_FALSE(file["batches"][0].contains("bucket_fills"));
  CHECK_FALSE(file["batches"][3].contains("meet_by_min"));
  CHECK_FALSE(file["schedule"][0].contains("start"));
  CHECK(file["schedule"][0].contains("start_min"));
  CHECK_FALSE(file["schedule"][1].contains("start_min"));
  CHECK_FALSE(file["schedule"][1].contains("end_min"));
  CHECK(file["schedule"][1].contains("after"));
  CHECK_FALSE(file["materials"][1].contains("cost"));
  CHECK_FALSE(file["checks"][2].contains("value"));
}

TEST_CASE("no number is negative zero") {
  Plan plan = test::printed_bench_plan();
  plan.slabs[0].outline[0].x = -Length{};
  CHECK(render_json(plan).find("-0.0") == std::string::npos);
}

TEST_CASE("a number that is not finite is a bug and never written") {
  Plan plan = test::printed_bench_plan();
  plan.mix.bags_exact = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(render_json(plan), std::logic_error);
}

TEST_CASE("a name that is not UTF-8 does not break the file") {
  Plan plan = test::printed_bench_plan();
  plan.name = "bench \xff";
  CHECK(Json::parse(render_json(plan))["job"]["name"] == "bench \xef\xbf\xbd");
}

TEST_CASE("the same plan gives the same bytes") {
  CHECK(render_json(test::printed_bench_plan()) == render_json(test::printed_bench_plan()));
}

TEST_CASE("the plan file says how the base lies and where the slab is thin and thick") {
  Plan plan = test::printed_bench_plan();
  SlabPlan& slab = plan.slabs.front();
  slab.fall_wedge = litres(1.5);
  slab.apron = litres(2);
  slab.base_low = Length::mm(14);
  slab.base_low_at = {Length::mm(100), Length::mm(-25)};
  slab.thinnest = {Length::mm(25), {Length::mm(1), Length::mm(2)}};
  slab.thickest = {Length::mm(52), {Length::mm(3), Length::mm(4)}};
  const Json file = Json::parse(render_json(plan))["slabs"][0];
  CHECK(file["fall_l"].get<double>() == Approx(1.5));
  CHECK(file["apron_l"].get<double>() == Approx(2));
  CHECK(file["base_low_mm"] == 14);
  CHECK(file["base_low_at_mm"] == Json::array({100, -25}));
  CHECK(file["thinnest"] == Json({{"thickness_mm", 25}, {"at_mm", {1, 2}}}));
  CHECK(file["thickest"] == Json({{"thickness_mm", 52}, {"at_mm", {3, 4}}}));
}
