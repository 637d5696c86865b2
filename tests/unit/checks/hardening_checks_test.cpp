// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "hardening/hardening.h"
#include "plan/ready_by.h"
#include "plan/schedule.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;
using namespace std::chrono_literals;
using std::chrono::December;
using std::chrono::May;
using std::chrono::year;

namespace {

Job bench_in(double air) {
  Job job = potting_bench_job();
  job.mix.at = Temperature::celsius(20);
  job.site.air = Temperature::celsius(air);
  return job;
}

Plan hardened(const Job& job, Plan plan = potting_bench_plan()) {
  plan.hardening = plan_hardening(job, plan.slabs, plan.pour, start_of_pour(job));
  plan.schedule = make_schedule(job, plan);
  plan.hardening.start_by = latest_start(job, plan);
  return plan;
}

Check check_of(const Job& job, const char* code, const Plan& plan = potting_bench_plan()) {
  return find_check(hardening_checks(job, hardened(job, plan)), code);
}

bool says(const std::string& text, const char* words) {
  return text.find(words) != std::string::npos;
}

/// First water at 08:00; the first full use is 28 d and 22 min later.
Job dated_bench() {
  Job job = bench_in(20);
  job.date = StartDate{year{2026} / May / 1, 8h};
  return job;
}

StartDate at(std::chrono::month_day day, std::chrono::minutes time) {
  return {year{2026} / day.month() / day.day(), time};
}

}  // namespace

// Nurse-Saul over 0 C: 1.5 times longer at 13.33 C than at 20 C.
TEST_CASE("cold that stretches times by half and more is cautioned", "[checks]") {
  CHECK(check_of(bench_in(20), "cold-cure").level == Level::ok);
  CHECK(check_of(bench_in(13.4), "cold-cure").level == Level::ok);
  const Check cold = check_of(bench_in(13.3), "cold-cure");
  CHECK(cold.level == Level::caution);
  CHECK(cold.value.value() == Approx(20 / 13.3));
  CHECK(cold.limit == 1.5);
  CHECK(says(cold.title, "1.5 times as long"));
  CHECK(check_of(bench_in(0.1), "cold-cure").level == Level::caution);
  const Check frozen = check_of(bench_in(0), "cold-cure");
  CHECK(frozen.level == Level::stop);
  CHECK_FALSE(frozen.value);
}

// ACI 347 as quoted: time under 10 C is not counted.
TEST_CASE("an ordinary mix under 10 C on average is cautioned whatever its label", "[checks]") {
  Job job = bench_in(10);
  job.mix.at = Temperature::celsius(12);
  CHECK(check_of(job, "cold-cure").level == Level::ok);  // rapid
  job.mix.strip_after = hours(18);
  CHECK(check_of(job, "cold-cure").level == Level::ok);
  job.site.air = Temperature::celsius(9.9);
  const Check cold = check_of(job, "cold-cure");
  CHECK(cold.level == Level::caution);
  CHECK(says(cold.advice, "does not count"));
}

TEST_CASE("the strength of a soffit is checked only where props carry it", "[checks]") {
  Job job = bench_in(20);
  Plan plan = potting_bench_plan();
  CHECK(check_of(job, "strength", plan).code.empty());
  plan.slabs.front().forms.props = 4;
  CHECK(check_of(job, "strength", plan).level == Level::caution);
  job.mix.strength = {{hours(24), megapascals(14)}};
  CHECK(says(check_of(job, "strength", plan).advice, "fewer than two strengths"));
  job.mix.strength.push_back({days(28), megapascals(13)});
  CHECK(check_of(job, "strength", plan).level == Level::caution);
  CHECK(says(check_of(job, "strength", plan).advice, "No curve"));
  job.mix.strength.back().strength = megapascals(38);
  CHECK(check_of(job, "strength", plan).level == Level::ok);
  job.mix.strength = {{hours(24), megapascals(4)}, {days(28), megapascals(9.9)}};
  CHECK(check_of(job, "strength", plan).level == Level::caution);
}

