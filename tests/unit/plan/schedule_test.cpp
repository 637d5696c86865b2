// SPDX-License-Identifier: MIT
#include "plan/schedule.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "hardening/hardening.h"
#include "plan/tasks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

std::ptrdiff_t tasks_beginning(const std::vector<Task>& tasks, const std::string& beginning) {
  return std::count_if(tasks.begin(), tasks.end(),
                       [&](const Task& task) { return task.task.rfind(beginning, 0) == 0; });
}

double start_of(const std::vector<Task>& tasks, const std::string& beginning) {
  return in_minutes(find_task(tasks, beginning).start.value());
}

double end_of(const std::vector<Task>& tasks, const std::string& beginning) {
  return in_minutes(find_task(tasks, beginning).end.value());
}

bool is_after(const std::vector<Task>& tasks, const std::string& later, const std::string& first) {
  const Task task = find_task(tasks, later);
  return std::find(task.after.begin(), task.after.end(), find_task(tasks, first).task) !=
         task.after.end();
}

/// The plan is hardened first, as `make_plan` does.
std::vector<Task> scheduled(const Job& job, Plan plan) {
  plan.hardening = plan_hardening(job, plan.slabs, plan.pour, start_of_pour(job));
  return make_schedule(job, plan);
}

bool mentions(const Task& task, const std::string& words) {
  return task.task.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the day begins with the bucket test and a rehearsal with blanks", "[schedule]") {
  const auto tasks = scheduled(potting_bench_job(), potting_bench_plan());
  CHECK(mentions(tasks[0], "working time ____ min (the plan uses 22 min)"));
  CHECK(mentions(tasks[1], "mix ____ min (3 min)"));
}

TEST_CASE("a task begins only when what it follows is done", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 1, 4, {}}};
  const int batches = GENERATE(1, 4, 6, 70);
  job.mix.strip_after = GENERATE(minutes(60), hours(24));
  set_batches(plan, batches, minutes(5), minutes(7));
  if (GENERATE(false, true)) {
    plan.pour.working_time = plan.pour.usable = plan.pour.margin = std::nullopt;
    job.mix.final_set = job.mix.strip_after = job.mix.seal_after = std::nullopt;
  }
  if (GENERATE(false, true))
    job.crew.people = {{Role::mix}, {Role::carry, Role::place, Role::finish}};
  std::map<std::string, std::optional<Duration>> done;
  for (const Task& task : scheduled(job, plan)) {
    CAPTURE(batches, task.task);
    CHECK(task.start.has_value() == task.end.has_value());
    for (const std::string& name : task.after) {
      REQUIRE(done.count(name) == 1);
      if (task.start && done[name]) CHECK(done[name] <= task.start);
    }
    if (task.start) CHECK(*task.end >= *task.start);
    CHECK(done.emplace(task.task, task.end).second);
  }
}

TEST_CASE("phases come in the order of the day", "[schedule]") {
  std::vector<std::string> phases;
  for (const Task& task : scheduled(potting_bench_job(), potting_bench_plan())) {
    if (phases.empty() || phases.back() != task.phase) phases.push_back(task.phase);
  }
  CHECK(phases == std::vector<std::string>{"day before", "before mixing", "pour", "finish",
                                           "wet cure", "later"});
}

TEST_CASE("every batch is a task with its people and its minutes", "[schedule]") {
  const auto tasks = scheduled(potting_bench_job(), potting_bench_plan());
  CHECK(tasks_beginning(tasks, "Batch ") == 4);
  const Task third = find_task(tasks, "Batch 3: ");
  CHECK(in_minutes(third.start.value()) == Approx(10));
  CHECK(in_minutes(third.end.value()) == Approx(17));
  CHECK(third.who == "mix: person 1; carry: person 2; place: person 3");
  CHECK(mentions(third, "place from +0:14"));
}

TEST_CASE("placing begins at the minute and second of the timetable", "[schedule]") {
  Plan plan = potting_bench_plan();
  set_batches(plan, 2, minutes(5), minutes(7.5));
  const auto tasks = scheduled(potting_bench_job(), plan);
  CHECK(mentions(find_task(tasks, "Batch 1: "), "place from +0:04:30"));
  CHECK(mentions(find_task(tasks, "Batch 2: "), "place from +0:09:30"));
}

