// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "mix/mix.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_retarder;

TEST_CASE("doses are counted per bag and for every bag that is mixed", "[doses]") {
  Job job = a_pour_job();
  Additive color;
  color.name = "pigment";
  color.kind = AdditiveKind::pigment;
  color.per_bag = 0.5;
  color.dose_size = fluid_ounces(2);
  job.additives = {a_retarder(), color};
  job.crew.bags_per_batch = 2;
  const MixPlan mix = plan_mix(job, job.mix.yield * (4.5 / 1.1));  // 3 batches of 2
  const std::vector<DoseTotal> doses = dose_totals(job, mix, 1.5);
  REQUIRE(doses.size() == 2);
  CHECK(doses[0].per_bag == 1.5);
  CHECK(doses[0].total == 9);
  CHECK(std::get<Mass>(doses[0].amount_per_bag).si() == Approx(0.0375));
  CHECK(doses[1].total == 3);
  CHECK(in_fluid_ounces(std::get<Volume>(doses[1].amount_per_bag)) == Approx(1));
}

TEST_CASE("a percent of binder becomes doses by the mass of one dose", "[doses]") {
  Mix mix = a_pour_job().mix;
  mix.bag = kilograms(25);
  mix.binder = 0.4;
  Additive color;
  color.kind = AdditiveKind::pigment;
  color.binder_percent = 0.03;  // 25 kg x 0.4 x 0.03 = 0.3 kg
  color.dose_size = kilograms(0.1);
  CHECK(doses_per_bag(color, mix, 0) == Approx(3));

  // Without a dose size, or with a spoonful of unknown mass, the mass itself is the dose.
  for (const Amount& size : {Amount{}, Amount{litres(0.02)}}) {
    color.dose_size = size;
    CHECK(doses_per_bag(color, mix, 0) == Approx(1));
    CHECK(std::get<Mass>(dose_size(color, mix)).si() == Approx(0.3));
  }
}

TEST_CASE("a dose of unknown size has no amount", "[doses]") {
  CHECK(std::holds_alternative<std::monostate>(amount_of(2, Amount{})));
}

TEST_CASE("only the first automatic retarder is dosed", "[doses]") {
  Job job = a_pour_job();
  job.additives = {a_retarder(), a_retarder()};
  CHECK(doses_per_bag(job, 2.5) == std::vector<double>{2.5, 0});
}
