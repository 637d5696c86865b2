// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <chrono>
#include <sstream>

#include "render/icalendar.h"
#include "strikeoff/render.h"
#include "support/render_sample.h"

using namespace strikeoff;
using Catch::Matchers::Contains;

namespace {

/// A plan whose later work is this one task.
Plan later_plan(const char* task, Duration start, Duration end) {
  Plan plan;
  plan.name = "bench";
  plan.date = StartDate{std::chrono::year{2026} / std::chrono::May / 16, std::chrono::hours(9)};
  Task one;
  one.phase = "later";
  one.task = task;
  one.start = start;
  one.end = end;
  one.start_local = "2026-05-16T10:29:14";
  one.end_local = "2026-05-16T10:40:00";
  plan.schedule = {one};
  return plan;
}

}  // namespace

TEST_CASE("texts of a calendar escape what RFC 5545 reserves", "[render]") {
  CHECK(icalendar::escaped("a\\b; c, d\ne\\n") == "a\\\\b\\; c\\, d\\ne\\\\n");
  CHECK(icalendar::escaped("a\r\x1b\tb") == "a   b");
  CHECK(icalendar::escaped("\xE2\x80\xAEx") == " x");  // U+202E
}

TEST_CASE("a line of 75 octets is not folded and one of 76 is", "[render]") {
  const std::string whole(75, 'x');
  CHECK(icalendar::line(whole) == whole + "\r\n");
  CHECK(icalendar::line(whole + "y") == whole + "\r\n y\r\n");
  // The blank counts: 74 in the second line.
  CHECK(icalendar::line(whole + std::string(75, 'y')) ==
        whole + "\r\n " + std::string(74, 'y') + "\r\n y\r\n");
}

TEST_CASE("a fold never splits a character", "[render]") {
  const std::string text = std::string(74, 'x') + "\xE4\xB8\xAD\xF0\x9F\x98\x80";
  CHECK(icalendar::line(text) == std::string(74, 'x') + "\r\n \xE4\xB8\xAD\xF0\x9F\x98\x80\r\n");
  std::string many;
  for (int i = 0; i < 100; ++i) many += "\xF0\x9F\x98\x80";
  std::istringstream lines(icalendar::line(many));
  for (std::string line; std::getline(lines, line);) CHECK(line.size() <= 76);  // with its CR
}

TEST_CASE("a slug is lower-case words and the names of jobs differ in it", "[render]") {
  CHECK(icalendar::slug("Seal, coat 1 of 2") == "seal-coat-of");
  CHECK(icalendar::slug("12 \xE4\xB8\xAD") == "x");
  CHECK(icalendar::slug(std::string(200, 'A')) == std::string(40, 'a'));
  CHECK(icalendar::name_slug("bench 1") != icalendar::name_slug("bench 2"));
  // The published check value of 32-bit FNV-1a for "a" (from memory).
  CHECK(icalendar::name_slug("a") == "a-e40c292c");
}

TEST_CASE("a plan without a date has no calendar", "[render]") {
  Plan plan = test::printed_bench_plan();
  plan.date.reset();
  CHECK_FALSE(render_ics(plan).has_value());
}

TEST_CASE("a step of the same day stands at its time", "[render]") {
  const std::string text = *render_ics(later_plan("Strip", minutes(89.23), minutes(100)));
  CHECK_THAT(text, Contains("DTSTART:20260516T102914\r\nDTEND:20260516T104000\r\n"));
  CHECK_THAT(text, Contains("TRIGGER:PT0S\r\n"));
  CHECK_THAT(text, Contains("DTSTAMP:20260516T090000Z\r\n"));
}

TEST_CASE("from a day on a step is a day and rings at the next full hour", "[render]") {
  // 9:00 + 24 h 29 min = 9:29 on the 17th: 10:00.
  const std::string text = *render_ics(later_plan("Seal", minutes(1469), minutes(1476)));
  CHECK_THAT(text, Contains("DTSTART;VALUE=DATE:20260517\r\nDTEND;VALUE=DATE:20260518\r\n"));
  CHECK_THAT(text, Contains("TRIGGER:PT10H\r\n"));
  // 9:00 + 38 h 30 min = 23:30 on the 17th: midnight of the 18th, which rings in the morning.
  const std::string late = *render_ics(later_plan("Seal", hours(38.5), hours(38.5)));
  CHECK_THAT(late, Contains("DTSTART;VALUE=DATE:20260518\r\n"));
  CHECK_THAT(late, Contains("TRIGGER:PT8H\r\n"));
}

TEST_CASE("without a start time a step is on the first day that it may begin on", "[render]") {
  const auto day = [](Duration start) {
    Plan plan = later_plan("Strip", start, start);
    plan.date->time.reset();
    plan.schedule.front().start_local.reset();
    plan.schedule.front().end_local.reset();
    return *render_ics(plan);
  };
  CHECK_THAT(day(hours(11.9)), Contains("DATE:20260516\r\n") && !Contains("VALARM"));
  CHECK_THAT(day(hours(12.1)), Contains("DATE:20260517\r\n") && Contains("TRIGGER:PT8H"));
  CHECK_THAT(day(hours(24)), Contains("DTSTART;VALUE=DATE:20260517\r\n"));
  CHECK_THAT(day(hours(24.1)), Contains("DTSTART;VALUE=DATE:20260518\r\n"));
}

TEST_CASE("a step whose label is silent is told without a date", "[render]") {
  Plan plan = later_plan("Strip", minutes(89), minutes(89));
  Task seal;
  seal.phase = "later";
  seal.task = "Seal";
  plan.schedule.push_back(seal);
  const std::string text = *render_ics(plan);
  CHECK_THAT(text, Contains("- Seal") && !Contains("SUMMARY:Seal"));
}
