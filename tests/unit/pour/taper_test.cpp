// SPDX-License-Identifier: MIT
#include "pour/taper.h"

#include <catch2/catch.hpp>

#include "pour/retarder.h"
#include "strikeoff/planner.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_retarder;

namespace {

Job tapered_job() {
  Job job = a_pour_job();
  job.additives = {a_retarder()};
  job.additives[0].taper = true;
  return job;
}

}  // namespace

TEST_CASE("each batch has the dose that lets it set with the last one", "[taper]") {
  // 15 min a dose in halves; contacts 5 min apart. The last one has 1/2: 27.5 min. Batch 3 needs
  // 32.5 min: 12.5 more than without, so 1 dose; batch 2 17.5: 1 1/2; batch 1 22.5: 1 1/2.
  const std::vector<Duration> contacts{minutes(0), minutes(5), minutes(10), minutes(15)};
  CHECK(tapered_doses(tapered_job(), minutes(20), 1, contacts, 0.5) ==
        std::vector<double>{1.5, 1.5, 1, 0.5});
  Job job = tapered_job();
  job.additives[0].most = 1;
  CHECK(tapered_doses(job, minutes(20), 1, contacts, 0.5) == std::vector<double>{1, 1, 1, 0.5});
}

TEST_CASE("in the heat a dose gives fewer minutes", "[taper]") {
  // Half of everything: 10 min without, 7.5 min a dose. 5 min more takes 1 dose.
  CHECK(tapered_doses(tapered_job(), minutes(20), 0.5, {minutes(0), minutes(5)}, 0) ==
        std::vector<double>{1, 0});
}

TEST_CASE("tapered doses add up in batches and totals and what is bought", "[taper]") {
  Job job = tapered_job();
  job.additives[0].price = 2;
  job.limits.margin = minutes(1);  // half a dose in the last batch
  Slab slab = test::slab_on(corners_of({{}, Length::inches(78.25), Length::inches(26.25)}), {},
                            Length::inches(1.75));
  slab.name = "bench";
  job.slabs = {slab};
  job.forms.strip_stock = {
      {"board", "board", Length::m(2.15), Length::mm(340), Length::mm(16), {}, {}}};
  job.forms.screw_spacing = Length::mm(200);
  const Plan plan = make_plan(job);
  REQUIRE(plan.batches.size() > 3);
  double sum = 0, before = 100;
  for (const Batch& batch : plan.batches) {
    const double doses = batch.doses.at(0).doses;
    CHECK(doses <= before);
    CHECK(std::get<Mass>(batch.doses[0].amount).si() == Approx(0.025 * doses));
    // It is stiff with the last one, or later by less than a step (7.5 min).
    const Duration stiff = batch.contact + *plan.pour.working_time + batch.longer;
    const Duration last = plan.batches.back().contact + *plan.pour.working_time;
    CHECK(stiff >= last - seconds(1e-6));
    CHECK(stiff < last + minutes(7.5));
    sum += doses;
    before = doses;
  }
  CHECK(plan.batches.back().doses[0].doses == 0.5);
  CHECK(plan.pour.feasible);
  const DoseTotal& total = plan.mix.doses.at(0);
  CHECK(total.falls);
  CHECK(total.total == Approx(sum));
  CHECK(total.per_bag == plan.batches.front().doses[0].doses);
  const auto bought = std::find_if(plan.materials.begin(), plan.materials.end(),
                                   [](const Material& m) { return m.item == "retarder"; });
  REQUIRE(bought != plan.materials.end());
  CHECK(bought->needed == Approx(sum));
}
