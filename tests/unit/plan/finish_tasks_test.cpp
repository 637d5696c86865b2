// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "plan/tasks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// The bench, stripped and cured 60 min after the first water; it may be sanded from 120 min and
/// sealed from 24 h, in air as warm as the label's.
Plan bench() {
  Plan plan = potting_bench_plan();
  const auto from = [](const char* step, Duration when) {
    Milestone milestone;
    milestone.step = step;
    milestone.label = milestone.from = when;
    return milestone;
  };
  plan.hardening.slowing = 1;
  plan.hardening.milestones = {from("sand", minutes(120)), from("seal", hours(24))};
  return plan;
}

std::vector<Task> finished(const Job& job, const Plan& plan,
                           const Done& before = {"strip", minutes(60)}) {
  TaskList tasks;
  std::vector<Done> follows = add_sanding(job, plan, {before}, tasks);
  follows = add_sealing(job, plan, std::move(follows), tasks);
  return std::move(tasks).take();
}

std::vector<Task> finished(const Plan& plan) {
  return finished(potting_bench_job(), plan);
}

std::vector<std::string> begins(const std::vector<Task>& tasks) {
  std::vector<std::string> words;
  for (const Task& task : tasks) words.push_back(task.task.substr(0, 30));
  return words;
}

}  // namespace

TEST_CASE("pits are filled after the first grit and sanded when hard", "[finish]") {
  const auto tasks = finished(bench());
  CHECK(begins(tasks) ==
        std::vector<std::string>{"Sand top and edges with grit 1", "Fill pits: rub in a stiff past",
                                 "Sand top and edges with grit 2", "Sand top and edges with grit 4",
                                 "Let it dry: tape down a clear ", "Seal, coat 1 of 2: penetrating",
                                 "Seal, coat 2 of 2: penetrating"});
  CHECK(tasks[0].task ==
        "Sand top and edges with grit 100, wet or with extraction, mask on (about 15 min for one "
        "person)");
  // 120 + 15.61, 4 h for the paste, 15.61, 15.61, 16 h.
  CHECK(in_minutes(*tasks[0].start) == Approx(120));
  CHECK(in_minutes(*tasks[1].start) == Approx(135.61));
  CHECK(in_minutes(*tasks[2].start) == Approx(375.61));
  CHECK(in_minutes(*tasks[3].start) == Approx(391.22));
  CHECK(in_minutes(*tasks[4].start) == Approx(406.83));
  CHECK(in_minutes(*tasks[4].end) == Approx(406.83 + 960));
  CHECK(in_hours(*tasks[5].start) == Approx(24));
  // 6.24 min and the recoat time of 5 h.
  CHECK(in_minutes(*tasks[6].start) == Approx(1440 + 6.24 + 300));
  CHECK(tasks[6].after == std::vector<std::string>{tasks[5].task});
}

TEST_CASE("two who finish take half the time", "[finish]") {
  Job job = potting_bench_job();
  job.crew.people.push_back({Role::finish});
  const auto tasks = finished(job, bench());
  CHECK(in_minutes(*tasks[0].end - *tasks[0].start) == Approx(7.805));
}

TEST_CASE("a paste hardens slower in the cold and nobody knows when without a label", "[finish]") {
  Plan plan = bench();
  plan.hardening.slowing = 3;
  auto tasks = finished(plan);
  CHECK(in_minutes(*tasks[2].start - *tasks[1].end) == Approx(3 * 240));
  Job job = potting_bench_job();
  job.mix.sand_after = std::nullopt;
  tasks = finished(job, plan);
  CHECK_FALSE(tasks[2].start);
  CHECK(tasks[2].task.find("; not before the time on the bag's data sheet: ____") !=
        std::string::npos);
  plan.hardening.slowing = std::nullopt;
  CHECK_FALSE(finished(plan)[2].start);
}

TEST_CASE("an unknown beginning leaves words for every wait", "[finish]") {
  const auto tasks = finished(potting_bench_job(), bench(), {"strip", std::nullopt});
  for (const Task& task : tasks) CHECK_FALSE(task.start);
  CHECK(tasks[1].task.find("; wait") == std::string::npos);
  CHECK(tasks[2].task.find("; wait 4 h first") != std::string::npos);
  CHECK(tasks[6].task.find("; wait 5 h first") != std::string::npos);
}

TEST_CASE("a can without a recoat time is to be read", "[finish]") {
  Plan plan = bench();
  plan.finish.recoat = std::nullopt;
  const Task second = finished(plan).back();
  CHECK_FALSE(second.start);
  CHECK(second.task.find("; not before the time on the can: ____") != std::string::npos);
}

TEST_CASE("a single grit takes the paste of the pits down", "[finish]") {
  Plan plan = bench();
  plan.finish.sanding.resize(1);
  plan.finish.coats = 0;
  const auto tasks = finished(plan);
  REQUIRE(tasks.size() == 2);
  CHECK(tasks[0].task.rfind("Fill pits", 0) == 0);
  CHECK(in_minutes(*tasks[0].start) == Approx(120));
  CHECK(in_minutes(*tasks[1].start) == Approx(120 + 240));
}

TEST_CASE("without pits each grit follows the one before", "[finish]") {
  Plan plan = bench();
  plan.finish.fill_pits = false;
  plan.finish.coats = 0;
  const auto tasks = finished(plan);
  REQUIRE(tasks.size() == 3);
  CHECK(in_minutes(*tasks[2].start) == Approx(120 + 2 * 15.61));
}

TEST_CASE("a slab that is left as it is has nothing to do", "[finish]") {
  Plan plan = bench();
  plan.finish = {};
  CHECK(finished(plan).empty());
  TaskList tasks;
  const auto follows = add_sanding(potting_bench_job(), plan, {{"strip", minutes(60)}}, tasks);
  REQUIRE(follows.size() == 1);
  CHECK(follows.front().task == "strip");
}
