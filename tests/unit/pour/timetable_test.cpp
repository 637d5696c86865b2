// SPDX-License-Identifier: MIT
#include "pour/timetable.h"

#include <catch2/catch.hpp>

#include "pour/crew.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;

namespace {

using People = std::vector<std::vector<Role>>;
constexpr Role mix = Role::mix, carry = Role::carry, place = Role::place;
const People three{{mix}, {carry}, {place}};

// load 1, mix 3, discharge 0.5, reset 0.5, carry 0.5, return 0.5, place 3 min: lead 7
Crew with(int mixers, const People& people, double placing = 3) {
  Crew crew = a_pour_job().crew;
  crew.mixers = mixers;
  crew.people = people;
  crew.times.place.usual = minutes(placing);
  return crew;
}

/// Every batch meets the one `gap` later.
std::vector<Touch> row(int batches, int gap = 1) {
  std::vector<Touch> touches;
  for (int i = 1; i + gap <= batches; ++i) touches.push_back({i, i + gap});
  return touches;
}

double wait(const Crew& crew, int batches, int gap = 1, double last_share = 1) {
  return in_minutes(least_wait_timetable(crew, batches, row(batches, gap), last_share).worst_wait);
}

}  // namespace

TEST_CASE("a crew that takes turns starts a batch each takt", "[timetable]") {
  const Crew crew = with(1, three);
  for (const int batches : {2, 12, 60, 61, 3000}) {
    const Timetable table = least_wait_timetable(crew, batches, row(batches));
    CHECK(table.is_exact);
    CHECK(in_minutes(table.worst_wait) == Approx(12));  // 5 + 7
    CHECK(in_minutes(table.own_age) == Approx(7));
    CHECK(in_minutes(table.takt) == Approx(5));
    CHECK(table.chain == "mix 3 + tip out 0.5 + carry 0.5 + place 3 + next batch 5 = 12 min");
    REQUIRE(table.batches.size() == static_cast<std::size_t>(batches));
    for (std::size_t i = 0; i < table.batches.size(); ++i) {
      const BatchTimes& batch = table.batches[i];
      CHECK(in_minutes(batch.contact) == Approx(5 * static_cast<double>(i)).margin(1e-6));
      CHECK(in_minutes(batch.place_end - batch.contact) == Approx(7));
      CHECK(in_minutes(batch.contact - batch.load) == Approx(1));
    }
  }
}

TEST_CASE("mixers help as far as people and the placer keep up", "[timetable]") {
  // Two mixers alone: 5/2 = 2.5, but placing takes 3: 3 + 7
  CHECK(wait(with(2, {{mix}, {mix}, {carry}, {place}}), 12) == Approx(10));
  // two place: 2.5 + 7; three mixers 5/3 + 7
  CHECK(wait(with(2, {{mix}, {mix}, {carry}, {place}, {place}}), 12) == Approx(9.5));
  CHECK(wait(with(3, {{mix}, {mix}, {mix}, {carry}, {place}, {place}}), 12) == Approx(5.0 / 3 + 7));
  const Timetable two =
      least_wait_timetable(with(2, {{mix}, {mix}, {carry}, {place}, {place}}), 12, row(12));
  CHECK(two.chain == "mix 3 + tip out 0.5 + carry 0.5 + place 3 + next batch 2.5 = 9.5 min");
  CHECK(two.batches[4].mixer == 1);
  CHECK(two.batches[5].mixer == 2);
}

TEST_CASE("two batches on two mixers need no beat", "[timetable]") {
  // Both loaded before; only carrying (1.5) and placing keep them apart: with two placing 1.5 + 7.
  CHECK(wait(with(2, {{mix}, {mix}, {carry}, {place}, {place}}), 2) == Approx(8.5));
}

TEST_CASE("crews of one to four wait takt and lead", "[timetable]") {
  CHECK(wait(with(1, {{mix, carry, place}}), 6) == Approx(9 + 7));
  CHECK(wait(with(1, {{mix}, {carry, place}}), 6) == Approx(5 + 7));
  CHECK(wait(with(1, {{mix, carry}, {place}}), 6) == Approx(6 + 7));
  CHECK(wait(with(2, {{mix, carry}, {mix, carry}, {place}}), 6) == Approx(3 + 7));
  CHECK(wait(with(2, {{mix}, {mix}, {carry}, {place}}), 6) == Approx(3 + 7));
}

