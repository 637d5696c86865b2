// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check safety(const Job& job, const Plan& plan, const std::string& code) {
  return find_check(safety_checks(job, plan), code);
}

bool says(const Check& check, const std::string& words) {
  return check.advice.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the standing cautions are always there and defer to others", "[checks]") {
  Plan bare = potting_bench_plan();
  bare.finish = {};
  for (const Plan& plan : {potting_bench_plan(), bare}) {
    for (const char* code : {"silica", "caustic", "electric", "ventilation", "hearth"}) {
      CAPTURE(code);
      const Check check = safety(potting_bench_job(), plan, code);
      CHECK(check.level == Level::caution);
      CHECK_FALSE(check.value);
      CHECK((says(check, "decide") || says(check, "licensed practitioner")));
    }
  }
}

TEST_CASE("dust names only the work that this job has", "[checks]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(says(safety(job, plan, "silica"), "Score and snap cement sheets"));
  CHECK(says(safety(job, plan, "silica"), "25 ft3/min"));
  job.slabs.front().panel = std::nullopt;
  plan.finish.sanding.clear();
  CHECK_FALSE(says(safety(job, plan, "silica"), "cement sheets"));
  CHECK_FALSE(says(safety(job, plan, "silica"), "Sand wet"));
}

TEST_CASE("a sealer wants open windows and carbon monoxide is named without one", "[checks]") {
  Job job = potting_bench_job();
  CHECK(
      says(safety(job, potting_bench_plan(), "ventilation"), "Seal and let dry with windows open"));
  job.finish.sealer = std::nullopt;
  const Check check = safety(job, potting_bench_plan(), "ventilation");
  CHECK_FALSE(says(check, "windows"));
  CHECK(says(check, "carbon monoxide"));
}

TEST_CASE("mixing is not said to be in the table of the silica rule", "[checks]") {
  const Check check = safety(potting_bench_job(), potting_bench_plan(), "silica");
  CHECK(check.basis.find("neither mixing nor emptying bags") != std::string::npos);
  CHECK(check.basis.find("50 ug/m3") != std::string::npos);
  CHECK(check.basis.find("25 ug/m3") != std::string::npos);
}
