// SPDX-License-Identifier: MIT
#include "strikeoff/resume.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "support/resume_job.h"

using namespace strikeoff;
using test::a_log;
using test::the_rest;

namespace {

const Check* find_check(const Resume& resume, const std::string& code) {
  for (const Check& check : resume.rest.checks) {
    if (check.code == code) return &check;
  }
  return nullptr;
}

double min(Duration time) {
  return in_minutes(time);
}

}  // namespace

TEST_CASE("a pour on time goes on as planned") {
  // Batch 2 is in the mixer at 9. It is placed at 12; the next water is due at 10.
  const Resume rest = the_rest(a_log(9, {{0, 7}, {5, 0}}));
  CHECK(rest.begun == 2);
  CHECK(rest.placed == 1);
  REQUIRE(rest.rest.batches.size() == 3);
  const double contacts[] = {5, 10, 15}, placed[] = {12, 17, 22};
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(rest.rest.batches[i].number == static_cast<int>(i) + 2);
    CHECK(min(rest.rest.batches[i].contact) == Approx(contacts[i]));
    CHECK(min(rest.rest.batches[i].place_end) == Approx(placed[i]));
  }
  // The edge of batch 1 must be met by 0 + 15, by batch 2.
  CHECK(min(rest.meet_by.value()) == Approx(15));
  CHECK(rest.meet_with == 2);
  // Batch 3 meets batch 2 by 5 + 15 = 20 and is placed at 17: 3 min to spare.
  REQUIRE(rest.next);
  CHECK(rest.next->number == 3);
  CHECK(min(rest.next->contact) == Approx(10));
  CHECK(min(rest.next->latest_contact.value()) == Approx(13));
  CHECK(in_litres(rest.left) == Approx(24));
  CHECK(in_litres(rest.filled) == Approx(24));
  CHECK(rest.bags_needed == 2);
  CHECK(rest.bags_left == 3);  // 4 + 1 spare - 2
  CHECK_FALSE(rest.bags_left_is_known);
  CHECK_FALSE(rest.stop_end);
  CHECK(rest.in_hand == "Place batch 2 now.");
  CHECK_FALSE(has_stop(rest));
}

TEST_CASE("a late pour goes on at once with what is left of the margin") {
  // Water at 12 is placed at 19; the edge of batch 2 keeps until 5 + 15 = 20.
  const Resume rest = the_rest(a_log(12, {{0, 7}, {5, 12}}));
  REQUIRE(rest.next);
  CHECK(min(rest.next->contact) == Approx(12));
  CHECK(min(rest.next->latest_contact.value()) == Approx(13));
  REQUIRE(rest.joints.size() == 2);
  CHECK(min(rest.joints[0].margin.value()) == Approx(1));
  // Batch 4 follows a beat later, at 17, and is placed at 24: 12 min after batch 3's water.
  CHECK(min(rest.rest.batches.back().place_end) == Approx(24));
  CHECK(min(rest.joints[1].margin.value()) == Approx(3));
  CHECK_FALSE(rest.stop_end);
}

TEST_CASE("an edge that is just met is met") {
  const Resume rest = the_rest(a_log(13, {{0, 7}, {5, 12}}));
  CHECK(min(rest.joints[0].margin.value()) == Approx(0).margin(1e-9));
  CHECK_FALSE(rest.stop_end);
  CHECK_FALSE(has_stop(rest));
}

TEST_CASE("an edge that cannot be met ends in a stop-end along it") {
  // Water at 14 would be placed at 21: a minute after the edge of batch 2.
  const Resume rest = the_rest(a_log(14, {{0, 7}, {5, 12}}));
  REQUIRE(rest.stop_end);
  CHECK(rest.stop_end->after == 2);
  CHECK(rest.stop_end->leaves_out == 2);
  CHECK(rest.stop_end->length.in_mm() == Approx(600));
  REQUIRE(rest.stop_end->joints.size() == 1);
  for (const Point& point : rest.stop_end->joints[0].line) {
    CHECK(point.x.in_mm() == Approx(1000));
  }
  CHECK_FALSE(rest.stop_end->is_for_bags);
  CHECK_FALSE(rest.next);
  CHECK(rest.rest.batches.empty());
  CHECK(rest.stop_end->reason == "batch 3 cannot be placed in time");
  CHECK(has_stop(rest));
  REQUIRE(find_check(rest, "wet-edge"));
  CHECK(find_check(rest, "wet-edge")->level == Level::stop);
}