TEST_CASE("a ring closed at its start waits for all its batches", "[timetable]") {
  // 12 batches one way round: 11 x 5 + 7; two fronts in turn: 2 x 5 + 7
  std::vector<Touch> ring = row(12);
  ring.push_back({1, 12});
  CHECK(in_minutes(least_wait_timetable(with(1, three), 12, ring).worst_wait) == Approx(62));
  const Timetable two = least_wait_timetable(with(1, three), 12, row(12, 2));
  CHECK(in_minutes(two.worst_wait) == Approx(17));
  CHECK(two.chain == "mix 3 + tip out 0.5 + carry 0.5 + place 3 + next 2 batches 10 = 17 min");
}

TEST_CASE("a smaller last batch shortens only its own work", "[timetable]") {
  // Two batches, half the last: after the first's water mix 3, tip out 0.5, reset 0.5, load 0.5,
  // mix 3, tip out 0.25, carry 0.5, place 1.5 = 9.75; with a third before, a whole joint waits 12.
  CHECK(wait(with(1, three), 2, 1, 0.5) == Approx(9.75));
  CHECK(wait(with(1, three), 3, 1, 0.5) == Approx(12));
}

TEST_CASE("one who mixes and places while another carries finds the best order", "[timetable]") {
  // Two batches, after the first's water: mix 3, tip out 0.5, reset 0.5 (the carrier walks
  // meanwhile), load 1, mix 3, tip out 0.5, place 3 (the second is carried meanwhile), place 3 =
  // 14.5. Placing the first before mixing the second: mix 3, tip out 0.5, reset 0.5, place 3, load
  // 1, mix 3, tip out 0.5, carry 0.5, place 3 = 15.
  const Crew crew = with(1, {{mix, place}, {carry}});
  const Timetable two = least_wait_timetable(crew, 2, row(2));
  CHECK(in_minutes(two.worst_wait) == Approx(14.5));
  CHECK(two.is_exact);
  // Many batches: takt 8 and lead 7 = 15, the bound, is met by the second order.
  const Timetable many = least_wait_timetable(crew, 12, row(12));
  CHECK(in_minutes(many.worst_wait) == Approx(15));
  CHECK(in_minutes(many.takt) == Approx(8));
  CHECK(many.is_exact);
}

TEST_CASE("a role shared with someone who has others goes where time is", "[timetable]") {
  // Person 2 carries it all (1.5) and person 3 places: the mixer's 5 + 7.
  const Timetable table =
      least_wait_timetable(with(1, {{mix, carry}, {carry}, {place}}), 10, row(10));
  CHECK(in_minutes(table.worst_wait) == Approx(12));
  CHECK(table.is_exact);
}

TEST_CASE("one batch and batches that do not touch wait for nobody", "[timetable]") {
  const Timetable one = least_wait_timetable(with(1, three), 1, {});
  CHECK(one.worst_wait == Duration{});
  CHECK(one.chain.empty());
  CHECK(in_minutes(one.takt) == Approx(7));
  const Timetable apart = least_wait_timetable(with(1, three), 3, {});
  CHECK(apart.worst_wait == Duration{});
  CHECK(in_minutes(apart.batches[2].place_end) == Approx(2 * 5 + 7));
}

TEST_CASE("mixing flat out makes the edges older", "[timetable]") {
  // Placing 4, two mixers, 12 batches. Paced: 4 + 7 + 1 = 12. Flat out the placer has placed
  // 4 min a batch from the first (8.5 or so on); water goes in 2.5 min apart, so every batch
  // queues: far more than paced.
  const Crew crew = with(2, {{mix}, {mix}, {carry}, {place}}, 4);
  CHECK(wait(crew, 12) == Approx(12));
  CHECK(in_minutes(unpaced_wait(crew, 12, row(12))) > 20);
  // One mixer is the slowest there is: nothing queues, 5 + 8
  CHECK(in_minutes(unpaced_wait(with(1, three, 4), 12, row(12))) == Approx(13));
}

TEST_CASE("thousands of batches stay quick for any crew", "[timetable]") {
  const Timetable table = least_wait_timetable(with(1, {{mix, place}, {carry}}), 5000, row(5000));
  CHECK_FALSE(table.is_exact);
  CHECK(table.batches.size() == 5000);
  CHECK(in_minutes(table.takt) >= 8);
}
