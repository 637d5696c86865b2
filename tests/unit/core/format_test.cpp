// SPDX-License-Identifier: MIT
#include "core/format.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

// Rounding to the nearest fraction, ties to even: NIST SP 811 section B.7 and ASTM E29, from
// memory. The nine cases are the usual traps: exact, carry, reduce, tie either way.
TEST_CASE("inches round to the nearest fraction with ties to even", "[format]") {
  struct Row {
    double inches;
    int denominator;
    const char* text;
  };
  const auto row = GENERATE(Row{7.3, 16, "7 5/16"}, Row{0.71875, 32, "23/32"}, Row{15.97, 16, "16"},
                            Row{4.5, 16, "4 1/2"}, Row{11.99, 16, "12"}, Row{0.02, 16, "0"},
                            Row{2.65625, 32, "2 21/32"}, Row{7.28125, 16, "7 1/4"},
                            Row{7.34375, 16, "7 3/8"}, Row{-0.25, 16, "-1/4"}, Row{-0.02, 16, "0"});
  CAPTURE(row.inches);
  CHECK(inch_fraction(Length::inches(row.inches), row.denominator) == row.text);
}

TEST_CASE("millimetres show as the nearest fraction of an inch", "[format]") {
  CHECK(inch_fraction(Length::mm(19), 16) == "3/4");
  CHECK(inch_fraction(Length::mm(36.5), 32) == "1 7/16");
}

TEST_CASE("lengths show in the units of the plan", "[format]") {
  CHECK(show(Length::inches(95.5), Units::us) == "95 1/2 in");
  CHECK(show(Length::mm(2390), Units::metric) == "2390 mm");
  CHECK(show(Length::mm(12.5), Units::metric) == "12.5 mm");
  CHECK(show(Length::inches(1.5), Units::metric) == "38.1 mm");
}

TEST_CASE("water shows as quarts and fluid ounces a measure can hold", "[format]") {
  CHECK(show_water(quarts(4), Units::us) == "4 qt");
  CHECK(show_water(quarts(3.25), Units::us) == "3 1/4 qt");
  CHECK(show_water(quarts(3.5), Units::us) == "3 1/2 qt");
  CHECK(show_water(fluid_ounces(101.5), Units::us) == "3 qt 5.5 fl oz");
  CHECK(show_water(fluid_ounces(12.5), Units::us) == "12.5 fl oz");
  CHECK(show_water(fluid_ounces(31.9), Units::us) == "1 qt");
  CHECK(show_water(litres(3.785), Units::metric) == "3.79 L");
}

TEST_CASE("durations read as people say them", "[format]") {
  CHECK(show(seconds(45)) == "45 s");
  CHECK(show(minutes(7.5)) == "7.5 min");
  CHECK(show(minutes(90)) == "90 min");
  CHECK(show(hours(1)) == "1 h");
  CHECK(show(hours(2.5)) == "2 h 30 min");
  CHECK(show(hours(24)) == "24 h");
  CHECK(show(days(28)) == "28 d");
  CHECK(show(seconds(-30)) == "-30 s");
  CHECK(show(Duration{}) == "0 min");
}

TEST_CASE("a clock counts from the first water contact", "[format]") {
  CHECK(show_clock(minutes(65)) == "+1:05");
  CHECK(show_clock(minutes(-45)) == "-0:45");
  CHECK(show_clock(seconds(-10)) == "-0:00:10");
  CHECK(show_clock(seconds(150)) == "+0:02:30");
  CHECK(show_clock(seconds(3661.4)) == "+1:01:01");
  CHECK(show_clock(Duration::from_si(-1e-9)) == "+0:00");
  CHECK(show_deadline(minutes(12.9)) == "+0:12");
  CHECK(show_deadline(minutes(13 - 1e-12)) == "+0:13");  // rounding
}

TEST_CASE("small and negative zero values stay readable", "[format]") {
  CHECK(show_number(-0.04, 1) == "0");
  CHECK(show_number(2.50, 2) == "2.5");
  CHECK(show_money(Money::from_si(12.5), "USD") == "12.50 USD");
  CHECK(show_percent(0.1) == "10 %");
  CHECK(show(kilograms(0.030), Units::metric) == "30 g");
}