TEST_CASE("mix in the bucket that comes too late stays out of the slab") {
  // Placed by 16 at the earliest; the edge of batch 1 kept until 15.
  const Resume rest = the_rest(a_log(16, {{0, 7}, {5, 0}}));
  REQUIRE(rest.stop_end);
  CHECK(rest.stop_end->after == 1);
  CHECK(rest.stop_end->leaves_out == 3);
  CHECK(rest.stop_end->reason == "batch 2 in hand cannot be placed in time");
  CHECK(rest.in_hand ==
        "Keep batch 2 out of the slab and add no water to it: fill a spare form or a sample with "
        "it.");
  CHECK_FALSE(rest.next);
}

TEST_CASE("a first batch that has stiffened in the mixer is not poured") {
  const Resume rest = the_rest(a_log(18, {{0, 0}}));
  REQUIRE(rest.stop_end);
  CHECK(rest.stop_end->after == 0);
  CHECK(rest.stop_end->joints.empty());
  CHECK(rest.stop_end->leaves_out == 4);
}

TEST_CASE("mix in the bucket goes in before a stop-end that it reaches") {
  // Batch 2 is placed at 15 at the latest moment. Batch 3 cannot follow: with water at 15, placed
  // at 22, it is 2 min late at the edge of batch 2, which keeps until 20.
  const Resume rest = the_rest(a_log(15, {{0, 7}, {5, 0}}));
  REQUIRE(rest.stop_end);
  CHECK(rest.stop_end->after == 2);
  CHECK(rest.in_hand == "Place batch 2 now, up to the stop-end.");
}

TEST_CASE("batches fill by the water and the bags that really went in") {
  PourLog log = a_log(7, {{0, 7}});
  log.batches[0].water = litres(5);  // 12 + (5 - 4) = 13 L of the 48
  const Resume wet = the_rest(log);
  CHECK(in_litres(wet.filled) == Approx(13));
  CHECK(in_litres(wet.left) == Approx(35));
  REQUIRE(wet.next);
  CHECK(wet.rest.batches.size() == 3);  // 35 / 12 = 2.9
  CHECK(in_litres(wet.rest.batches[0].zone) == Approx(35.0 / 3));
  // The first joint moves on from 500 mm to 2000 x 13/48.
  for (const Point& point : wet.joints[0].joint.line) {
    CHECK(point.x.in_mm() == Approx(2000 * 13.0 / 48).epsilon(1e-3));
  }
  log.batches[0].bags = 2;
  log.batches[0].water = litres(8);
  const Resume twice = the_rest(log);
  CHECK(in_litres(twice.left) == Approx(24));
  CHECK(twice.bags_used == 2);
  CHECK(twice.bags_needed == 2);
}

TEST_CASE("water that drifts is told with what it does") {
  PourLog log = a_log(13, {{0, 7}, {5, 12}});
  log.batches[0].water = litres(4.02);  // half a per cent is nobody's fault
  CHECK_FALSE(find_check(the_rest(log), "water-drift"));
  log.batches[0].water = litres(4.2);
  log.batches[1].water = litres(3.8);
  const Resume rest = the_rest(log);
  const Check* check = find_check(rest, "water-drift");
  REQUIRE(check);
  CHECK(check->level == Level::caution);
  CHECK(check->title == "Not all batches had the planned water");
  CHECK(check->advice ==
        "More in batch 1: softer and slower to set, weaker, paler, and it shrinks more. Less in "
        "batch 2: stiffer, sets sooner, darker, harder to close at the joint. Measure the rest as "
        "planned: a third colour helps nobody.");
  log.batches[0].water = litres(4.6);
  const Resume over = the_rest(log);
  CHECK(find_check(over, "water-drift")->title == "A batch had more water than the bag allows");
}

