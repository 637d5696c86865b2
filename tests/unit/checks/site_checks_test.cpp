// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "site/site.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;
using Catch::Matchers::Contains;

namespace {

Check site_check(const Job& job, const Plan& plan, const std::string& code) {
  return find_check(site_checks(job, plan), code);
}

Job metric_job() {
  Job job = potting_bench_job();
  job.units = Units::metric;
  job.site.air = Temperature::celsius(25);
  job.site.humidity = 0.5;
  return job;
}

Plan drying(double kg_m2_h) {
  Plan plan = potting_bench_plan();
  SitePlan& site = plan.site;
  site.concrete = site.air = site.warmest = Temperature::celsius(25);
  site.dew_point = Temperature::celsius(14);
  site.humidity = 0.5;
  site.evaporation = kilograms_per_m2_h(kg_m2_h);
  site.evaporation_least = kilograms_per_m2_h(0.6 * kg_m2_h);
  site.evaporation_most = kilograms_per_m2_h(1.4 * kg_m2_h);
  if (kg_m2_h > 0) site.skin = minutes(60 * 0.1 / (1.4 * kg_m2_h));
  return plan;
}

}  // namespace

// Caution from 0.5: FHWA-HRT-05-038; 1.0: UFGS 03300N.
TEST_CASE("drying is a caution from half a kilogram and a stop from one", "[checks]") {
  const Job job = metric_job();
  const auto level = [&](double rate) {
    return site_check(job, drying(rate), "evaporation").level;
  };
  CHECK(level(0) == Level::ok);
  CHECK(level(0.499) == Level::ok);
  CHECK(level(0.5) == Level::caution);
  CHECK(level(0.999) == Level::caution);
  CHECK(level(1.0) == Level::stop);
  CHECK(level(5) == Level::stop);
}

TEST_CASE("what keeps a top from drying makes a stop a caution and a heater does not", "[checks]") {
  Job job = metric_job();
  const auto [named, level] = GENERATE(
      std::pair{Protection::windbreak, Level::caution},
      std::pair{Protection::shade, Level::caution}, std::pair{Protection::fog, Level::caution},
      std::pair{Protection::sheet, Level::caution}, std::pair{Protection::film, Level::caution},
      std::pair{Protection::tent, Level::caution}, std::pair{Protection::blanket, Level::stop},
      std::pair{Protection::heater, Level::stop});
  job.site.protection = {named};
  CHECK(site_check(job, drying(1.2), "evaporation").level == level);
  CHECK(site_check(job, drying(0.6), "evaporation").level == Level::caution);
}

TEST_CASE("the drying check says the band and what to do", "[checks]") {
  const Job job = metric_job();
  Plan plan = drying(1.2);
  Check check = site_check(job, plan, "evaporation");
  CHECK(check.title ==
        "The fresh top dries so fast that it cracks: about 1.2 kg/m2/h, 0.72 kg/m2/h "
        "to 1.68 kg/m2/h as such estimates go");
  CHECK(check.value == Approx(1.2));
  CHECK(check.limit == Approx(1.0));
  CHECK_THAT(check.advice, Contains("A bare edge skins over in about 3.6 min"));
  CHECK_THAT(check.advice, Contains("name them in site.protection"));
  CHECK_THAT(check.advice, Contains("No water and ice bring it under 1 kg/m2/h."));
  plan.site.water_at_most = Temperature::celsius(6.9);
  CHECK_THAT(site_check(job, plan, "evaporation").advice,
             Contains("Mixing water at 6 C brings it under 1 kg/m2/h."));
  plan.site.ice = kilograms(0.4);
  CHECK_THAT(site_check(job, plan, "evaporation").advice,
             Contains("Mixing water at 6 C and 400 g of crushed ice in each bag's brings it"));
  HourPlan early;
  early.weather.time = std::chrono::hours(7);
  early.worst = kilograms_per_m2_h(0.3);
  plan.site.hours = {early};
  plan.site.best_start = early.weather.time;
  CHECK_THAT(site_check(job, plan, "evaporation").advice,
             Contains("Begun at 07:00 it is 0.3 kg/m2/h at worst."));
}

TEST_CASE("a cold mix that dries fast once it warms is a caution", "[checks]") {
  const Job job = metric_job();
  Plan plan = drying(0.1);
  plan.site.evaporation_warmed = kilograms_per_m2_h(0.499);
  CHECK(site_check(job, plan, "evaporation").level == Level::ok);
  plan.site.evaporation_warmed = kilograms_per_m2_h(0.5);
  CHECK(site_check(job, plan, "evaporation").level == Level::caution);
  CHECK_THAT(site_check(job, plan, "evaporation").title,
             Contains("0.5 kg/m2/h once it is as warm as the air"));
}

TEST_CASE("humidity that nobody gave is said with the rate", "[checks]") {
  const Job job = metric_job();
  Plan plan = drying(0.2);
  plan.site.humidity_assumed = true;
  plan.site.humidity = 0.3;
  CHECK_THAT(site_check(job, plan, "evaporation").title, Contains("if the air is as dry as 30 %"));
  plan = drying(0.6);
  plan.site.humidity_assumed = true;
  CHECK_THAT(site_check(job, plan, "evaporation").advice, Contains("site.humidity"));
}

TEST_CASE("saturated air is said to take no water", "[checks]") {
  CHECK(site_check(metric_job(), drying(0), "evaporation").title ==
        "The fresh top dries slowly enough: the air takes no water from it");
}