TEST_CASE("roles are named by number or as missing", "[schedule]") {
  Crew crew;
  crew.people = {{Role::mix, Role::carry}, {Role::carry}, {Role::carry}};
  CHECK(who_has(crew, Role::mix) == "person 1");
  CHECK(who_has(crew, Role::carry) == "persons 1, 2 and 3");
  CHECK(who_has(crew, Role::place) == "nobody yet");
}

TEST_CASE("the top waits for one strike-off only while its oldest batch is usable", "[schedule]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();  // ends at 22 min, usable 12
  const auto behind = scheduled(job, plan);
  CHECK(start_of(behind, "Strike off while pouring") == Approx(12));
  CHECK(end_of(behind, "Strike off while pouring") == Approx(22));
  plan.pour.usable = minutes(22);
  CHECK(tasks_beginning(scheduled(job, plan), "Strike off the whole top") == 1);
  plan.pour.usable = minutes(21.9);
  CHECK(tasks_beginning(scheduled(job, plan), "Strike off the whole top") == 0);
  plan.pour.usable = std::nullopt;
  CHECK(tasks_beginning(scheduled(job, plan), "Strike off the whole top") == 0);
}

TEST_CASE("whoever finishes strikes off and else whoever places", "[schedule]") {
  Job job = potting_bench_job();
  const auto who = [&] {
    return find_task(scheduled(job, potting_bench_plan()), "Strike off").who;
  };
  CHECK(who() == "person 4");
  job.crew.people.pop_back();
  CHECK(who() == "person 3");
}

// 78 1/4 x 26 1/4 in are 1.325 m2: two passes are 21.2 min at 8 min/m2 and 15.9 at 6.
TEST_CASE("the whole top is trowelled at once while slow work fits before the first set",
          "[schedule]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  const double open = 15 + 22, slow = 1.32520 * 16, usual = 1.32520 * 12;
  job.mix.final_set = minutes(open + slow + 0.01);
  const auto whole = scheduled(job, plan);
  CHECK(tasks_beginning(whole, "Trowel the whole top") == 1);
  CHECK(start_of(whole, "Trowel the whole top") == Approx(open));
  CHECK(end_of(whole, "Trowel the whole top") == Approx(open + usual));
  CHECK(mentions(find_task(whole, "Trowel the whole top"), "done before +0:58"));

  job.mix.final_set = minutes(open + slow - 0.01);
  const auto zones = scheduled(job, plan);
  CHECK(tasks_beginning(zones, "Trowel the whole top") == 0);
  CHECK(tasks_beginning(zones, "Trowel zone") == 4);
  CHECK(start_of(zones, "Trowel zone 1") == Approx(22));
  CHECK(end_of(zones, "Trowel zone 1") == Approx(22 + usual / 4));
  CHECK(start_of(zones, "Trowel zone 2") == Approx(5 + 22));  // stiff after zone 1 is done
  CHECK(is_after(zones, "Trowel zone 2", "Trowel zone 1"));
  CHECK(is_after(zones, "Trowel zone 2", "Batch 2"));
}

TEST_CASE("form tasks name bends and blocks and aprons only where the job has them", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto begins = [&](const std::string& beginning) {
    const auto tasks = form_tasks(job, plan);
    return std::count_if(tasks.begin(), tasks.end(),
                         [&](const std::string& task) { return task.rfind(beginning, 0) == 0; });
  };
  const char* special[] = {"Bend the two thin layers",
                           "Screw a cleat over each splice",
                           "Fix the blocks of the rounded corners",
                           "Fix the knock-outs",
                           "Glue the foam",
                           "Close the ends of the apron"};
  for (const char* task : special) CHECK(begins(task) == 0);

  // Cleats of a bent corner alone are no splice's.
  job.slabs.front().corner_cuts = {{1, Length::mm(150), true}};
  job.forms.bend_stock =
      Stock{"thin", "thin", Length::mm(2440), Length::mm(1220), Length::mm(4), {}, {}};
  job.forms.bend_stock->bends_to = Length::mm(150);
  Part cleat;
  cleat.role = "cleat";
  plan.cut_list.parts.push_back(cleat);
  CHECK(begins("Bend the two thin layers") == 1);
  CHECK(begins("Fix the blocks of the rounded corners") == 0);
  CHECK(begins("Screw a cleat over each splice") == 0);
  plan.slabs.front().forms.splices = 1;
  CHECK(begins("Screw a cleat over each splice") == 1);

  job.slabs.front().corner_cuts.front().size = Length::mm(140);  // too tight to bend
  CHECK(begins("Bend the two thin layers") == 0);
  CHECK(begins("Fix the blocks of the rounded corners") == 1);

  // One side has open ends; beside another apron all round it has none.
  job.slabs.front().sides.front().apron = true;
  CHECK(begins("Fix the soffit strips, flush with the top of the base; those under") == 1);
  CHECK(begins("Glue the foam") == 1);
  CHECK(begins("Close the ends of the apron") == 1);
  for (Side& side : job.slabs.front().sides) side.apron = true;
  CHECK(begins("Close the ends of the apron") == 0);

  job.slabs.front().openings.push_back({"sink", {{}, Length::mm(300), Length::mm(200)}, true});
  CHECK(begins("Fix the knock-outs") == 1);
}