TEST_CASE("no batch is mixed for a few spoonfuls") {
  // 11.5 L each of 12: after three 13.5 L are left, after four 2 L: a sixth of a batch.
  PourLog log = a_log(23, {{0, 7}, {5, 12}, {10, 17}, {15, 22}});
  for (LoggedBatch& batch : log.batches) batch.water = litres(3.5);
  CHECK(the_rest(log).bags_needed == 1);
  // 11.9 L each: 0.4 L are missing, less than a twentieth of a batch.
  for (LoggedBatch& batch : log.batches) batch.water = litres(3.9);
  CHECK(the_rest(log).bags_needed == 0);
}

TEST_CASE("a form deeper than planned takes more bags") {
  // Half the slab is left: 0.6 m2, 4 mm deeper: 2.4 L more, 26.4 L in all: 2.2 bags.
  PourLog log = a_log(12, {{0, 7}, {5, 12}});
  log.depths = {{"hearth", {Length::mm(1500), Length::mm(300)}, Length::mm(43)},
                {"hearth", {Length::mm(1800), Length::mm(300)}, Length::mm(45)}};
  const Resume rest = the_rest(log);
  CHECK(in_litres(rest.left) == Approx(26.4));
  CHECK(rest.bags_needed == 3);
  CHECK(rest.bags_left == 3);
  CHECK(rest.bags_short == 0);
  REQUIRE(rest.rest.batches.size() == 3);
  CHECK(in_litres(rest.rest.batches[0].zone) == Approx(8.8));
  // A third of the metre that is left each.
  for (const Point& point : rest.joints[1].joint.line) {
    CHECK(point.x.in_mm() == Approx(1000 + 1000.0 / 3).epsilon(1e-3));
  }
  const Check* check = find_check(rest, "form-depth");
  REQUIRE(check);
  CHECK(check->title ==
        "hearth: the form is 4 mm deeper than planned on average, 2.4 L more in what is left");
}

TEST_CASE("too few bags are told with how many and until when") {
  PourLog log = a_log(10, {{0, 7}, {5, 0}});
  log.bags_left = 1;
  const Resume rest = the_rest(log);
  CHECK(rest.bags_short == 1);
  REQUIRE(rest.stop_end);
  CHECK(rest.stop_end->is_for_bags);
  CHECK(rest.stop_end->after == 3);
  CHECK(rest.stop_end->leaves_out == 1);
  REQUIRE(rest.next);
  CHECK(rest.next->number == 3);
  CHECK(rest.rest.batches.size() == 3);  // batch 4 keeps its time, should bags come
  const Check* check = find_check(rest, "bags-left");
  REQUIRE(check);
  CHECK(check->level == Level::stop);
  CHECK(check->title == "1 bag too few: 2 needed, 1 left");
  // Batch 4 gets its water at 15, in 5 min.
  CHECK(check->advice ==
        "Get more of the same mix, to be here in 5 min; without them end the slab at the stop-end "
        "named above. More water does not stretch a bag: it weakens it.");
  CHECK(has_stop(rest));
}

TEST_CASE("when all is placed nothing is left to do") {
  const Resume rest = the_rest(a_log(22, {{0, 7}, {5, 12}, {10, 17}, {15, 22}}));
  CHECK(rest.rest.batches.empty());
  CHECK(rest.joints.empty());
  CHECK(rest.left == Volume{});
  CHECK(rest.bags_needed == 0);
  CHECK_FALSE(rest.next);
  CHECK_FALSE(rest.stop_end);
  CHECK_FALSE(rest.meet_by);
  CHECK(rest.in_hand.empty());
  CHECK_FALSE(has_stop(rest));
}

TEST_CASE("one batch more than planned is taken as it is") {
  const Resume rest = the_rest(a_log(27, {{0, 7}, {5, 12}, {10, 17}, {15, 22}, {20, 27}}));
  CHECK(in_litres(rest.filled) == Approx(48));
  CHECK(rest.bags_used == 5);
  CHECK(rest.rest.batches.empty());
}

