// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <algorithm>

#include "support/read.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// A metric job with this site and, where given, this date.
Job at_site(const std::string& site, const std::string& date = "") {
  return job_of(R"({"slabs": [{"base": {"rectangle": {"length": "2 m", "depth": "60 cm"}},
    "thickness": "40 mm"}], "mix": "fine-20kg", "site": {)" +
                site + "}" + (date.empty() ? "" : ", \"date\": \"" + date + "\"") + "}");
}

Assumption assumed(const Job& job, const std::string& path) {
  const auto found = std::find_if(job.assumptions.begin(), job.assumptions.end(),
                                  [&](const Assumption& a) { return a.path == path; });
  return found == job.assumptions.end() ? Assumption{} : *found;
}

const std::string morning = R"("hours": [
    {"time": "08:00", "air": "10 C", "humidity": "80 %", "wind": "0 km/h"},
    {"time": "12:00", "air": "30 C", "humidity": "40 %", "wind": "8 km/h"},
    {"time": "14:00", "air": "26 C", "humidity": "50 %", "wind": "4 km/h"}])";

}  // namespace

TEST_CASE("the weather that a job gives is read and nothing of it assumed", "[job]") {
  const Job job = at_site(R"("air": "8 C", "humidity": "40 %", "wind": "18 km/h", "sun": "sun",
      "night": "-2 C", "rain": "25 %", "protection": ["tent", "windbreak", "tent"])");
  CHECK(job.site.air == Temperature::celsius(8));
  CHECK(job.site.humidity == 0.4);
  CHECK_FALSE(job.site.humidity_assumed);
  CHECK(job.site.wind.si() == Approx(5));
  CHECK(job.site.sun);
  CHECK(job.site.night == Temperature::celsius(-2));
  CHECK(job.site.rain == 0.25);
  CHECK(job.site.protection == std::vector{Protection::tent, Protection::windbreak});
  for (const char* key : {"air", "humidity", "wind", "sun"}) {
    CHECK(assumed(job, std::string("/site/") + key).path.empty());
  }
}

TEST_CASE("weather that a job does not give is assumed and listed", "[job]") {
  const Job job = at_site("");
  CHECK(job.site.humidity == 0.5);
  CHECK(job.site.humidity_assumed);
  CHECK(assumed(job, "/site/humidity").value == "50 %");
  CHECK(assumed(job, "/site/humidity").reason.find("judged by drier air") != std::string::npos);
  CHECK(job.site.wind == Speed{});
  CHECK(assumed(job, "/site/wind").value == "0 km/h");
  CHECK_FALSE(job.site.sun);
  CHECK(assumed(job, "/site/sun").value == "shade");
  CHECK_FALSE(job.site.night);
  CHECK_FALSE(job.site.rain);
  CHECK(job.site.hours.empty());
  CHECK(job.site.bags_as_air);
  CHECK_FALSE(at_site(R"("bag_temperature": "20 C")").site.bags_as_air);
}

TEST_CASE("what only the hours say is taken at the start", "[job]") {
  const Job job = at_site(morning, "2026-06-01T09:00");
  CHECK(job.site.hours.size() == 3);
  CHECK(job.site.air.in_c() == Approx(15));
  CHECK(job.site.bag_temperature.in_c() == Approx(15));
  CHECK(job.site.humidity == Approx(0.7));
  CHECK(job.site.wind / kilometres_per_hour(1) == Approx(2));
  CHECK_FALSE(job.site.humidity_assumed);
  CHECK(assumed(job, "/site/air").value == "15 C");
  CHECK(assumed(job, "/site/air").reason == "from site.hours at 09:00");
  CHECK(assumed(job, "/site/wind").reason == "from site.hours at 09:00");
  // Outside of the hours their end counts.
  CHECK(at_site(morning, "2026-06-01T20:00").site.air.in_c() == Approx(26));
}

TEST_CASE("without a start the warmest of the hours counts", "[job]") {
  const Job job = at_site(morning);
  CHECK(job.site.air.in_c() == Approx(30));
  CHECK(assumed(job, "/site/air").reason ==
        "from site.hours at 12:00, the warmest, for the job names no start");
}

TEST_CASE("the site's own weather stands beside the hours and fills them up", "[job]") {
  const Job job = at_site(R"("air": "21 C", "humidity": "60 %", "wind": "36 km/h", "hours": [
      {"time": "08:00"}, {"time": "09:00", "air": "25 C", "humidity": "30 %"}])",
                          "2026-06-01T09:00");
  CHECK(job.site.air.in_c() == Approx(21));
  CHECK(job.site.humidity == Approx(0.6));
  CHECK(job.site.hours[0].air.in_c() == Approx(21));
  CHECK(job.site.hours[0].humidity == Approx(0.6));
  CHECK(job.site.hours[1].air.in_c() == Approx(25));
  CHECK(job.site.hours[1].humidity == Approx(0.3));
  CHECK(job.site.hours[1].wind.si() == Approx(10));
}

TEST_CASE("one hour without humidity is enough for it to count as assumed", "[job]") {
  const auto with = [](const char* second) {
    return at_site(std::string(R"("hours": [{"time": "08:00", "air": "9 C", "humidity": "80 %"},
                              {"time": "09:00", "air": "9 C")") +
                   second + "}]");
  };
  CHECK_FALSE(with(R"(, "humidity": "70 %")").site.humidity_assumed);
  CHECK(with("").site.humidity_assumed);
  CHECK(with("").site.hours[1].humidity == 0.5);
}