TEST_CASE("what hangs on a silent label has no minutes but an order", "[schedule]") {
  Job job = potting_bench_job();
  job.date = StartDate{std::chrono::year{2026} / 5 / 31, std::chrono::minutes{540}};
  job.mix.final_set = job.mix.strip_after = job.mix.sand_after = std::nullopt;
  job.mix.seal_after = job.mix.full_service = std::nullopt;
  const auto tasks = scheduled(job, potting_bench_plan());
  for (const char* step : {"Strip", "Sand", "Let it dry", "Seal, coat 1", "First full use"}) {
    CAPTURE(step);
    const Task task = find_task(tasks, step);
    CHECK_FALSE(task.start);
    CHECK_FALSE(task.end);
    CHECK_FALSE(task.start_local);
    CHECK_FALSE(task.end_local);
    CHECK_FALSE(task.after.empty());
  }
  CHECK(mentions(find_task(tasks, "Strip"), "not before the time on the bag's data sheet: ____"));
  CHECK(mentions(find_task(tasks, "Trowel zone 1"), "final set on the bag's data sheet"));
  CHECK(find_task(tasks, "Trowel zone 1").start);
}

TEST_CASE("a label's time after an unknown step is a lower bound and no date", "[schedule]") {
  Job job = potting_bench_job();
  job.mix.sand_after = std::nullopt;
  const auto tasks = scheduled(job, potting_bench_plan());
  CHECK(find_task(tasks, "Strip").start);
  CHECK_FALSE(find_task(tasks, "Sand").start);
  CHECK_FALSE(find_task(tasks, "Seal, coat 1").start);
  CHECK(mentions(find_task(tasks, "Seal, coat 1"), "not before 36 h after the pour"));
  CHECK(mentions(find_task(tasks, "First full use"), "not before 28 d after the pour"));
}

TEST_CASE("without a working time the trowel has no minutes but stripping has", "[schedule]") {
  Plan unknown = potting_bench_plan();
  unknown.pour.working_time = unknown.pour.usable = unknown.pour.margin = std::nullopt;
  const auto tasks = scheduled(potting_bench_job(), unknown);
  CHECK(mentions(tasks[0], "the bag does not say"));
  CHECK(tasks_beginning(tasks, "Trowel") == 1);
  CHECK_FALSE(find_task(tasks, "Trowel zone by zone").start);
  CHECK_FALSE(find_task(tasks, "Keep the top wet").start);
  CHECK(start_of(tasks, "Strip the forms") == Approx(22 + 120));
}

TEST_CASE("label times count from the end of the pour", "[schedule]") {
  const auto tasks = scheduled(potting_bench_job(), potting_bench_plan());
  CHECK(start_of(tasks, "Strip the forms") == Approx(22 + 120));
  CHECK(start_of(tasks, "Sand") == Approx(22 + 240));
  CHECK(start_of(tasks, "Seal, coat 1") == Approx(22 + 36 * 60));
  CHECK(start_of(tasks, "First full use") == Approx(22 + 28 * 1440));
}

