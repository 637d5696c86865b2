// SPDX-License-Identifier: MIT
#include "pour/crew.h"

#include <catch2/catch.hpp>
#include <set>

#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;

namespace {

using People = std::vector<std::vector<Role>>;
constexpr Role mix = Role::mix, carry = Role::carry, place = Role::place, finish = Role::finish;

// load 1, mix 3, discharge 0.5, reset 0.5, carry 0.5, return 0.5, place 3 min
Pace with(int mixers, const People& people) {
  Crew crew = a_pour_job().crew;
  crew.mixers = mixers;
  crew.people = people;
  return pace(crew);
}

}  // namespace

TEST_CASE("the slowest of mixer and carrier and placer sets the beat", "[crew]") {
  const People three{{mix}, {carry}, {place}};
  // mixer 1 + 3 + 0.5 + 0.5 = 5; carrier 0.5 + 0.5 + 0.5 = 1.5; placer 3
  CHECK(in_minutes(with(1, three).takt) == Approx(5));
  CHECK(with(1, three).bottleneck == "the mixer");
  // lead 3 + 0.5 + 0.5 + 3
  CHECK(in_minutes(with(1, three).lead) == Approx(7));
}

TEST_CASE("a second mixer needs a second person who mixes", "[crew]") {
  CHECK(in_minutes(with(2, {{mix}, {carry}, {place}}).takt) == Approx(5));
  CHECK(with(2, {{mix}, {carry}, {place}}).bottleneck == "person 1 (mix)");
  // 5/2 = 2.5, so now the placer's 3
  CHECK(in_minutes(with(2, {{mix}, {mix}, {carry}, {place}}).takt) == Approx(3));
  CHECK(with(2, {{mix}, {mix}, {carry}, {place}}).bottleneck == "person 4 (place)");
  // 5/3 = 1.667 and 3/2 = 1.5
  const Pace five = with(3, {{mix}, {mix}, {mix}, {carry}, {place}, {place}});
  CHECK(in_minutes(five.takt) == Approx(5.0 / 3));
  CHECK(five.bottleneck == "the 3 mixers");
}

TEST_CASE("a person with several roles owns their sum and the discharge once", "[crew]") {
  // all alone: 1 + 3 + 0.5 + 0.5 + 0.5 + 0.5 + 3 = 9
  CHECK(in_minutes(with(1, {{mix, carry, place}}).takt) == Approx(9));
  CHECK(with(1, {{mix, carry, place}}).bottleneck == "person 1 (mix, carry, place)");
  // mix and carry: 1 + 3 + 0.5 + 0.5 + 0.5 + 0.5 = 6
  CHECK(in_minutes(with(1, {{mix, carry}, {place}}).takt) == Approx(6));
  // carry and place: 0.5 + 0.5 + 0.5 + 3 = 4.5, less than the mixer's 5
  CHECK(in_minutes(with(1, {{mix}, {carry, place}}).takt) == Approx(5));
  // two such pairs of hands and two mixers: 6/2 = 3 and 5/2
  const Pace pairs = with(2, {{mix, carry}, {mix, carry}, {place}});
  CHECK(in_minutes(pairs.takt) == Approx(3));
  CHECK(pairs.bottleneck == "persons 1 and 2 (mix, carry)");
}

TEST_CASE("finishing sets no beat", "[crew]") {
  CHECK(with(1, {{mix}, {carry, place, finish}}).takt == with(1, {{mix}, {carry, place}}).takt);
}

TEST_CASE("a crew takes turns when roles follow one another and sharers share all", "[crew]") {
  // 5 + 3 = 8 for whoever mixes and places while another carries
  CHECK(in_minutes(with(1, {{mix, place}, {carry}}).takt) == Approx(8));
  CHECK_FALSE(takes_turns({{mix, place}, {carry}}));
  CHECK_FALSE(takes_turns({{mix, carry}, {carry, place}}));
  CHECK(takes_turns({{mix, carry, place}}));
  CHECK(takes_turns({{mix, carry}, {mix, carry}, {place}}));
  CHECK(takes_turns({{mix}, {carry, place}, {finish}}));
}

TEST_CASE("without someone for every role there is no beat", "[crew]") {
  const Pace nobody = with(1, {{mix}, {finish}});
  CHECK(nobody.takt == Duration{});
  CHECK(nobody.missing == std::vector<Role>{carry, place});
  CHECK(nobody.bottleneck == "nobody carries or places");
  CHECK(in_minutes(nobody.lead) == Approx(7));
}

TEST_CASE("a crew is described person by person", "[crew]") {
  CHECK(describe({{mix}, {carry, place}}) == "person 1 mixes; person 2 carries and places");
  CHECK(describe({{mix}, {mix}, {carry, place, finish}}) ==
        "persons 1 and 2 mix; person 3 carries, places and finishes");
}

TEST_CASE("every consecutive sharing of the work is tried once", "[crew]") {
  // n people: 1 + 2 (n - 1) + (n - 1)(n - 2)/2 ways
  for (int n = 1; n <= 8; ++n) {
    const std::vector<People> crews = consecutive_crews(n);
    CHECK(crews.size() == static_cast<std::size_t>(1 + 2 * (n - 1) + (n - 1) * (n - 2) / 2));
    CHECK(std::set<People>(crews.begin(), crews.end()).size() == crews.size());
    for (const People& people : crews) {
      CHECK(people.size() == static_cast<std::size_t>(n));
      const Pace found = with(2, people);
      CHECK(found.missing.empty());
      CHECK(takes_turns(people));
    }
  }
}
