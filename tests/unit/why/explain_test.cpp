// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>

#include "strikeoff/planner.h"
#include "strikeoff/render.h"
#include "strikeoff/why.h"
#include "support/read.h"

using namespace strikeoff;
using test::job_of;

namespace {

/// 1000 x 400 x 50 mm is 20 L; with 20 % waste 24 L, two bags of 12 L. At 20 C throughout, the
/// label's 40 min hold; half of them are usable.
const char* const easy = R"({
  "units": "metric", "waste": "20 %",
  "slabs": [{"name": "board", "base": {"rectangle": {"length": "1000 mm", "depth": "400 mm"}},
             "overhang": "0 mm", "thickness": "50 mm", "panel": "none"}],
  "mix": {"name": "easy mix", "bag": "25 kg", "yield": "12 L", "yield_water": "3 L",
          "water": {"use": "3 L"}, "working_time": "40 min", "at": "20 C"},
  "crew": {"usable": "50 %", "times": {"mix": "3 min", "discharge": "1 min", "carry": "1 min",
           "place": "2 min"}},
  "site": {"air": "20 C", "water_temperature": "20 C"}, "limits": {"margin": "2 min"}
})";

Explanation explained(const std::string& text, const std::string& name) {
  const Job job = job_of(text);
  const WhyResult why = explain(job, make_plan(job), name);
  INFO(why.problem);
  REQUIRE(why.explanation);
  return *why.explanation;
}

std::string problem(const std::string& name) {
  const Job job = job_of(easy);
  const WhyResult why = explain(job, make_plan(job), name);
  CHECK_FALSE(why.explanation);
  return why.problem;
}

std::string origin(const Explanation& why, const std::string& symbol) {
  for (const WhyInput& input : why.working.inputs) {
    if (input.symbol == symbol) return input.origin;
  }
  return "no such symbol";
}

}  // namespace

TEST_CASE("a number is found by name and by pointer", "[why]") {
  // (20 + 4)/12
  for (const char* const name : {"bags-exact", "/mix/bags_exact"}) {
    CAPTURE(name);
    const Explanation why = explained(easy, name);
    CHECK(why.number.pointer == "/mix/bags_exact");
    CHECK(why.number.name == "bags-exact");
    CHECK(why.working.formula == "(concrete + waste) / yield");
    CHECK(why.working.worked == "(20 + 4) / 12");
    CHECK(why.working.result.value() == Approx(2));
    CHECK(why.number.value == Approx(2));
  }
}

TEST_CASE("one of several is named by its number from 1 or by its own name", "[why]") {
  CHECK(explained(easy, "batch-water/2").number.pointer == "/batches/1/water_l");
  CHECK(explained(easy, "batch-water").number.pointer == "/batches/0/water_l");
  CHECK(explained(easy, "batch-water").others.size() == 1);
  CHECK(explained(easy, "/slabs/board/area_m2").number.name == "area");
  CHECK(explained(easy, "/checks/own-age/value").number.name == "own-age");
}

TEST_CASE("inputs say where they come from", "[why]") {
  const Explanation usable = explained(easy, "usable");
  CHECK(origin(usable, "share") == "the job, /crew/usable");
  CHECK(origin(usable, "working_time") == "this plan, working-time");
  CHECK(usable.known == "assumption");
  CHECK(origin(explained(easy, "spare-bags"), "spare") ==
        "assumption, /spare_bags: unopened, to take back if it is not needed (assumption)");
  CHECK(origin(explained(easy, "fresh-density"), "label") == "not given in the job, /mix/density");

  const char* const catalogue_mix = R"({
    "units": "metric", "mix": "rapid-fine-24kg",
    "slabs": [{"base": {"rectangle": {"length": "1 m", "depth": "1 m"}}, "overhang": "0 mm",
               "thickness": "50 mm"}],
    "crew": {"bags_per_batch": "auto"}})";
  CHECK(origin(explained(catalogue_mix, "batch-dry"), "bag") ==
        "the catalogue's rapid-fine-24kg: invented");
  CHECK(origin(explained(catalogue_mix, "batch-bags"), "bags").starts_with("chosen by the plan: "));
}

TEST_CASE("the plan's numbers are worked out one level down", "[why]") {
  const Explanation why = explained(easy, "usable");
  REQUIRE(why.rests_on.size() == 1);
  CHECK(why.rests_on.front().number.name == "working-time");
  CHECK(why.rests_on.front().working.result.value() == Approx(40));
  CHECK(why.working.result.value() == Approx(20));
}

TEST_CASE("a wrong name is answered with the nearest one", "[why]") {
  CHECK(problem("usabel") == "the plan has no number \"usabel\"; did you mean \"usable\"?");
  CHECK(problem("/pour/usable") ==
        "the plan has no number \"/pour/usable\"; strikeoff why JOB lists them all");
  CHECK(problem("batch-water/9") ==
        "the plan has no number \"batch-water/9\"; did you mean \"batch-water/1\"?");
  for (const char* const name : {"", "/", "//", "/batches/-1/bags",
                                 "/batches/99999999999999999999/bags", "/slabs/0", "edge-wait/x"}) {
    CAPTURE(name);
    CHECK_FALSE(problem(name).empty());
  }
}

TEST_CASE("the list names every kind of number once", "[why]") {
  const auto kinds = explainable(make_plan(job_of(easy)));
  CHECK(kinds.size() > 80);
  const auto water = std::find_if(kinds.begin(), kinds.end(), [](const ExplainedKind& kind) {
    return kind.name == "batch-water";
  });
  REQUIRE(water != kinds.end());
  REQUIRE(water->numbers.size() == 2);
  CHECK(water->numbers[1].name == "batch-water/2");
  CHECK(water->numbers[1].value == Approx(3));
  CHECK(water->numbers[1].unit == "L");
}

TEST_CASE("every name of the list can be asked for", "[why]") {
  const Job job = job_of(easy);
  const Plan plan = make_plan(job);
  for (const ExplainedKind& kind : explainable(plan)) {
    CAPTURE(kind.name);
    for (const std::string& name :
         {kind.name, kind.numbers.back().name, kind.numbers.back().pointer}) {
      const WhyResult why = explain(job, plan, name);
      INFO(why.problem);
      REQUIRE(why.explanation);
      CHECK_FALSE(render_text(*why.explanation).empty());
      CHECK_FALSE(render_json(*why.explanation).empty());
    }
  }
}

TEST_CASE("a plan in US units shows what a tape and a scale show beside", "[why]") {
  const char* const us = R"({
    "units": "us", "mix": "rapid-fine-48lb",
    "slabs": [{"base": {"rectangle": {"length": "48 in", "depth": "24 in"}}, "overhang": "0 in",
               "thickness": "2 in", "panel": "none"}]})";
  CHECK(explained(us, "edge-thickness").number.in_us == "2 in");
  CHECK(explained(us, "batch-dry").number.in_us == "48 lb");
  CHECK(explained(us, "takt").number.in_us.empty());
  CHECK(explained(easy, "edge-thickness").number.in_us.empty());
}
