// SPDX-License-Identifier: MIT
#include "pour/lone_finisher.h"

#include <catch2/catch.hpp>

#include "support/pour_job.h"

using namespace strikeoff;

namespace {

/// Zones of 1 m2, batches 5 min apart, placed in the last 3 of 7 min; struck off in 1 min each.
Plan plan_of(int batches, double usable = 20) {
  Plan plan;
  plan.pour.gap = 1;
  plan.pour.usable = minutes(usable);
  for (int i = 0; i < batches; ++i) {
    Batch batch;
    batch.contact = minutes(5) * i;
    batch.place_start = batch.contact + minutes(4);
    batch.place_end = batch.contact + minutes(7);
    batch.zones = {{"slab", corners_of({{}, Length::m(1), Length::m(1)})}};
    plan.batches.push_back(batch);
  }
  plan.pour.end = plan.batches.back().place_end;
  return plan;
}

Lone of(const std::vector<Role>& roles, int batches, double stiff, double final_set,
        double usable = 20) {
  Crew crew;
  crew.people = {{Role::mix}, {Role::carry}, {Role::place}, roles};
  if (roles.size() > 1) crew.people.erase(crew.people.begin() + 2);
  // Two passes at 1 min per m2: 2 min a zone.
  return lone_finisher(crew, plan_of(batches, usable), minutes(stiff), minutes(final_set), 1);
}

}  // namespace

TEST_CASE("who has struck off everything before a zone is stiff has no conflict",
          "[lone_finisher]") {
  // Three batches: the last is placed at 17 and struck off at 18.
  CHECK(of({Role::finish}, 3, 18, 30) == Lone::no_conflict);
  CHECK(of({Role::finish}, 3, 17.9, 30) == Lone::fits);
}

TEST_CASE("one who strikes off and trowels does one after the other", "[lone_finisher]") {
  // Struck off from 12, 17, 22, 27, 27 for 1 min; trowelled from 15, 20, 25, 30, 35 for 2: each
  // trowelling ends as the next strike-off begins, even when that must be done at once (usable 13).
  CHECK(of({Role::finish}, 5, 15, 17.5) == Lone::fits);
  CHECK(of({Role::finish}, 5, 15, 17.5, 13) == Lone::fits);
  // Trowelled 16 to 18: the strike-off of 17 must wait a minute, which 20 usable min allow (until
  // 5 + 20) and 13 do not (until 5 + 13).
  CHECK(of({Role::finish}, 5, 16, 18) == Lone::fits);
  CHECK(of({Role::finish}, 5, 16, 18, 13) == Lone::does_not_fit);
  // A minute more to trowel: the strike-off comes first.
  CHECK(of({Role::finish}, 5, 16, 20, 13) == Lone::fits);
}

TEST_CASE("one who places too trowels only between two batches", "[lone_finisher]") {
  // Placing 4-7, 9-12, 14-17, 19-22, 24-27. Zone 1 is struck off 12-13 and trowelled 17-19. From 22
  // to 24 zone 2 needs 1 + 2 min to be done by 5 + 19.
  CHECK(of({Role::place, Role::finish}, 5, 15, 19) == Lone::does_not_fit);
  CHECK(of({Role::place, Role::finish}, 5, 15, 60) == Lone::fits);
}

TEST_CASE("only one person alone is asked", "[lone_finisher]") {
  Crew crew;
  crew.people = {{Role::finish}, {Role::finish}};
  CHECK(lone_finisher(crew, plan_of(3), minutes(1), minutes(2), 1) == Lone::not_alone);
  CHECK(of({Role::finish}, 41, 15, 60) == Lone::not_known);
}