TEST_CASE("a slab is ready to the minute or not", "[checks]") {
  Job job = dated_bench();
  CHECK(check_of(job, "ready-by").code.empty());
  job.ready_by = at(May / 29, 8h + 22min);
  const Check just = check_of(job, "ready-by");
  CHECK(just.level == Level::ok);
  CHECK(just.value.value() == Approx(28 * 24 + 22.0 / 60));
  CHECK(just.limit.value() == Approx(28 * 24 + 22.0 / 60));
  CHECK(hardened(job).hardening.start_by == "2026-05-01T08:00:00");
  job.ready_by = at(May / 29, 8h + 21min);
  const Check late = check_of(job, "ready-by");
  CHECK(late.level == Level::stop);
  CHECK(says(late.advice, "Begin the pour by 2026-05-01 07:59 at the latest"));
}

TEST_CASE("a day alone means its midnight and a pour without a time its noon", "[checks]") {
  Job job = dated_bench();
  job.ready_by = StartDate{year{2026} / May / 29, std::nullopt};
  CHECK(check_of(job, "ready-by").level == Level::stop);
  job.ready_by->day = year{2026} / May / 30;
  CHECK(check_of(job, "ready-by").level == Level::ok);
  job.date->time = std::nullopt;
  job.ready_by = at(May / 29, 12h + 21min);
  CHECK(check_of(job, "ready-by").level == Level::stop);
  job.ready_by = at(May / 29, 12h + 22min);
  CHECK(check_of(job, "ready-by").level == Level::ok);
}

TEST_CASE("light use in time makes a late slab a caution", "[checks]") {
  Job job = dated_bench();
  job.ready_by = at(May / 8, 8h);
  CHECK(check_of(job, "ready-by").level == Level::stop);
  job.mix.strength = {{hours(24), megapascals(14)}, {days(28), megapascals(38)}};
  const Check light = check_of(job, "ready-by");
  CHECK(light.level == Level::caution);
  CHECK(says(light.title, "light use only"));
  job.ready_by = at(May / 1, 20h);
  CHECK(check_of(job, "ready-by").level == Level::stop);
}

TEST_CASE("without a date the start is worked back from the day it is wanted", "[checks]") {
  Job job = bench_in(20);
  job.ready_by = at(May / 29, 8h + 22min);
  const Check check = check_of(job, "ready-by");
  CHECK(check.level == Level::caution);
  CHECK_FALSE(check.limit);
  CHECK(says(check.advice, "Begin the pour by 2026-05-01 08:00 at the latest"));
}

TEST_CASE("a full use nobody knows is no promise", "[checks]") {
  Job job = dated_bench();
  job.ready_by = at(December / 31, 8h);
  CHECK(check_of(job, "ready-by").level == Level::ok);
  job.mix.full_service = std::nullopt;
  const Check check = check_of(job, "ready-by");
  CHECK(check.level == Level::caution);
  CHECK_FALSE(check.value);
  CHECK_FALSE(hardened(job).hardening.start_by);
}

// Whoever begins one minute later is late.
TEST_CASE("the latest start is the latest through cold nights too", "[checks]") {
  Job job = dated_bench();
  job.site.night = Temperature::celsius(3);
  job.mix.seal_after = job.mix.full_service = hours(30);
  job.ready_by = at(May / 9, 17h);
  const auto use_of = [&](std::chrono::minutes start) {
    job.date->time = start;
    return in_minutes(hardened(job).schedule.back().start.value());
  };
  const std::string latest = hardened(job).hardening.start_by.value();
  CAPTURE(latest);
  const std::string day = latest.substr(8, 2), hour = latest.substr(11, 2),
                    minute = latest.substr(14, 2);
  const std::chrono::minutes start(std::stoi(hour) * 60 + std::stoi(minute));
  const double left = (9 - std::stoi(day)) * 1440 + 17 * 60 - static_cast<double>(start.count());
  CHECK(use_of(start) <= left);
  CHECK(use_of(start + 1min) > left - 1);
}
