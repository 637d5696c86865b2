// SPDX-License-Identifier: MIT
#include "checks/checks.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check form_check(const Job& job, const Plan& plan, const std::string& code) {
  return find_check(form_checks(job, plan), code);
}

}  // namespace

TEST_CASE("each joint of a spliced strip is counted", "[checks]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(form_check(job, plan, "splice").code.empty());
  plan.slabs[0].forms.splices = 3;
  const Check splice = form_check(job, plan, "splice");
  CHECK(splice.level == Level::caution);
  CHECK(*splice.value == 3);
}

TEST_CASE("parts too large for any stock stop the plan", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(form_check(job, plan, "short-board").level == Level::ok);
  plan.cut_list.unplaced = {"E1", "P1"};
  plan.cut_list.parts[2].length = Length::inches(84.1);
  plan.cut_list.parts[4].width = Length::inches(34.1);
  plan.cut_list.parts[4].length = Length::inches(40);
  const Check check = form_check(job, plan, "short-board");
  CHECK(check.level == Level::stop);
  CHECK(check.title == "Parts that fit no board or sheet: E1, P1");
  job.forms.end_trim = Length::inches(1);
  plan.cut_list.unplaced = {"E1"};
  plan.cut_list.parts[2].length = Length::inches(82.5);
  CHECK(form_check(job, plan, "short-board").title == "Parts that fit no board or sheet: E1");
}

TEST_CASE("stock that runs out is not called too small", "[checks]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.cut_list.unplaced = {"E1", "P1"};
  plan.cut_list.parts[4].width = Length::inches(52);  // lies across the sheet
  plan.cut_list.parts[4].length = Length::inches(34);
  Check check = form_check(job, plan, "short-board");
  CHECK(check.level == Level::stop);
  CHECK(check.title == "Not enough stock to be had for E1, P1");
  CHECK(check.advice == "Find more of the stock, or add another one to the job.");
  plan.cut_list.parts[4].length = Length::inches(35);
  check = form_check(job, plan, "short-board");
  CHECK(check.title == "Parts that fit no board or sheet: P1. Not enough stock to be had for E1");
  CHECK(check.advice ==
        "Add a larger stock to the job, or have these cut for you. Find more of the stock, or add "
        "another one to the job.");
}

TEST_CASE("a strip under 50 mm is a narrow rip and under 15 mm is bought", "[checks]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto check = [&](double mm) {
    plan.cut_list.boards.front().strips = {{Length::mm(80), {}, {}}, {Length::mm(mm), {}, {}}};
    return form_check(job, plan, "narrow-rip");
  };
  CHECK(check(50).level == Level::ok);
  CHECK(check(49.9).level == Level::caution);
  CHECK((*check(49.9).value == 49.9 && *check(49.9).limit == 50));
  CHECK(check(15).advice.find("push stick") != std::string::npos);
  CHECK(check(14.9).advice.find("buy a batten") != std::string::npos);
  plan.cut_list.boards.clear();
  CHECK(form_check(job, plan, "narrow-rip").code.empty());
}

TEST_CASE("a check that holds counts nothing that is not there", "[checks]") {
  Job job = potting_bench_job();
  job.crew.bucket = Bucket{Length::mm(200), Length::mm(250), Length::mm(300)};
  Plan plan = potting_bench_plan();
  CHECK_FALSE(form_check(job, plan, "short-board").value);
  CHECK_FALSE(find_check(mix_checks(job, plan), "batch-in-bucket").value);
  CHECK_FALSE(find_check(pour_checks(job, plan), "crew").value);
  plan.cut_list.unplaced = {"E1"};
  CHECK(*form_check(job, plan, "short-board").value == 1);
  CHECK(form_check(job, plan, "short-board").unit == "part left over");
}

TEST_CASE("stops come first and what holds comes last", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  set_batches(plan, 4, minutes(5), minutes(20));
  plan.mix.water_per_bag = quarts(5);
  const auto checks = run_checks(job, plan);
  CHECK(std::is_sorted(checks.begin(), checks.end(),
                       [](const Check& a, const Check& b) { return a.level > b.level; }));
  CHECK(checks.front().code == "cold-joint");
  CHECK(checks.back().level == Level::ok);
}

TEST_CASE("a plan has a stop when one check is at stop", "[checks]") {
  Plan plan = potting_bench_plan();
  CHECK_FALSE(has_stop(plan));
  plan.checks = run_checks(potting_bench_job(), plan);
  CHECK_FALSE(has_stop(plan));
  plan.checks.push_back({});
  plan.checks.back().level = Level::stop;
  CHECK(has_stop(plan));
}

TEST_CASE("every check that is not ok says what to do", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  set_batches(plan, 9, minutes(9), minutes(20));
  plan.cut_list.unplaced = {"E1"};
  plan.pour.mix_temperature = Temperature::celsius(2);
  for (const Check& check : run_checks(job, plan)) {
    CAPTURE(check.code);
    CHECK_FALSE(check.title.empty());
    CHECK_FALSE(check.basis.empty());
    if (check.level != Level::ok) CHECK_FALSE(check.advice.empty());
  }
}
