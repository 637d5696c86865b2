// SPDX-License-Identifier: MIT
#include "plan/finish.h"

#include <catch2/catch.hpp>

#include "plan/supplies.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

FinishPlan finish_of(const Job& job, const std::vector<SlabPlan>& slabs) {
  return plan_finish(job, sample_supplies(), slabs);
}

}  // namespace

TEST_CASE("each grit goes once over the top and the visible edges", "[finish]") {
  // 78 1/4 x 26 1/4 in = 1.32520 m2, 209 x 1 3/4 in = 0.23597 m2: 1.56117 m2. 10 min a m2. A disc
  // does 2.5 m2.
  const Plan plan = potting_bench_plan();
  FinishPlan finish = finish_of(potting_bench_job(), plan.slabs);
  CHECK(finish.top.si() == Approx(1.32520).epsilon(1e-5));
  CHECK(finish.edges.si() == Approx(0.23597).epsilon(1e-4));
  REQUIRE(finish.sanding.size() == 3);
  CHECK(finish.sanding[1].grit == 200);
  CHECK(finish.sanding[1].area.si() == Approx(1.56117).epsilon(1e-5));
  CHECK(in_minutes(finish.sanding[1].work) == Approx(15.6117).epsilon(1e-5));
  CHECK(finish.sanding[1].discs == 1);
  // Two such slabs: 3.122 m2 take 1.25 discs of each grit.
  finish = finish_of(potting_bench_job(), {plan.slabs.front(), plan.slabs.front()});
  CHECK(finish.sanding[0].discs == 2);
}

TEST_CASE("an edge at a wall is neither sanded nor sealed", "[finish]") {
  std::vector<SlabPlan> slabs = potting_bench_plan().slabs;
  slabs.front().forms.isolation = Length::inches(78.25);
  CHECK(finish_of(potting_bench_job(), slabs).edges.si() ==
        Approx(130.75 * 1.75 * 6.4516e-4).epsilon(1e-6));
}

TEST_CASE("sealer goes by coats and coverage with a tenth lost", "[finish]") {
  // 2 coats x 1.56117 m2 / 9 m2 x 0.75 L x 1.1 = 0.28621 L.
  Job job = potting_bench_job();
  const std::vector<SlabPlan> slabs = potting_bench_plan().slabs;
  FinishPlan finish = finish_of(job, slabs);
  CHECK(in_litres(finish.sealer_volume) == Approx(0.28621).epsilon(1e-4));
  CHECK(finish.coats == 2);
  CHECK(in_hours(*finish.recoat) == Approx(5));
  CHECK(in_minutes(finish.coating) == Approx(6.2447).epsilon(1e-4));
  job.finish.sealer->coats = 4;
  CHECK(in_litres(finish_of(job, slabs).sealer_volume) == Approx(2 * 0.28621).epsilon(1e-4));
  job.finish.sealer->covers = job.finish.sealer->covers * 2;
  CHECK(in_litres(finish_of(job, slabs).sealer_volume) == Approx(0.28621).epsilon(1e-4));
}

TEST_CASE("nothing to sand and nothing to seal buys nothing", "[finish]") {
  Job job = potting_bench_job();
  job.finish = {};
  const FinishPlan finish = finish_of(job, potting_bench_plan().slabs);
  CHECK(finish.sanding.empty());
  CHECK(finish.coats == 0);
  CHECK(finish_supplies(job, sample_supplies(), finish).empty());
}

TEST_CASE("discs are bought by grit and sealer by the can", "[finish]") {
  const Job job = potting_bench_job();
  FinishPlan finish = potting_bench_plan().finish;
  finish.sanding.front().discs = 2;
  const auto rows = finish_supplies(job, sample_supplies(), finish);
  const Material discs = find_material(rows, "sanding-discs");
  CHECK((discs.needed == 4 && discs.packs == 4 && discs.unit == "discs"));
  CHECK(discs.basis.find("2 of grit 100, 1 of grit 200, 1 of grit 400") != std::string::npos);
  const Material sealer = find_material(rows, "penetrating-sealer");
  CHECK(sealer.item == "penetrating sealer");
  CHECK(sealer.unit == "qt");
  CHECK(sealer.needed == Approx(0.2862 / 0.946352946));
  CHECK(sealer.packs == 1);
  CHECK(sealer.pack == "can of 25.5 fl oz");
  CHECK(sealer.cost->si() == Approx(24));
  finish.sealer_volume = litres(0.76);
  CHECK(
      find_material(finish_supplies(job, sample_supplies(), finish), "penetrating-sealer").packs ==
      2);
}

TEST_CASE("a can on hand is not bought and the job's price counts", "[finish]") {
  Job job = potting_bench_job();
  job.prices = {{"penetrating-sealer", 33.0}};
  const FinishPlan finish = potting_bench_plan().finish;
  CHECK(finish_supplies(job, sample_supplies(), finish).back().cost->si() == Approx(33));
  job.on_hand = {{"penetrating sealer", 1, std::nullopt, std::nullopt}};
  CHECK(finish_supplies(job, sample_supplies(), finish).back().packs == 0);
}
