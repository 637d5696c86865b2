// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "strikeoff/catalogue.h"
#include "strikeoff/planner.h"
#include "support/read.h"
#include "support/source_dir.h"

using namespace strikeoff;

// Every check the program has, by jobs on both sides of its limit: tests/cases/both-sides.json has
// a plain job and, row by row, what is changed in it (JSON merge patch, RFC 7396) so that the check
// holds or is absent, and so that it warns.

namespace {

using nlohmann::json;

std::string file_text(const std::filesystem::path& path) {
  std::ifstream file(path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

const json& audit() {
  static const json all =
      json::parse(file_text(test::source_dir() / "tests/cases/both-sides.json"));
  return all;
}

/// The plain job with this change; `slab` stands for the job's only slab.
Plan plan_of(const json& change, const char* units = "metric") {
  json job = audit().at("job");
  job.merge_patch(change);
  job["units"] = units;
  job["slabs"] = json::array({job.at("slab")});
  job.erase("slab");
  return make_plan(test::job_of(job.dump()), shipped_catalogue());
}

std::string words(Level level) {
  return level == Level::ok ? "ok" : level == Level::caution ? "caution" : "stop";
}

/// The worst of the checks of this code.
std::string level_of(const Plan& plan, const std::string& code) {
  std::optional<Level> worst;
  for (const Check& check : plan.checks) {
    if (check.code == code && (!worst || check.level > *worst)) worst = check.level;
  }
  return worst ? words(*worst) : "absent";
}

/// Text that a first-timer cannot read, or that a template left behind.
void read_as_a_first_timer(const Check& check, bool us) {
  static const std::regex jargon(
      R"(\b(takt|Arrhenius|activation energy|lead time|bottleneck|cantilever|modulus|hydrostatic|ceil|floor\(|JSON|pointer|null|nan|inf|std)\b|[{}])");
  static const std::regex metric(R"([0-9] ?(mm|kPa|MPa|kg|N|m2|km/h)\b)");
  INFO(check.code << ": " << check.title << " / " << check.advice);
  CHECK_FALSE(check.title.empty());
  CHECK(check.title.size() < 400);
  // A cold joint's advice names the easiest mend and both ways to shorten the wait.
  CHECK(check.advice.size() < (check.code == "cold-joint" ? 450 : 400));
  CHECK_FALSE(std::regex_search(check.title + " " + check.advice, jargon));
  if (us) {
    CHECK_FALSE(std::regex_search(check.title + " " + check.advice, metric));
  }
  if (check.level != Level::ok) CHECK_FALSE(check.advice.empty());
  CHECK_FALSE(check.basis.empty());
}

/// Codes as the sources write them.
std::set<std::string> codes_in_sources() {
  static const std::regex code(
      R"re((?:code = |measured\(\s*|timed\(\s*|standing\(\s*|caution\(\s*)"([a-z][a-z-]*)")re");
  std::set<std::string> codes;
  for (const auto& entry : std::filesystem::directory_iterator(test::source_dir() / "src/checks")) {
    if (entry.path().extension() != ".cpp") continue;
    const std::string text = file_text(entry.path());
    for (std::sregex_iterator at(text.begin(), text.end(), code), end; at != end; ++at) {
      codes.insert(at->str(1));
    }
  }
  return codes;
}

std::set<std::string> codes_in_audit() {
  std::set<std::string> codes;
  for (const json& row : audit().at("rows")) codes.insert(row.at("code"));
  for (const json& code : audit().at("always")) codes.insert(code);
  for (const auto& [code, reason] : audit().at("one_side_only").items()) codes.insert(code);
  return codes;
}

}  // namespace

TEST_CASE("every check holds on one side of its limit and warns on the other", "[audit]") {
  for (const json& row : audit().at("rows")) {
    const std::string code = row.at("code");
    INFO(row.dump());
    CHECK(level_of(plan_of(row.at("good")), code) == row.at("good_level"));
    if (audit().at("one_side_only").contains(code)) continue;
    CHECK(level_of(plan_of(row.at("bad")), code) == row.at("bad_level"));
  }
}

TEST_CASE("every check can be read by a first-timer in either country's units", "[audit]") {
  for (const json& row : audit().at("rows")) {
    for (const char* side : {"good", "bad"}) {
      if (!row.contains(side)) continue;
      for (const char* units : {"metric", "us"}) {
        INFO(row.dump());
        for (const Check& check : plan_of(row.at(side), units).checks) {
          if (check.code == row.at("code")) {
            read_as_a_first_timer(check, std::string(units) == "us");
          }
        }
      }
    }
  }
}

TEST_CASE("cautions about dust and lye and leads and fire are always there", "[audit]") {
  for (const json& row : audit().at("rows")) {
    const Plan plan = plan_of(row.contains("bad") ? row.at("bad") : row.at("good"));
    for (const json& code : audit().at("always")) {
      INFO(code << " in " << row.dump());
      CHECK(level_of(plan, code) == "caution");
    }
  }
  for (const Check& check : plan_of(json::object()).checks) {
    if (check.level != Level::ok) read_as_a_first_timer(check, false);
  }
}

TEST_CASE("no check is without jobs on both sides of its limit", "[audit]") {
  const std::set<std::string> sources = codes_in_sources(), audited = codes_in_audit();
  CHECK(sources.size() > 30);
  for (const std::string& code : sources) {
    INFO(code << " is in src/checks and not in tests/cases/both-sides.json");
    CHECK(audited.count(code) == 1);
  }
  for (const std::string& code : audited) {
    INFO(code << " is in tests/cases/both-sides.json and not in src/checks");
    CHECK(sources.count(code) == 1);
  }
  // Met in a plan, or named with the reason why it never is.
  std::set<std::string> met;
  for (const auto& [code, reason] : audit().at("one_side_only").items()) met.insert(code);
  for (const json& row : audit().at("rows")) {
    for (const char* side : {"good", "bad"}) {
      if (!row.contains(side)) continue;
      for (const Check& check : plan_of(row.at(side)).checks) met.insert(check.code);
    }
  }
  CHECK(met == audited);
}