// Seven days moist for ordinary cement: ACI 308R and ACI 318, from memory.
TEST_CASE("an ordinary mix stays wet for seven days and a rapid one for an hour", "[schedule]") {
  Job job = potting_bench_job();
  const auto wet = [&] {
    const Task task = find_task(scheduled(job, potting_bench_plan()), "Keep the top wet");
    return in_hours(*task.end - *task.start);
  };
  CHECK(wet() == Approx(1));
  job.mix.strip_after = hours(11.9);
  CHECK(wet() == Approx(1));
  job.mix.strip_after = hours(12);
  CHECK(wet() == Approx(7 * 24));
  job.mix.strip_after = std::nullopt;
  CHECK(wet() == Approx(7 * 24));
}

TEST_CASE("the wet cure says how often under what cover and how much water", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  SitePlan& site = plan.site;
  site.wet_every = minutes(25);
  site.cure_water = gallons(5);
  site.bucket = gallons(2.5);
  site.cure_buckets = 2;
  const auto task = [&] {
    site.wet_cure = job.mix.strip_after < hours(12) ? hours(1) : days(7);
    return find_task(make_schedule(job, plan), "Keep the top wet").task;
  };
  CHECK(task() ==
        "Keep the top wet for 1 h, or as long as the bag's data sheet says: sprinkle when the "
        "surface is hard, sheet over it; where it lies bare, again every 25 min at the latest; "
        "about 5 gal of water in all, 2 buckets of 2.5 gal");
  job.mix.strip_after = hours(24);
  job.units = Units::metric;
  site.wet_every = minutes(750);
  CHECK(task() ==
        "Keep the top wet for 7 d: damp cloth under the sheet, at 50 F (10 C) or warmer; wet the "
        "cloth every 12 h 30 min at the latest; about 19 L of water in all, 2 buckets of 9.5 L");
}

// 16 h: ASTM D4263.
TEST_CASE("sealing waits for the drying test and first use for sealing", "[schedule]") {
  Job job = potting_bench_job();
  const auto tasks = [&] { return scheduled(job, potting_bench_plan()); };
  // Three grits of 15.61 min, and 4 h for the paste in the pits after the first.
  const double sanded = 22 + 240 + 3 * 15.61 + 240, tested = sanded + 16 * 60;
  CHECK(start_of(tasks(), "Let it dry") == Approx(sanded));
  CHECK(end_of(tasks(), "Let it dry") == Approx(tested));
  job.mix.seal_after = hours(20);  // 25 h: the end of the test
  CHECK(start_of(tasks(), "Seal, coat 1") == Approx(tested));
  job.mix.seal_after = hours(26);
  CHECK(start_of(tasks(), "Seal, coat 1") == Approx(22 + 26 * 60));
  job.mix.full_service = hours(1);
  // Two coats of 6.24 min, 5 h between them.
  CHECK(start_of(tasks(), "First full use") == Approx(22 + 26 * 60 + 2 * 6.24 + 300));
}

TEST_CASE("an ordinary mix is sanded after its wet week and a rapid one before", "[schedule]") {
  Job job = potting_bench_job();
  const auto tasks = [&] { return scheduled(job, potting_bench_plan()); };
  CHECK(start_of(tasks(), "Sand") == Approx(22 + 240));
  CHECK_FALSE(is_after(tasks(), "Sand", "Keep the top wet"));
  job.mix.strip_after = hours(24);
  job.mix.sand_after = days(4);
  CHECK(start_of(tasks(), "Sand") == Approx(end_of(tasks(), "Keep the top wet")));
  CHECK(is_after(tasks(), "Sand", "Keep the top wet"));
  job.mix.sand_after = days(9);
  CHECK(start_of(tasks(), "Sand") == Approx(22 + 9 * 1440));
}

TEST_CASE("local times follow the start time across midnight", "[schedule]") {
  using namespace std::chrono;
  Job job = potting_bench_job();
  CHECK_FALSE(scheduled(job, potting_bench_plan())[0].start_local);
  job.date = StartDate{year{2026} / May / 31, std::nullopt};
  CHECK_FALSE(scheduled(job, potting_bench_plan())[0].start_local);
  job.date->time = 23h + 55min;
  const auto tasks = scheduled(job, potting_bench_plan());
  CHECK(tasks[0].start_local == "2026-05-30T23:55:00");
  CHECK(find_task(tasks, "Batch 3: ").start_local == "2026-06-01T00:05:00");
  CHECK(find_task(tasks, "Batch 3: ").end_local == "2026-06-01T00:12:00");
}

