// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>

#include "support/published.h"

using namespace strikeoff::test;

namespace {

/// The published tolerance of one value of a case.
double tolerance(const nlohmann::json& row, const std::string& value, double expected) {
  nlohmann::json rule = row.at("tolerance");
  if (rule.contains("per") && rule["per"].contains(value)) rule = rule["per"][value];
  if (rule.contains("abs")) return rule["abs"];
  const double size = std::abs(expected);
  if (rule.contains("rel")) return size * rule["rel"].get<double>();
  return 1e-11 * std::max(1.0, size);  // "exact": to the rounding of doubles
}

void compare(const PublishedCase& one, const std::string& value, const Answer& answer) {
  INFO(value);
  const auto& published = one.row().at("expected").at(value);
  const auto& expected = published.at("value");
  if (expected.is_string()) {
    CHECK(std::get<std::string>(answer.said) == expected.get<std::string>());
    return;
  }
  const double said = in_unit(answer.said, published.at("unit"));
  const double number =
      expected.is_boolean() ? (expected.get<bool>() ? 1 : 0) : expected.get<double>();
  const double allowed = tolerance(one.row(), value, number);
  CHECK(said == Approx(number).epsilon(0).margin(allowed + std::abs(number) * answer.another_form));
}

/// Every published value of the case, but those set aside, is asked for.
void run(const PublishedCase& one, Ask ask) {
  INFO(one.title() << ": " << one.row().at("formula").get<std::string>() << " "
                   << one.row().at("note").get<std::string>());
  const Answers answers = ask(one);
  REQUIRE_FALSE(answers.empty());
  for (const auto& [value, published] : one.row().at("expected").items()) {
    const bool aside = set_aside().count(one.id() + "/" + value) > 0;
    INFO(value << " is either answered or set aside with a reason");
    CHECK(answers.count(value) == (aside ? 0 : 1));
  }
  for (const auto& [value, answer] : answers) compare(one, value, answer);
}

void run_topic(const std::string& topic) {
  for (const PublishedCase& one : published_cases()) {
    if (one.topic() != topic) continue;
    const auto ask = all_asks().find(one.id());
    if (ask == all_asks().end()) continue;
    DYNAMIC_SECTION(one.title()) {
      run(one, ask->second);
    }
  }
}

const std::vector<std::string> topics = {"1 evaporation",
                                         "2 fresh concrete temperature",
                                         "3 maturity and setting",
                                         "4 absolute volume and yield",
                                         "5 form pressure",
                                         "6 plain concrete strength",
                                         "7 slab rules",
                                         "8 curing and weather limits",
                                         "9 units and rounding",
                                         "10 lumber, panels, cut lists",
                                         "11 safety",
                                         "12 density and bag yield",
                                         "13 waste and placing",
                                         "14 psychrometrics",
                                         "15 sealant",
                                         "16 geometry"};

}  // namespace

TEST_CASE("the program agrees with published values of evaporation", "[published]") {
  run_topic("1 evaporation");
}

TEST_CASE("the program agrees with published fresh mix temperatures", "[published]") {
  run_topic("2 fresh concrete temperature");
}

TEST_CASE("the program agrees with published maturity and setting times", "[published]") {
  run_topic("3 maturity and setting");
}

TEST_CASE("the program agrees with published volumes and yields", "[published]") {
  run_topic("4 absolute volume and yield");
}

TEST_CASE("the program agrees with published form pressures", "[published]") {
  run_topic("5 form pressure");
}

TEST_CASE("the program agrees with published strengths of plain concrete", "[published]") {
  run_topic("6 plain concrete strength");
}

TEST_CASE("the program agrees with published slab rules", "[published]") {
  run_topic("7 slab rules");
}

TEST_CASE("the program agrees with published curing and weather limits", "[published]") {
  run_topic("8 curing and weather limits");
}

TEST_CASE("the program agrees with published units and roundings", "[published]") {
  run_topic("9 units and rounding");
}

TEST_CASE("the program agrees with published cut lists", "[published]") {
  run_topic("10 lumber, panels, cut lists");
}

TEST_CASE("the program agrees with published safety values", "[published]") {
  run_topic("11 safety");
}

TEST_CASE("the program agrees with published bag yields", "[published]") {
  run_topic("12 density and bag yield");
}

TEST_CASE("the program agrees with published waste factors", "[published]") {
  run_topic("13 waste and placing");
}

TEST_CASE("the program agrees with published vapour pressures and dew points", "[published]") {
  run_topic("14 psychrometrics");
}

TEST_CASE("the program agrees with published reaches of a cartridge", "[published]") {
  run_topic("15 sealant");
}

TEST_CASE("the program agrees with published areas and volumes", "[published]") {
  run_topic("16 geometry");
}

TEST_CASE("every published value is run or set aside with a reason", "[published]") {
  std::set<std::string> ids;
  int run = 0, read = 0;
  for (const PublishedCase& one : published_cases()) {
    INFO(one.id());
    CHECK(ids.insert(one.id()).second);
    CHECK(std::find(topics.begin(), topics.end(), one.topic()) != topics.end());
    const bool asked = all_asks().count(one.id()) > 0;
    CHECK(asked != (set_aside().count(one.id()) > 0));
    run += asked ? 1 : 0;
    read += asked && one.was_read() ? 1 : 0;
  }
  for (const auto& [id, ask] : all_asks()) {
    INFO(id);
    CHECK(ids.count(id) == 1);
  }
  WARN(ids.size() << " published values: " << run << " run (" << read << " read, " << run - read
                  << " from memory), " << ids.size() - static_cast<std::size_t>(run)
                  << " set aside");
  CHECK(run >= 200);
}

TEST_CASE("nothing is set aside that is not published", "[published]") {
  std::set<std::string> known;
  for (const PublishedCase& one : published_cases()) {
    known.insert(one.id());
    for (const auto& [value, published] : one.row().at("expected").items()) {
      known.insert(one.id() + "/" + value);
    }
  }
  for (const auto& [id, reason] : set_aside()) {
    INFO(id);
    CHECK(known.count(id) == 1);
    CHECK(reason.size() > 10);
  }
}
