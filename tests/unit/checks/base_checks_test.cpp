// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check base_check(const Job& job, const Plan& plan, const std::string& code) {
  return find_check(base_checks(job, plan), code);
}

/// The bench with readings, its base this low.
struct Uneven {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  explicit Uneven(double low_mm) {
    job.units = Units::metric;
    job.slabs.front().levels = {{{}, {}}, {{Length::m(2), {}}, Length::mm(low_mm)}};
    plan.slabs.front().base_low = Length::mm(low_mm);
    plan.slabs.front().base_low_at = {Length::m(2), -Length::mm(25)};
    plan.slabs.front().level_correction = litres(3.2);
  }
};

/// A base of 2000 x 600 mm whose left and right sides lean by this much.
Job leaning(double by_mm) {
  Job job = potting_bench_job();
  job.units = Units::metric;
  const Length lean = Length::mm(by_mm), length = Length::m(2), depth = Length::mm(600);
  job.slabs.front().base = {{}, {length, {}}, {length + lean, depth}, {lean, depth}};
  job.slabs.front().diagonal = Misfit{Length::mm(1), Length::mm(3)};
  return job;
}

}  // namespace

TEST_CASE("a base without readings is not judged level", "[checks]") {
  CHECK(base_checks(potting_bench_job(), potting_bench_plan()).empty());
}

TEST_CASE("a base up to 6 mm out of level is poured as it is", "[checks]") {
  const Uneven six(6), more(6.1);
  CHECK(base_check(six.job, six.plan, "base-level").level == Level::ok);
  const Check check = base_check(more.job, more.plan, "base-level");
  CHECK(check.level == Level::caution);
  CHECK(*check.value == Approx(6.1));
  CHECK(*check.limit == 6);
}

TEST_CASE("a base out of level says what it costs and where it is low", "[checks]") {
  Uneven base(14);
  const Check check = base_check(base.job, base.plan, "base-level");
  CHECK(check.title == "bench: the base is 14 mm out of level");
  CHECK(check.advice ==
        "Shim the base or the panel level, or pour the hollow: the plan counts 3.2 L for it. It is "
        "lowest 2000 mm right and 25 mm forward from the base's zero point; the strips there are "
        "taller.");
  base.job.slabs.front().support = Support::ground;
  CHECK(base_check(base.job, base.plan, "base-level").advice.starts_with("Fill and tamp the bed"));
}

TEST_CASE("a walk that closes within what is allowed is told and past it a caution", "[checks]") {
  Job job = potting_bench_job();
  job.units = Units::metric;
  const Plan plan = potting_bench_plan();
  job.slabs.front().closing = Misfit{Length::mm(3), Length::mm(3)};
  const Check closes = base_check(job, plan, "closing-error");
  CHECK(closes.level == Level::ok);
  CHECK(closes.title == "bench: the walk round the base ends 3 mm from its start");
  job.slabs.front().closing->by = Length::mm(3.1);
  CHECK(base_check(job, plan, "closing-error").level == Level::caution);
}

TEST_CASE("a fall towards a wall is a caution and to a free side nothing", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  Slab& slab = job.slabs.front();
  slab.sides[2].wall = true;
  slab.fall = Fall{0.01, 0};
  CHECK(base_check(job, plan, "fall-to-wall").code.empty());
  slab.fall->side = 2;
  const Check check = base_check(job, plan, "fall-to-wall");
  CHECK(check.level == Level::caution);
  CHECK(check.title == "bench: the top falls towards a wall");
}

TEST_CASE("diagonals that differ by more than 6 mm are a caution", "[checks]") {
  // Leaning by d, the diagonals are the hypotenuses of 2000 + d and 2000 - d with 600: they differ
  // by about 4 x 2000 d/(2 x 2088) = 1.9157 d, so 3.1 mm make 5.94 mm and 3.2 mm make 6.13 mm.
  const Plan plan = potting_bench_plan();
  const Check square = base_check(leaning(3.1), plan, "out-of-square");
  CHECK(square.level == Level::ok);
  CHECK(*square.value == Approx(5.94).margin(0.01));
  const Check leans = base_check(leaning(3.2), plan, "out-of-square");
  CHECK(leans.level == Level::caution);
  CHECK(leans.title == "bench: the base is out of square, its diagonals differ by 6.1 mm");
}