TEST_CASE("tasks for parts the job does not have are left out", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  const auto number = [&](const char* beginning) {
    return tasks_beginning(scheduled(job, plan), beginning);
  };
  for (const char* task : {"Fix the knock-outs", "Stick the isolation", "Cut the openings",
                           "Screw a cleat", "Set props", "Take out the props", "Fix the brackets",
                           "Drive stakes", "Dig out", "Compact", "Wet the ground"}) {
    CAPTURE(task);
    CHECK(number(task) == 0);
  }
  CHECK(number("Wet the panels") == 1);
  CHECK(number("Bed the panels, leaving 1/8 in between sheets, and screw") == 1);
  job.slabs.front().panel_gap = Length{};
  CHECK(number("Bed the panels, sheets butted tight, and screw") == 1);
  job.slabs.front().panel = std::nullopt;
  CHECK(number("Wet the panels") == 0);
  CHECK(number("Bed the panels") == 0);
}

TEST_CASE("the tops of the strips are set to the fall or to one level", "[schedule]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  Slab& slab = job.slabs.front();
  const auto tops = [&] { return find_task(scheduled(job, plan), "Set the tops").task; };
  CHECK(tops().empty());
  slab.levels = {{{Length{}, Length{}}, Length{}},
                 {{Length::inches(76), Length{}}, Length::mm(6)},
                 {{Length{}, Length::inches(24)}, Length{}}};
  CHECK(tops().find("all in one level, 1 3/4 in above the highest place of the base") !=
        std::string::npos);
  slab.fall = Fall{0.015, 0};
  job.units = Units::metric;  // 0.015 x 1000 mm
  CHECK(tops().find("down 15 mm in every 1 m towards the front") != std::string::npos);
  job.units = Units::us;  // 0.015 x 48 in = 0.72 in, 11.52 sixteenths
  CHECK(tops().find("down 3/4 in in every 4 ft towards the front") != std::string::npos);
}

TEST_CASE("the foam of an apron is no knock-out of an opening", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.cut_list.parts.push_back(plan.cut_list.parts.front());
  plan.cut_list.parts.back().role = "knock-out block";
  job.slabs.front().sides[0].apron = true;
  job.slabs.front().apron_depth = Length::inches(3);
  const auto tasks = scheduled(job, plan);
  CHECK(tasks_beginning(tasks, "Fix the knock-outs") == 0);
  CHECK(tasks_beginning(tasks, "Glue the foam to the base") == 1);
  CHECK(mentions(find_task(tasks, "Fix the soffit strips"), "under an apron lower down by 3 in"));
}

TEST_CASE("a corner too tight to bend gets its block fixed", "[schedule]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  CHECK(tasks_beginning(scheduled(job, plan), "Fix the blocks of the rounded corners") == 0);
  job.slabs.front().corner_cuts = {{0, Length::inches(1), true}};
  CHECK(tasks_beginning(scheduled(job, plan), "Fix the blocks of the rounded corners") == 1);
}

TEST_CASE("diagonals are checked only where there are four corners", "[schedule]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();
  CHECK(tasks_beginning(scheduled(job, plan), "Check level, heights and both diagonals") == 1);
  job.slabs.front().corner_cuts = {{0, Length::inches(6), true}};
  CHECK(tasks_beginning(scheduled(job, plan), "Check level, heights and the lengths") == 1);
}

TEST_CASE("what is bought for the forms is fixed in the day before", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  Slab& slab = job.slabs.front();
  slab.sides[2].wall = true;
  slab.openings = {{"sink", {{}, Length::mm(500), Length::mm(400)}, true},
                   {"bowl", {{}, Length::mm(100), Length::mm(100)}, false}};
  slab.sides[0].bracket = true;
  plan.cut_list.parts[1].role = "soffit panel";
  plan.slabs.front().forms.props_apart = Length::inches(18);
  plan.slabs.front().forms.splices = 1;
  const auto tasks = scheduled(job, plan);
  CHECK(mentions(find_task(tasks, "Stick the isolation"), "along the wall (the back)"));
  CHECK(mentions(find_task(tasks, "Cut the openings"), "closed (sink)"));
  CHECK(mentions(find_task(tasks, "Set props"),
                 "panels (S2), at the ends and no farther apart than 18 in"));
  CHECK(mentions(find_task(tasks, "Fix the brackets"), "apart than 2 ft (front)"));
  CHECK(mentions(find_task(tasks, "Fix the edge strips"), "no farther apart than 8 in"));
  CHECK(tasks_beginning(tasks, "Screw a cleat") == 1);
  plan.cut_list.parts[1].role = "soffit strip";
  CHECK(tasks_beginning(scheduled(job, plan), "Set props") == 0);
}

