// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>

#include "strikeoff/pour_log.h"
#include "support/case_file.h"
#include "support/read.h"
#include "support/source_dir.h"

using namespace strikeoff;

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(test::source_dir() / path);
  REQUIRE(file);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// A job without a start time, of one slab named "table".
Job bakery_table() {
  return test::job_of(text_of("examples/bakery-table/job.json"));
}

PourLog log_of(const std::string& text) {
  const LogResult result = read_log(text, bakery_table());
  INFO(render_diagnostics(result.diagnostics, "log.json", text));
  REQUIRE(result.log);
  return *result.log;
}

}  // namespace

// One wrong log a file: tests/cases/wrong-logs/NAME.case holds the log and the whole message.
TEST_CASE("every wrong log gets exactly its message", "[job]") {
  auto cases = test::load_cases("wrong-logs");
  CHECK(cases.size() >= 17);
  const Job job = bakery_table();
  for (test::CaseFile& wrong : cases) {
    INFO(wrong.path.filename().string());
    const std::string text = wrong.section("log.json");
    const LogResult result = read_log(text, job);
    CHECK_FALSE(result.log.has_value());
    const std::string message = render_diagnostics(result.diagnostics, "log.json", text);
    if (test::update_cases()) {
      wrong.set_section("stderr", message);
      wrong.save();
    }
    CHECK(wrong.section("stderr") == message);
  }
}

TEST_CASE("a log is read with its batches by number", "[job]") {
  const PourLog log = log_of(R"({"now": "14 min", "batches": [
    {"number": 2, "contact": "5 min"},
    {"number": 1, "contact": "0 min", "placed": "9 min", "water": "4 qt", "bags": 2}],
    "depths": [{"at": ["10 mm", "20 mm"], "depth": "41 mm"}],
    "air": "25 C", "mix_temperature": "24 C", "working_time": "18 min", "bags_left": 2.5})");
  PourLog expected;
  expected.now = minutes(14);
  expected.batches = {{1, minutes(0), minutes(9), quarts(4), 2}, {2, minutes(5), {}, {}, {}}};
  expected.depths = {{"table", {Length::mm(10), Length::mm(20)}, Length::mm(41)}};
  expected.air = Temperature::celsius(25);
  expected.mix_temperature = Temperature::celsius(24);
  expected.working_time = minutes(18);
  expected.bags_left = 2.5;
  CHECK(log == expected);
}

TEST_CASE("times of day count from the first contact and past midnight", "[job]") {
  const PourLog log = log_of(R"({"first_contact": "23:50", "now": "0:12:30", "batches": [
    {"contact": "23:50", "placed": "23:59"}, {"contact": "0:05"}]})");
  CHECK(log.first_contact == std::chrono::minutes(23 * 60 + 50));
  CHECK(log.batches[0].contact == Duration{});
  CHECK(log.batches[0].placed == minutes(9));
  CHECK(log.batches[1].contact == minutes(15));
  CHECK(log.now == minutes(22.5));
}

TEST_CASE("the start of the job's date is the first contact unless the log says so", "[job]") {
  Job job = bakery_table();
  job.date->time = std::chrono::minutes(9 * 60);
  const auto contact = [&](const std::string& start) {
    const LogResult result = read_log("{" + start + R"("batches": [{"contact": "9:30"}]})", job);
    REQUIRE(result.log);
    return in_minutes(result.log->batches[0].contact);
  };
  CHECK(contact("") == 30);
  CHECK(contact(R"("first_contact": "9:10", )") == 20);
}

TEST_CASE("now is when the last thing happened unless the log says so", "[job]") {
  CHECK(log_of(R"({"batches": [{"contact": "0 min", "placed": "9 min"},
                               {"contact": "5 min"}]})")
            .now == minutes(9));
}
