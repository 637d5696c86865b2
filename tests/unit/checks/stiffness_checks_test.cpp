// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// The bench in fresh mix of 2300 kg/m3, formed of 3/4 in (19.05 mm) board.
struct Bench {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  Bench() {
    plan.mix.fresh_density = kilograms_per_m3(2300);
    job.forms.strip_stock.front().thickness = Length::inches(0.75);
    job.forms.oversize = {};
  }
  Slab& slab() { return job.slabs.front(); }
  FormQuantities& forms() { return plan.slabs.front().forms; }
  Check check(const char* code) const { return find_check(stiffness_checks(job, plan), code); }
};

bool has(const std::string& text, const char* part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("a thin slab's strips stay straight", "[checks]") {
  const Bench bench;
  const Check check = bench.check("form-deflection");
  CHECK(check.level == Level::ok);
  CHECK((*check.value > 0 && *check.value < 0.02 && *check.limit == 1));
  CHECK(check.advice.empty());
}

// 90 mm of mix, 19.05 mm soffit and board: push 91.349 N/m, pull 91.349 x (30 + 19.05)/9.525 =
// 470.4 N/m: 250 N at 531 mm. E I = 1.8e9 x 0.10905 x 0.01905^3/12 = 113.08: 1 mm at 555 mm, 3 mm
// at 731 mm.
TEST_CASE("screws the job sets too far apart are a caution and then a stop", "[checks]") {
  Bench bench;
  bench.slab().thickness = Length::mm(90);
  const auto at = [&](double mm) {
    bench.job.forms.screw_spacing = bench.forms().screw_spacing = Length::mm(mm);
    return bench.check("form-deflection");
  };
  CHECK(at(531).level == Level::ok);
  CHECK(at(532).level == Level::caution);
  CHECK(has(at(532).title, "the strip at the front may tear its screws out"));
  CHECK(has(at(556).title, "the strip at the front bows"));
  CHECK(has(at(556).advice, "set screws"));
  CHECK(at(730).level == Level::caution);
  CHECK(at(731).level == Level::stop);
  CHECK(*at(731).value == Approx(3).epsilon(0.002));
}

// Pull of 150 mm of mix: 253.75 x (50 + 19.05)/9.525 = 1839.5 N/m: 500 N at 271.8 mm, where the
// bow is 1 mm x (271.8/480)^4 = 0.1 mm.
TEST_CASE("screws pulled twice as hard as they hold are a stop", "[checks]") {
  Bench bench;
  bench.slab().thickness = Length::mm(150);
  const auto level = [&](double mm) {
    bench.job.forms.screw_spacing = bench.forms().screw_spacing = Length::mm(mm);
    return bench.check("form-deflection").level;
  };
  CHECK(level(271) == Level::caution);
  CHECK(level(272) == Level::stop);
}

TEST_CASE("a strip tall for its thickness is braced with kickers", "[checks]") {
  Bench bench;
  bench.forms().screw_spacing = Length::mm(50);
  bench.slab().thickness = Length::mm(95);  // 5 x 19.05 = 95.25
  CHECK(bench.check("form-deflection").level == Level::ok);
  bench.slab().thickness = Length::mm(95.5);
  const Check tall = bench.check("form-deflection");
  CHECK(tall.level == Level::caution);
  CHECK(has(tall.title, "the front is tall for its thickness"));
  CHECK(has(tall.advice, "kickers"));
}

// 400 mm: push 1804.4 N/m, pull 1804.4 x (133.3 + 19.05)/9.525 = 28.9 kN/m, 1443 N
// (1443 / 9.80665 kg, 324.5 lb) every 50 mm.
TEST_CASE("where the closest screws are not enough the plan asks for kickers", "[checks]") {
  Bench bench;
  bench.slab().thickness = Length::mm(400);
  bench.job.forms.screw_spacing = Length::mm(200);
  bench.job.forms.screws_may_tighten = true;
  bench.forms().screw_spacing = Length::mm(50);
  const Check check = bench.check("form-deflection");
  CHECK(check.level == Level::caution);
  CHECK(has(check.advice, "pulled with about 324.5 lb"));
  CHECK(has(check.advice, "kickers"));
}

TEST_CASE("a slab walled in on every side has no strip to bow", "[checks]") {
  Bench bench;
  for (Side& side : bench.slab().sides) {
    side.wall = true;
    side.overhang = {};
  }
  CHECK(bench.check("form-deflection").code.empty());
  CHECK(bench.check("soffit-span").code.empty());
}

TEST_CASE("a soffit wider than 75 mm stands on props", "[checks]") {
  Bench bench;
  bench.slab().sides[2].overhang = Length::mm(75);
  Check check = bench.check("soffit-span");
  CHECK(check.level == Level::ok);
  CHECK((*check.value == 75 && *check.limit == 75));
  bench.slab().sides[2].overhang = Length::mm(75.1);
  bench.forms().props = 8;
  bench.forms().props_apart = Length::inches(18);
  check = bench.check("soffit-span");
  CHECK(check.level == Level::caution);
  CHECK(has(check.advice, "Set the 8 props no farther apart than 18 in"));
  CHECK_FALSE(has(check.advice, "second row"));
}

// 50 mm of mix over 4 mm of board: 3555.2 Pa, E I/o = 9.6, a4 = 384 x 9.6 x 0.001/(5 x 3555.2/2):
// 142.7 mm. Over 5 mm: 168.6 mm.
TEST_CASE("a soffit that would need props closer than 150 mm is a stop", "[checks]") {
  Bench bench;
  bench.slab().thickness = Length::mm(50);
  bench.slab().sides[0].overhang = Length::mm(150);
  bench.job.forms.strip_stock.front().thickness = Length::mm(5);
  CHECK(bench.check("soffit-span").level == Level::caution);
  bench.job.forms.strip_stock.front().thickness = Length::mm(4);
  const Check thin = bench.check("soffit-span");
  CHECK(thin.level == Level::stop);
  CHECK(has(thin.advice, "thicker soffit"));
}

// 16 mm, 50 mm of mix: 3637.6 Pa; 5 p o4/(384 x 614.4): 0.91 mm at 330 mm, 1.16 mm
// (0.05 in) at 350 mm.
TEST_CASE("a very wide soffit sags between base and props", "[checks]") {
  Bench bench;
  bench.slab().thickness = Length::mm(50);
  bench.job.forms.strip_stock.front().thickness = Length::mm(16);
  bench.slab().sides[0].overhang = Length::mm(330);
  CHECK_FALSE(has(bench.check("soffit-span").advice, "second row"));
  bench.slab().sides[0].overhang = Length::mm(350);
  CHECK(has(bench.check("soffit-span").advice, "sags about 0.05 in"));
}
