// SPDX-License-Identifier: MIT
#include "pour/remedies.h"

#include <catch2/catch.hpp>

#include "mix/mix.h"
#include "pour/pour.h"
#include "pour/stop_end.h"
#include "support/pour_job.h"

using namespace strikeoff;
using Catch::Contains;
using Catch::StartsWith;
using test::a_pour_job;
using test::a_retarder;
using test::a_slab;

namespace {

SlabPlan bench() {
  SlabPlan slab = a_slab(Length::inches(78.25), Length::inches(26.25), Length::inches(1.75));
  slab.concrete = litres(45.10411);
  return slab;
}

struct Advice {
  std::vector<Remedy> remedies, changes;

  [[nodiscard]] const Remedy* about(const std::string& words) const {
    for (const Remedy& remedy : remedies) {
      if (remedy.what.find(words) != std::string::npos) return &remedy;
    }
    return nullptr;
  }
};

Advice advice(Job job, const SlabPlan& slab = bench()) {
  job.slabs = test::slabs_of({slab});
  const MixPlan mix = plan_mix(job, slab.concrete);
  const ZoneCutter cutter(job.slabs, {slab});
  const PourModel model(job, mix, cutter);
  return {remedies(job, model, plan_pour(job, mix, model).plan.joints), changes(job, model)};
}

/// The bench's pour with a minute to spare that it does not have: edges wait 12 of 12 min.
Job a_minute_short() {
  Job job = a_pour_job();
  job.limits.margin = minutes(1);
  return job;
}

Joint joint(int first, int second, double wait, double length_mm) {
  Joint joint;
  joint.first = first;
  joint.second = second;
  joint.wait = minutes(wait);
  joint.length = Length::mm(length_mm);
  return joint;
}

}  // namespace

TEST_CASE("a pour that works needs no remedy and one that does not lists at most six",
          "[remedies]") {
  const Advice fine = advice(a_pour_job());
  CHECK(fine.remedies.empty());
  CHECK_FALSE(fine.changes.empty());
  const Advice short_of_time = advice(a_minute_short());
  CHECK(short_of_time.changes.empty());
  REQUIRE(short_of_time.remedies.size() > 2);
  CHECK(short_of_time.remedies.size() <= 6);
  bool failed = false;
  for (const Remedy& remedy : short_of_time.remedies) {
    CHECK_FALSE((failed && remedy.works));  // what works comes first
    failed = failed || !remedy.works;
    REQUIRE(remedy.margin);
    CHECK((*remedy.margin >= minutes(1) - seconds(1e-6)) == remedy.works);
  }
}

TEST_CASE("water is to be as cold as it takes", "[remedies]") {
  // 13 of 12 min: the factor must be 1.0833. Ea/R = 30000/8.314 = 3608 K (cooler than the label's
  // 70 F): 1/T = 1/294.26 + ln 1.0833/3608 = 0.00342050, T = 292.35 K = 19.20 C, 1.91 C colder.
  // The bag holds 0.22 x 21.77 = 4.79 of heat, the water 3.502: water 1.91 x 8.291/3.502 = 4.52 C
  // colder: 16.59 C or 61.9 F; 61 F is 16.11 C.
  const Advice colder = advice(a_minute_short());
  REQUIRE(colder.about("Use water"));
  CHECK(colder.about("Use water")->works);
  CHECK_THAT(colder.about("Use water")->what, StartsWith("Use water at 17 C instead of 21 C") ||
                                                  StartsWith("Use water at 16 C instead of 21 C"));
}

TEST_CASE("smaller batches are priced by the bags they take", "[remedies]") {
  Job job = a_minute_short();
  job.mix.price = 10;
  const Advice priced = advice(job);
  const Remedy* half = priced.about("Mix 1/2 bag a batch instead of 1");
  REQUIRE(half);
  CHECK(half->works);
  CHECK_THAT(half->what, Contains("edges wait 9.5 min, and 12 min may be used"));
  REQUIRE(half->cost);
  CHECK(half->cost->si() == 0);  // four bags either way
  job.mix.price.reset();
  CHECK(advice(job).about("Mix 1/2 bag")->cost->si() == 0);
}

TEST_CASE("more retarder is priced and never above its most", "[remedies]") {
  Job job = a_minute_short();
  job.additives = {a_retarder()};
  job.additives[0].per_bag = 0;
  job.additives[0].price = 2.5;
  const Remedy* dose = nullptr;
  const Advice raised = advice(job);
  dose = raised.about("of retarder a bag instead of 0");
  REQUIRE(dose);
  // Half a dose gives 0.6 x 27.5 = 16.5 min; 4 bags of half a dose at 2.50.
  CHECK(dose->works);
  CHECK_THAT(dose->what, StartsWith("1/2 of retarder") || StartsWith("1/2 dose"));
  CHECK(in_minutes(*dose->margin) == Approx(4.5));
  CHECK(dose->cost->si() == Approx(5));
  job.limits.margin = minutes(13);
  job.additives[0].most = 1;  // 0.6 x 35 = 21 of 25 min
  const Advice most = advice(job);
  dose = most.about("the most it may have");
  if (dose) CHECK_FALSE(dose->works);
  CHECK_FALSE(advice(a_minute_short()).about("of retarder a bag instead"));
  CHECK(advice(a_minute_short()).about("Add a retarder that keeps the mix workable 2 min longer"));
}

TEST_CASE("people and mixers are asked for where they help", "[remedies]") {
  Job job = a_minute_short();
  job.mix.bag = kilograms(19);  // is not halved
  const Advice more = advice(job);
  // The mixer sets the beat: another takes another person.
  const Remedy* both = more.about("One more mixer, and one more person who mixes");
  REQUIRE(both);
  CHECK(both->works);
  CHECK(more.about("One more person who places") == nullptr);
}

TEST_CASE("without a working time or with nobody there is nothing to advise", "[remedies]") {
  Job job = a_minute_short();
  job.mix.working_time.reset();
  CHECK(advice(job).remedies.empty());
  job = a_minute_short();
  job.crew.people.clear();
  CHECK(advice(job).remedies.empty());
}

TEST_CASE("too long a pour is mended by larger batches where the joints allow", "[remedies]") {
  Job job = a_pour_job();
  job.mix.working_time = minutes(40);  // 24 min may be used
  job.crew.pour_within = minutes(20);  // one bag takes 22, two take 17
  const Remedy* larger = nullptr;
  const Advice too_long = advice(job);
  larger = too_long.about("Mix 2 bags a batch instead of 1");
  REQUIRE(larger);
  CHECK(larger->works);
  CHECK(too_long.about("Use water") == nullptr);
}

TEST_CASE("a stop-end lies across every joint that waits too long where it is shortest",
          "[remedies]") {
  const std::vector<Joint> joints{joint(1, 2, 10, 300), joint(2, 3, 10, 350), joint(2, 4, 16, 200),
                                  joint(3, 4, 10, 300), joint(4, 5, 11, 100)};
  // The joint 2-4 is across a board after 2 (350 + 200 mm) or after 3 (200 + 300).
  const auto board = stop_end(joints, 5, minutes(12));
  REQUIRE(board);
  CHECK(board->after == 3);
  CHECK(board->length.in_mm() == Approx(500));
  CHECK(board->longest.first == 3);
  CHECK(in_minutes(board->wait) == Approx(11));
  CHECK_FALSE(stop_end(joints, 5, minutes(10)));  // 2-4 and 4-5 take two boards
  CHECK(stop_end(joints, 5, minutes(16))->after == 4);
}