TEST_CASE("a joint made too late is remembered") {
  // Batch 2 was placed 16 min after batch 1's water.
  const Resume rest = the_rest(a_log(16, {{0, 7}, {9, 16}}));
  const Check* check = find_check(rest, "joint-waited");
  REQUIRE(check);
  CHECK(check->level == Level::caution);
  CHECK(check->title == "The joint of batches 1 and 2 waited too long");
  CHECK(check->value.value() == Approx(16));
}

TEST_CASE("the bucket test overrules temperatures and these the plan") {
  PourLog log = a_log(9, {{0, 7}, {5, 0}});
  CHECK(min(the_rest(log).rest.pour.usable.value()) == Approx(15));
  // exp(50000/8.314 (1/303.15 - 1/293.15)) = 0.508 (Arrhenius)
  log.mix_temperature = Temperature::celsius(30);
  CHECK(min(the_rest(log).rest.pour.usable.value()) == Approx(15 * 0.508).epsilon(0.001));
  log.working_time = minutes(40);
  CHECK(min(the_rest(log).rest.pour.usable.value()) == Approx(24));
  // Bags as warm as the air, water as planned: 0.22 x 25 = 5.5 of 9.5 parts.
  PourLog air = a_log(9, {{0, 7}, {5, 0}});
  air.air = Temperature::celsius(39);
  CHECK(the_rest(air).rest.pour.mix_temperature.in_c() == Approx(20 + 19 * 5.5 / 9.5));
}

TEST_CASE("without a working time no deadline is given") {
  Job job = test::a_job_underway();
  job.mix.working_time.reset();
  const Resume rest = resume(job, shipped_catalogue(), a_log(40, {{0, 7}, {5, 12}}));
  CHECK_FALSE(rest.meet_by);
  CHECK_FALSE(rest.stop_end);
  REQUIRE(rest.next);
  CHECK_FALSE(rest.next->latest_contact);
  REQUIRE(find_check(rest, "wet-edge"));
  CHECK(find_check(rest, "wet-edge")->level == Level::caution);
}

TEST_CASE("a crew in which nobody has a needed role is told so") {
  Job job = test::a_job_underway();
  job.crew.people = {{Role::mix}, {Role::carry}};
  const Resume rest = resume(job, shipped_catalogue(), a_log(9, {{0, 7}}));
  REQUIRE(find_check(rest, "crew"));
  CHECK(find_check(rest, "crew")->level == Level::stop);
}

TEST_CASE("the stop-end comes at the narrowest front that can still be reached") {
  // 600 mm deep, but 500 mm from 1200 to 2000 mm. Bags for four more batches only.
  const Job job = test::job_of(R"({
    "name": "hearth", "units": "metric",
    "slabs": [{"name": "hearth", "thickness": "40 mm", "panel": "none",
               "base": {"corners": [["0 mm", "0 mm"], ["3200 mm", "0 mm"], ["3200 mm", "600 mm"],
                 ["2000 mm", "600 mm"], ["2000 mm", "500 mm"], ["1200 mm", "500 mm"],
                 ["1200 mm", "600 mm"], ["0 mm", "600 mm"]]}}],
    "mix": {"name": "test mix", "bag": "25 kg", "yield": "12 L", "yield_water": "4 L",
            "water": {"least": "3.5 L", "most": "4.5 L", "use": "4 L"},
            "working_time": "60 min", "at": "20 C"},
    "waste": "0 %", "site": {"air": "20 C", "water_temperature": "20 C"}})");
  PourLog log = a_log(8, {{0, 7}});
  log.bags_left = 4;
  const Resume rest = resume(job, shipped_catalogue(), log);
  REQUIRE(rest.stop_end);
  // Area 1.84 m2: 73.6 L, 7 batches of 10.5 L, 263000 mm2 each: fronts at 438, 876, 1371, 1897,
  // 2324 mm. Bags reach to batch 5; the neck, 500 mm wide, lies after batches 3 and 4; of equal
  // fronts the later one.
  CHECK(rest.stop_end->after == 4);
  CHECK(rest.stop_end->length.in_mm() == Approx(500).epsilon(1e-3));
}
