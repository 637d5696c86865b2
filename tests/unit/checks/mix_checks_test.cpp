// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check mix_check(const Job& job, const Plan& plan, const std::string& code) {
  return find_check(mix_checks(job, plan), code);
}

}  // namespace

TEST_CASE("a dose at the most allowed is ok and above it is a stop", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(mix_check(job, plan, "dose-most").code.empty());
  Additive retarder;
  retarder.name = "set retarder";
  retarder.most = 5;
  job.additives = {retarder};
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 5, 20, {}}};
  CHECK(mix_check(job, plan, "dose-most").level == Level::ok);
  plan.mix.doses.front().per_bag = 5.5;
  CHECK(mix_check(job, plan, "dose-most").level == Level::stop);
  job.additives.front().most = std::nullopt;
  CHECK(mix_check(job, plan, "dose-most").level == Level::caution);
  plan.mix.doses.front().per_bag = 0;
  CHECK(mix_check(job, plan, "dose-most").code.empty());
}

TEST_CASE("a retarder in a mix five degrees warmer than its minutes is a caution", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  Additive retarder;
  retarder.name = "set retarder";
  job.additives = {retarder};
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 1, 4, {}}};
  const auto level = [&](double above) {
    plan.pour.mix_temperature = Temperature::celsius(job.mix.at.in_c() + above);
    return mix_check(job, plan, "dose-heat").level;
  };
  CHECK(level(5) == Level::ok);
  CHECK(level(5.01) == Level::caution);
  CHECK(level(-20) == Level::ok);
  plan.mix.doses.front().per_bag = 0;
  CHECK(mix_check(job, plan, "dose-heat").code.empty());
}

TEST_CASE("ice above a fifth of the water is a caution", "[checks]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(mix_check(job, plan, "ice").code.empty());
  plan.mix.water_per_bag = litres(4);
  plan.mix.ice_per_bag = kilograms(0.8);
  CHECK(mix_check(job, plan, "ice").level == Level::ok);
  plan.mix.ice_per_bag = kilograms(0.81);
  CHECK(mix_check(job, plan, "ice").level == Level::caution);
}

TEST_CASE("water above the label is a stop and below it a caution", "[checks]") {
  Job job = potting_bench_job();  // 3.2 to 4.2 qt
  Plan plan = potting_bench_plan();
  const auto level = [&](double quarts_a_bag) {
    plan.mix.water_per_bag = quarts(quarts_a_bag);
    return mix_check(job, plan, "water-most").level;
  };
  CHECK(level(3.19) == Level::caution);
  CHECK(level(3.2) == Level::ok);
  CHECK(level(4.2) == Level::ok);
  CHECK(level(4.21) == Level::stop);
  job.mix.water_most = std::nullopt;
  CHECK(level(4) == Level::caution);
}

// At most 95 F (35 C): ACI 301-20 and ACI 305.1-14 quoted second-hand; at least 50 F (10 C):
// UFGS 03 30 00. The stop below 5 C is our assumption.
TEST_CASE("fresh mix from 10 to 35 C is ok", "[checks]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto level = [&](double celsius) {
    plan.pour.mix_temperature = Temperature::celsius(celsius);
    return mix_check(job, plan, "mix-temperature").level;
  };
  CHECK(level(4.9) == Level::stop);
  CHECK(level(5) == Level::caution);
  CHECK(level(9.9) == Level::caution);
  CHECK(level(10) == Level::ok);
  CHECK(level(35) == Level::ok);
  CHECK(level(35.1) == Level::caution);
}

TEST_CASE("advice on temperature stands in the job's units", "[checks]") {
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(38);
  Job job = potting_bench_job();
  // 48 lb of bags at 45 C, 3.7 qt of water: to 35 C the water must bring 4.7899 (35 - 45) + 35 x
  // 3.5015 = 74.65 K kg: 21.32 C, 70.4 F.
  job.site.bag_temperature = Temperature::celsius(45);
  CHECK(mix_check(job, plan, "mix-temperature").advice ==
        "Bring it under 95 F: water at 70 F does it; bags in the shade, an early morning.");
  job.site.bag_temperature = Temperature::celsius(59);  // 35 C takes 2.17 C, no ice
  CHECK_THAT(mix_check(job, plan, "mix-temperature").advice, Catch::Contains("water at 35 F"));
  job.site.bag_temperature = Temperature::celsius(90);
  CHECK_THAT(mix_check(job, plan, "mix-temperature").advice, Catch::Contains("no mixing water"));
}

TEST_CASE("a cold mix is told how warm its water must be", "[checks]") {
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(6);
  Job job = potting_bench_job();
  job.units = Units::metric;
  // Bags at 2 C: 4.7899 (10 - 2) + 10 x 3.5015 = 73.33: 20.94 C, rounded up.
  job.site.bag_temperature = Temperature::celsius(2);
  CHECK(
      mix_check(job, plan, "mix-temperature").advice ==
      "Bring it to 10 C: water at 21 C does it; keep the slab warm, and expect everything to take "
      "longer.");
  // Bags at -30 C: 226.6 / 3.5015 = 65 C would be too hot for cement.
  job.site.bag_temperature = Temperature::celsius(-30);
  CHECK_THAT(mix_check(job, plan, "mix-temperature").advice, Catch::Contains("no mixing water"));
}

TEST_CASE("a batch larger than the mixer is a stop and an unknown mixer a caution", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();  // 0.44 ft3 a batch
  job.crew.mixer_capacity = cubic_feet(0.44);
  CHECK(mix_check(job, plan, "mixer-capacity").level == Level::ok);
  job.crew.mixer_capacity = cubic_feet(0.439);
  CHECK(mix_check(job, plan, "mixer-capacity").level == Level::stop);
  job.crew.mixer_capacity = std::nullopt;
  CHECK(mix_check(job, plan, "mixer-capacity").level == Level::caution);
}

TEST_CASE("water that overflows the bucket is a caution with the number of fills", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(mix_check(job, plan, "batch-in-bucket").code.empty());
  job.crew.bucket = Bucket{Length::mm(200), Length::mm(250), Length::mm(300)};
  CHECK(mix_check(job, plan, "batch-in-bucket").level == Level::ok);
  plan.batches[1].bucket_fills = 2;
  const Check check = mix_check(job, plan, "batch-in-bucket");
  CHECK(check.level == Level::caution);
  CHECK(*check.value == 2);
  CHECK(check.advice.rfind("Fill it 2 times", 0) == 0);
}
