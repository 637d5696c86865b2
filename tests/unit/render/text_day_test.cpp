// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "render/text_sections.h"

using namespace strikeoff;
using Catch::Matchers::Contains;

namespace {

/// A day of one task from `start` to `end`.
std::string day_of(std::optional<StartDate> date, std::optional<Duration> start,
                   std::optional<Duration> end) {
  Plan plan;
  plan.date = date;
  Task task;
  task.phase = "later";
  task.task = "Seal";
  task.who = "person 1";
  task.start = start;
  task.end = end;
  plan.schedule = {task};
  return text::the_day(plan).str();
}

std::string from(std::optional<StartDate> date, Duration start) {
  const std::string text = day_of(date, start, start);
  const auto at = text.find("  Seal");
  REQUIRE(at != std::string::npos);
  const auto line = text.rfind('\n', at) + 1;
  const auto first = text.find_first_not_of(' ', line);
  return text.substr(first, text.find_last_not_of(' ', at) + 1 - first);
}

StartDate at_ten_past_twelve() {
  return {std::chrono::year{2026} / 5 / 9, std::chrono::minutes{12 * 60 + 10}};
}

}  // namespace

TEST_CASE("the pour day has the clock without date or seconds") {
  CHECK(from(at_ten_past_twelve(), Duration{}) == "12:10");
  CHECK(from(at_ten_past_twelve(), minutes(4.6)) == "12:15");
  CHECK(from(at_ten_past_twelve(), minutes(-20)) == "11:50");
  CHECK(from(at_ten_past_twelve(), hours(11)) == "23:10");
}

TEST_CASE("another day has its date") {
  CHECK(from(at_ten_past_twelve(), hours(12)) == "2026-05-10 00:10");
  CHECK(from(at_ten_past_twelve(), days(-1)) == "2026-05-08 12:10");
}

TEST_CASE("a wait of a day or more is rounded up to the full hour") {
  CHECK(from(at_ten_past_twelve(), days(1) - minutes(1)) == "2026-05-10 12:09");
  CHECK(from(at_ten_past_twelve(), days(1)) == "2026-05-10 13:00");
  CHECK(from(at_ten_past_twelve(), days(8) + minutes(50)) == "2026-05-17 13:00");
  CHECK(from(at_ten_past_twelve(), days(8) + minutes(50.1)) == "2026-05-17 14:00");
  CHECK(from(at_ten_past_twelve(), days(1) + minutes(710)) == "2026-05-11 00:00");
  CHECK_THAT(day_of(at_ten_past_twelve(), days(1), days(1)), Contains("Not before"));
  CHECK_THAT(day_of(at_ten_past_twelve(), hours(1), hours(2)), !Contains("Not before"));
}

TEST_CASE("a short step that ends in the hour it is rounded up to has no end") {
  CHECK_THAT(day_of(at_ten_past_twelve(), days(1), days(1) + minutes(10)),
             Contains("2026-05-10 13:00      Seal"));
  CHECK_THAT(day_of(at_ten_past_twelve(), days(1), days(1) + minutes(70)),
             Contains("2026-05-10 13:00  2026-05-10 14:00  Seal"));
}

TEST_CASE("a date without a start time gives dates a day or more away") {
  const StartDate date{std::chrono::year{2026} / 5 / 30, std::nullopt};
  CHECK(from(date, hours(23)) == "+23:00");
  CHECK(from(date, days(1)) == "2026-05-31");
  CHECK(from(date, days(2.1)) == "2026-06-02");
  CHECK(from(date, days(-1)) == "2026-05-29");
}

TEST_CASE("without a date a day or more away is days and full hours") {
  CHECK(from(std::nullopt, hours(23)) == "+23:00");
  CHECK(from(std::nullopt, days(28)) == "+28 d");
  CHECK(from(std::nullopt, days(2.1)) == "+2 d 3 h");
}

TEST_CASE("a time nobody knows is a blank to write in") {
  const std::string text = day_of(at_ten_past_twelve(), std::nullopt, std::nullopt);
  CHECK_THAT(text, Contains("____      Seal"));
  CHECK_THAT(text, Contains("the bag does not say"));
  CHECK_THAT(day_of(at_ten_past_twelve(), hours(1), hours(2)), !Contains("does not say"));
}