TEST_CASE("props stay for a week or until the first full use of a rapid mix", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.slabs.front().forms.props = 8;
  job.mix.strip_after = hours(4);
  job.mix.full_service = hours(30);
  const auto starts = [&](const char* task) { return find_task(scheduled(job, plan), task).start; };
  CHECK(mentions(find_task(scheduled(job, plan), "Strip the edges"), "props stay"));
  CHECK(*starts("Take out the props") == plan.pour.end + hours(30));
  job.mix.strip_after = hours(24);
  CHECK(*starts("Take out the props") == plan.pour.end + days(7));
  CHECK(*starts("First full use") >= *starts("Take out the props"));
  job.mix.strip_after = hours(4);
  job.mix.full_service = std::nullopt;
  CHECK(mentions(find_task(scheduled(job, plan), "Take out the props"), "data sheet: ____"));
}

TEST_CASE("what is stripped within its wet cure is covered again", "[schedule]") {
  Job job = potting_bench_job();
  job.mix.strip_after = hours(1);
  // Trowelled by 43 min at the latest, wet for an hour from then; stripped at 82 min.
  CHECK(mentions(find_task(scheduled(job, potting_bench_plan()), "Strip"), "cover top and edges"));
  job.mix.strip_after = hours(3);
  const std::vector<Task> after = scheduled(job, potting_bench_plan());
  CHECK(start_of(after, "Strip") > end_of(after, "Keep the top wet"));
  CHECK_FALSE(mentions(find_task(after, "Strip"), "cover top and edges"));
}

// Through 14 MPa at 24 h and 38 MPa at 28 d from the set at 45 min: 10 MPa comes before 24 h, and
// the seal is not dry before.
TEST_CASE("light use is a step of its own where a strength tells", "[schedule]") {
  Job job = potting_bench_job();
  CHECK(tasks_beginning(scheduled(job, potting_bench_plan()), "Light use") == 0);
  job.mix.strength = {{hours(24), megapascals(14)}, {days(28), megapascals(38)}};
  CHECK(start_of(scheduled(job, potting_bench_plan()), "Light use") ==
        Approx(22 + 36 * 60 + 2 * 6.24 + 300));
  job.mix.full_service = hours(20);
  job.mix.strength = {{hours(1), megapascals(21)}};
  CHECK(tasks_beginning(scheduled(job, potting_bench_plan()), "Light use") == 0);
}

TEST_CASE("walls of several slabs are told apart", "[schedule]") {
  Job job = potting_bench_job();
  job.slabs.push_back(job.slabs.front());
  job.slabs[1].name = "shelf";
  job.slabs[0].sides[2].wall = job.slabs[1].sides[0].wall = job.slabs[1].sides[1].wall = true;
  job.slabs[1].sides[0].name = "edge 1";
  CHECK(mentions(find_task(scheduled(job, potting_bench_plan()), "Stick the isolation"),
                 "(bench: the back; shelf: edge 1, the right)"));
}

TEST_CASE("a slab on the ground has its ground made ready and no base", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(mentions(find_task(scheduled(job, plan), "Wipe"), "none on panel or base"));
  job.slabs.front().panel = std::nullopt;
  CHECK(mentions(find_task(scheduled(job, plan), "Wipe"), "none on the base"));
  job.slabs.front().support = Support::ground;
  const auto tasks = scheduled(job, plan);
  CHECK_FALSE(mentions(find_task(tasks, "Wipe"), "base"));
  for (const char* task : {"Dig out", "Compact", "Drive stakes", "Wet the ground"}) {
    CAPTURE(task);
    CHECK(tasks_beginning(tasks, task) == 1);
  }
  CHECK_FALSE(mentions(find_task(tasks, "First full use"), "hot pans"));
}
