// SPDX-License-Identifier: MIT
#include "pour/finishing.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <numeric>

#include "support/sample_plan.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// Batches 5 min apart, each placed 7 min after its contact, on zones of so many m2.
std::vector<Batch> batches_of(const std::vector<double>& areas) {
  std::vector<Batch> batches;
  for (const double area : areas) {
    Batch batch;
    batch.number = static_cast<int>(batches.size()) + 1;
    batch.contact = minutes(5) * static_cast<double>(batches.size());
    batch.place_end = batch.contact + minutes(7);
    batch.zones = {{"slab", corners_of({{}, Length::m(area), Length::m(1)})}};
    batches.push_back(batch);
  }
  return batches;
}

constexpr Finishers alone{1, 1, {}};

}  // namespace

TEST_CASE("a zone is trowelled when it is stiff and the one before is done", "[finishing]") {
  // 2 passes x 6 min/m2 x 0.5 m2 = 6 min a zone, a new zone every 5.
  const auto spans = trowel_in_order(batches_of({0.5, 0.5, 0.5}), minutes(20), alone, 6);
  CHECK(in_minutes(spans[0].start) == Approx(20));
  CHECK(in_minutes(spans[0].end) == Approx(26));
  CHECK(in_minutes(spans[1].start) == Approx(26));
  CHECK(in_minutes(spans[2].end) == Approx(38));
  const auto quick = trowel_in_order(batches_of({0.5, 0.5, 0.5}), minutes(20), alone, 4);
  CHECK(in_minutes(quick[1].start) == Approx(25));
}

TEST_CASE("a zone that is stiff before it is placed waits to be placed", "[finishing]") {
  const auto spans = trowel_in_order(batches_of({0.5}), minutes(2), alone, 6);
  CHECK(in_minutes(spans[0].start) == Approx(7));
}

TEST_CASE("two people halve the work", "[finishing]") {
  const auto spans = trowel_in_order(batches_of({0.5}), minutes(20), {2, 2, {}}, 6);
  CHECK(in_minutes(spans[0].end) == Approx(23));
}

TEST_CASE("who also pours joins at the end of the pour", "[finishing]") {
  // Alone from 20 to 22 min: 2 of 12 min are done, the rest takes two people 5.
  const auto joined = trowel_in_order(batches_of({1}), minutes(20), {2, 1, minutes(22)}, 6);
  CHECK(in_minutes(joined[0].end) == Approx(22 + 5));
  const auto done_alone = trowel_in_order(batches_of({1}), minutes(20), {2, 1, minutes(40)}, 6);
  CHECK(in_minutes(done_alone[0].end) == Approx(32));
  const auto late = trowel_in_order(batches_of({1}), minutes(20), {2, 0, minutes(30)}, 6);
  CHECK(in_minutes(late[0].start) == Approx(30));
  CHECK(in_minutes(late[0].end) == Approx(36));
}

TEST_CASE("finishers are counted and those who only finish are free at once", "[finishing]") {
  Job job = potting_bench_job();
  PourPlan pour = potting_bench_plan().pour;
  CHECK(finishers(job.crew, pour).people == 1);
  CHECK(finishers(job.crew, pour).others_free == Duration{});
  job.crew.people.push_back({Role::place, Role::finish});
  const Finishers two = finishers(job.crew, pour);
  CHECK(two.people == 2);
  CHECK(two.free_at_once == 1);
  CHECK(two.others_free == pour.end);
  job.crew.people = {{Role::mix}};
  CHECK(finishers(job.crew, pour).people == 1);
}

TEST_CASE("no order of the zones has a smaller worst lateness", "[finishing]") {
  Draw draw(7);
  for (int trial = 0; trial < 60; ++trial) {
    std::vector<double> areas;
    for (int i = draw.whole(1, 5); i > 0; --i) areas.push_back(draw.whole(1, 12) / 10.0);
    const auto batches = batches_of(areas);
    const Duration in_order = oldest(batches, trowel_in_order(batches, minutes(20), alone, 6));
    std::vector<std::size_t> order(areas.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    Duration best = days(1);
    do {
      Duration free, worst;
      for (const std::size_t i : order) {
        free = std::max(free, batches[i].contact + minutes(20)) + minutes(areas[i] * 12);
        worst = std::max(worst, free - batches[i].contact);
      }
      best = std::min(best, worst);
    } while (std::next_permutation(order.begin(), order.end()));
    CHECK(in_order.si() == Approx(best.si()));
  }
}

TEST_CASE("the fewest finishers do it and one less does not", "[finishing]") {
  // 8 min a zone for one at 8 min/m2; each has 4 min.
  const auto batches = batches_of({0.5, 0.5, 0.5});
  CHECK(fewest_finishers(batches, minutes(20), minutes(24)) == 2);
  CHECK(fewest_finishers(batches, minutes(20), minutes(23.99)) == 3);
  CHECK(fewest_finishers(batches, minutes(20), minutes(20.4)) == 20);
  CHECK_FALSE(fewest_finishers(batches, minutes(20), minutes(20.39)));
  CHECK(can_be_trowelled(batches, minutes(20), minutes(20.39)));
  CHECK(can_be_trowelled(batches, minutes(20), minutes(20.2)));
  CHECK_FALSE(can_be_trowelled(batches, minutes(20), minutes(20.19)));
}

TEST_CASE("striking off the largest zone takes a minute for each m2", "[finishing]") {
  CHECK(in_minutes(strike_off_time(batches_of({0.5, 1.5, 1}))) == Approx(1.5));
}

TEST_CASE("what is spare between two batches is the freest finisher's", "[finishing]") {
  Crew crew = potting_bench_job().crew;  // placing 3 min
  crew.people = {{Role::mix}, {Role::carry}, {Role::place, Role::finish}};
  CHECK(in_minutes(*strike_off_spare(crew, minutes(5))) == Approx(2));
  crew.people.push_back({Role::finish});
  CHECK(in_minutes(*strike_off_spare(crew, minutes(5))) == Approx(5));
  crew.people = {{Role::mix}, {Role::carry}, {Role::place}};
  CHECK(strike_off_role(crew) == Role::place);
  CHECK(in_minutes(*strike_off_spare(crew, minutes(5))) == Approx(2));
  crew.people = {{Role::mix}};
  CHECK_FALSE(strike_off_spare(crew, minutes(5)));
}