TEST_CASE("a mix under the dew point is a caution", "[checks]") {
  const Job job = metric_job();
  Plan plan = drying(0.1);
  plan.site.concrete = plan.site.dew_point;
  CHECK(site_check(job, plan, "condensation").level == Level::ok);
  plan.site.concrete = Temperature::celsius(13.9);
  CHECK(site_check(job, plan, "condensation").level == Level::caution);
  CHECK_THAT(site_check(job, plan, "condensation").advice, Contains("do not trowel it in"));
}

TEST_CASE("without a humidity dry tops are not promised and wet ones are said", "[checks]") {
  const Job job = metric_job();
  Plan plan = drying(0.1);
  plan.site.humidity_assumed = true;
  CHECK(site_check(job, plan, "condensation").code.empty());
  plan.site.concrete = Temperature::celsius(10);
  CHECK(site_check(job, plan, "condensation").level == Level::caution);
}

// 40 F: UFGS 03300N and ACI 306R.
TEST_CASE("a night under 40 F is a caution and one of frost a stop", "[checks]") {
  Job job = metric_job();
  const auto level = [&](double night) {
    job.site.night = Temperature::celsius(night);
    return site_check(job, drying(0.1), "frost").level;
  };
  CHECK(level(10) == Level::ok);
  CHECK(level(4.5) == Level::ok);
  CHECK(level(4.4) == Level::caution);
  CHECK(level(0.1) == Level::caution);
  CHECK(level(0) == Level::stop);
  CHECK(level(-20) == Level::stop);
}

TEST_CASE("blankets heat or a tent make frost a caution and a windbreak does not", "[checks]") {
  Job job = metric_job();
  job.site.night = Temperature::celsius(-3);
  const auto level = [&](Protection named) {
    job.site.protection = {named};
    return site_check(job, drying(0.1), "frost").level;
  };
  CHECK(level(Protection::blanket) == Level::caution);
  CHECK(level(Protection::heater) == Level::caution);
  CHECK(level(Protection::tent) == Level::caution);
  CHECK(level(Protection::windbreak) == Level::stop);
  CHECK(level(Protection::sheet) == Level::stop);
}

TEST_CASE("the coldest of night and hours and air counts", "[checks]") {
  Job job = metric_job();
  job.site.night = Temperature::celsius(8);
  job.site.hours = {{std::chrono::hours(6), Temperature::celsius(-1), 0.5, {}},
                    {std::chrono::hours(12), Temperature::celsius(20), 0.5, {}}};
  CHECK(site_check(job, drying(0.1), "frost").level == Level::stop);
  job.site.hours.clear();
  CHECK(site_check(job, drying(0.1), "frost").level == Level::ok);
  job.site.air = Temperature::celsius(-1);
  CHECK(site_check(job, drying(0.1), "frost").level == Level::stop);
}

TEST_CASE("a night that nobody gave is a caution unless the air is warm", "[checks]") {
  Job job = metric_job();
  const auto level = [&](double air) {
    job.site.air = Temperature::celsius(air);
    return site_check(job, drying(0.1), "frost").level;
  };
  CHECK(level(40) == Level::ok);
  CHECK(level(19.5) == Level::ok);       // a night 15 C colder has 4.5 C
  CHECK(level(19.4) == Level::caution);  // 4.4 C
  CHECK_THAT(site_check(job, drying(0.1), "frost").advice, Contains("site.night"));
}

TEST_CASE("frost under a ground slab is a caution and a base has no ground", "[checks]") {
  Job job = metric_job();
  const auto check = [&](double night) {
    job.site.night = Temperature::celsius(night);
    return site_check(job, drying(0.1), "frozen-ground");
  };
  CHECK(check(-5).code.empty());
  job.slabs[0].support = Support::ground;
  CHECK(check(0.1).level == Level::ok);
  CHECK(check(0).level == Level::caution);
}

TEST_CASE("air over 35 C is a caution and in the sun over 25 C", "[checks]") {
  Job job = metric_job();
  const auto level = [&](double warmest) {
    Plan plan = drying(0.1);
    plan.site.warmest = Temperature::celsius(warmest);
    return site_check(job, plan, "hot-air").level;
  };
  CHECK(level(35) == Level::ok);
  CHECK(level(35.1) == Level::caution);
  CHECK(level(40) == Level::caution);
  job.site.sun = true;
  CHECK(level(25) == Level::ok);
  CHECK(level(25.1) == Level::caution);
  job.site.protection = {Protection::shade};
  CHECK(level(25.1) == Level::ok);
  CHECK(level(35.1) == Level::caution);
}

TEST_CASE("rain is a caution from a chance in five and a stop from one in two", "[checks]") {
  Job job = metric_job();
  const auto check = [&] { return site_check(job, drying(0.1), "rain"); };
  CHECK(check().code.empty());
  const auto level = [&](double chance) {
    job.site.rain = chance;
    return check().level;
  };
  CHECK(level(0) == Level::ok);
  CHECK(level(0.199) == Level::ok);
  CHECK(level(0.2) == Level::caution);
  CHECK(level(0.499) == Level::caution);
  CHECK(level(0.5) == Level::stop);
  job.site.protection = {Protection::tent};
  CHECK(level(0.9) == Level::caution);
  job.site.protection = {Protection::windbreak};
  CHECK(level(0.9) == Level::stop);
}

TEST_CASE("rates of a US job are shown in pounds", "[checks]") {
  Job job = metric_job();
  job.units = Units::us;
  CHECK_THAT(site_check(job, drying(0.5), "evaporation").title, Contains("about 0.1 lb/ft2/h"));
}
