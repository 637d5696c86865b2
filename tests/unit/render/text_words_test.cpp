// SPDX-License-Identifier: MIT
#include "render/text_words.h"
#include "core/format.h"

#include <catch2/catch.hpp>

using namespace strikeoff;
using namespace strikeoff::text;

namespace {

const StartDate start{std::chrono::year{2026} / 5 / 9, std::chrono::minutes{23 * 60 + 50}};

}  // namespace

TEST_CASE("a size names its unit once") {
  CHECK(size(Length::inches(94), Length::inches(28.5), Units::us) == "94 x 28 1/2 in");
  CHECK(size(Length::mm(2388), Length::mm(711), Units::metric) == "2388 x 711 mm");
}

TEST_CASE("an outline that is no rectangle is sized over all") {
  const Length a = Length::mm(100);
  const Polygon l_shape = {{{}, {}}, {2 * a, {}}, {2 * a, a}, {a, a}, {a, 2 * a}, {{}, 2 * a}};
  CHECK(size(l_shape, Units::metric) == "200 x 200 mm over all");
  CHECK(size(corners_of({{}, a, 2 * a}), Units::metric) == "100 x 200 mm");
}

TEST_CASE("the stopwatch shows seconds only when asked and days from two on") {
  CHECK(stopwatch(minutes(7.5), true) == "+0:07:30");
  CHECK(stopwatch(minutes(65), false) == "+1:05");
  CHECK(stopwatch(minutes(-45), false) == "-0:45");
  CHECK(stopwatch(days(28), false) == "+28 d");
  CHECK(has_seconds(minutes(4.5)));
  CHECK_FALSE(has_seconds(minutes(4)));
}

TEST_CASE("the time of day runs past midnight in both directions") {
  CHECK(time_of_day(start, minutes(15), false) == "00:05");
  CHECK(time_of_day(start, minutes(15.5), true) == "00:05:30");
  CHECK(time_of_day(StartDate{start.day, std::chrono::minutes{5}}, minutes(-10), false) == "23:55");
  CHECK(time_of_day(StartDate{start.day, std::nullopt}, minutes(1), false).empty());
  CHECK(time_of_day(std::nullopt, minutes(1), false).empty());
}

TEST_CASE("dates are ISO 8601 with a space for people") {
  CHECK(iso(start) == "2026-05-09T23:50");
  CHECK(iso({start.day, std::nullopt}) == "2026-05-09");
  CHECK(readable("2026-05-09T23:50:00") == "2026-05-09 23:50");
  CHECK(readable("2026-05-09T23:50:30") == "2026-05-09 23:50:30");
}

TEST_CASE("doses name their measured amount where it is known") {
  CHECK(doses(1.5, kilograms(0.045), Units::metric) == "1.5 doses (45 g)");
  CHECK(doses(0.5, std::monostate{}, Units::us) == "0.5 dose");
  CHECK(doses(1, litres(0.06), Units::metric) == "1 dose (0.06 L)");
}

TEST_CASE("the edge verdict says by how much or that nobody can say") {
  PourPlan pour;
  pour.edge_wait_max = minutes(15.5);
  CHECK(edge_verdict(pour).find("states no working time") != std::string::npos);
  pour.usable = minutes(12);
  pour.margin = minutes(-3.5);
  CHECK(edge_verdict(pour) == "15.5 min at worst, 12 min usable: 3.5 min TOO LONG");
  pour.margin = minutes(2);
  CHECK(edge_verdict(pour) ==
        "15.5 min at worst, 12 min usable: 2 min to spare, which is NOT ENOUGH");
  pour.feasible = true;
  CHECK(edge_verdict(pour) == "15.5 min at worst, 12 min usable: 2 min to spare");
}

TEST_CASE("a finding gives times and counts and leaves sizes to the title") {
  Check check;
  CHECK(found(check).empty());
  check.value = 15.5;
  check.unit = "min";
  CHECK(found(check) == "15.5 min");
  check.limit = 12;
  CHECK(found(check) == "15.5 min, limit 12");
  check.unit = "mm";
  CHECK(found(check).empty());
}
