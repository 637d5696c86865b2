// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "render/text_table.h"
#include "strikeoff/odds.h"
#include "strikeoff/render.h"

using namespace strikeoff;

namespace {

/// Made up: a renderer need not know whether it can be.
Odds some_odds() {
  Odds odds;
  odds.name = "bench";
  odds.runs = 20000;
  odds.seed = 18446744073709551615U;
  odds.risk = 0.05;
  odds.batches = 4;
  odds.bags = 4;
  odds.spare_bags = 1;
  odds.bags_needed = 5;
  odds.cold_joint = Chance{640, 20000, 0.032, 0.0297, 0.0345};
  odds.stiff_batch = Chance{0, 20000, 0, 0, 0.00019};
  odds.short_of_mix = Chance{3000, 20000, 0.15, 0.145, 0.155};
  odds.short_with_spare = Chance{20, 20000, 0.001, 0.0006, 0.0015};
  odds.end = Quantiles{minutes(20), minutes(24), minutes(29.5)};
  odds.worst_wait = Quantiles{minutes(11), minutes(13), minutes(17)};
  odds.margin = Quantiles{minutes(-1), minutes(8), minutes(14)};
  odds.joints = {{2, 3, {12000, 20000, 0.6, 0.59, 0.61}}, {1, 2, {8000, 20000, 0.4, 0.39, 0.41}}};
  odds.drivers = {{"pace of the crew that day", 0.5}, {"stops of the drill", 0.2}};
  odds.unexplained = 0.3;
  odds.remedy = SaferMix{minutes(18), 1.5, "retarder", true, 1, 3.0};
  odds.unknown = {"The bag gives no \"final_set\"."};
  odds.advice = {"Keep the spare bags by the mixer."};
  odds.assumptions = {{"yield of a bag", "2 %", "standard deviation (assumption)"}};
  return odds;
}

bool has_line(const std::string& text, const std::string& line) {
  return ("\n" + text).find("\n" + line + "\n") != std::string::npos;
}

}  // namespace

TEST_CASE("the text of the odds gives each chance in 100 days with its interval") {
  const std::string text = render_text(some_odds());
  CHECK(has_line(text, "ODDS: bench"));
  CHECK(has_line(text, "  About 3.2 in 100 such days end with a cold joint (95 %: 3 to 3.5)."));
  CHECK(has_line(text,
                 "  a joint goes cold: its edge waits longer than its mix stays workable          "
                 "3.2      3 to 3.5"));
  CHECK(text.find("the 4 bags do not fill the forms") != std::string::npos);
  CHECK(has_line(text,
                 "  Most often the worst joint: batch 2 to 3 (60 in 100), batch 1 to 2 (40 in "
                 "100)."));
  CHECK(has_line(text,
                 "  What decides it: pace of the crew that day 50 %, stops of the drill 20 %; "
                 "single batches and the"));
  CHECK(has_line(text, "  - Keep the spare bags by the mixer."));
  CHECK(has_line(text, "  - The bag gives no \"final_set\"."));
}

TEST_CASE("when no joint went cold the text says how many days that was") {
  Odds odds = some_odds();
  odds.cold_joint = Chance{0, 20000, 0, 0, 0.00019};
  CHECK(has_line(render_text(odds),
                 "  None of 20 000 such days ended with a cold joint (95 %: at "
                 "most 0.02 in 100)."));
  odds.cold_joint.reset();
  CHECK(render_text(odds).find("such days") == std::string::npos);
}

TEST_CASE("no line of the odds is wider than the page") {
  Odds odds = some_odds();
  odds.name = std::string(300, 'n');
  odds.advice.push_back(std::string(50, 'a') + " " + std::string(300, 'b'));
  std::istringstream lines(render_text(odds));
  for (std::string line; std::getline(lines, line);) {
    CHECK(text::columns(line) <= TextPage{}.width);
  }
}

TEST_CASE("the JSON of the odds gives every figure in SI with its unit in the key") {
  const nlohmann::json file = nlohmann::json::parse(render_json(some_odds()));
  CHECK(file["format"] == "strikeoff-odds/1");
  CHECK(file["runs"] == 20000);
  CHECK(file["seed"] == 18446744073709551615U);
  CHECK(file["chances"]["cold_joint"] ==
        nlohmann::json({{"times", 640}, {"chance", 0.032}, {"low", 0.0297}, {"high", 0.0345}}));
  CHECK(file["chances"]["short_with_spare"]["times"] == 20);
  CHECK(file["end_min"] == nlohmann::json({{"p5", 20.0}, {"p50", 24.0}, {"p95", 29.5}}));
  CHECK(file["margin_min"]["p5"] == -1.0);
  CHECK(file["worst_joints"][0]["batches"] == nlohmann::json({2, 3}));
  CHECK(file["drivers"][1] == nlohmann::json({{"input", "stops of the drill"}, {"share", 0.2}}));
  CHECK(file["remedy"]["doses_per_bag"] == 1.5);
  CHECK(file["remedy"]["working_time_min"] == 18.0);
  CHECK(file["bags"]["needed"] == 5);
}

TEST_CASE("what is not known has no key in the JSON of the odds") {
  Odds odds = some_odds();
  odds.cold_joint.reset();
  odds.end.reset();
  odds.remedy->doses.reset();
  const nlohmann::json file = nlohmann::json::parse(render_json(odds));
  CHECK_FALSE(file["chances"].contains("cold_joint"));
  CHECK_FALSE(file["chances"].contains("overrun"));
  CHECK_FALSE(file.contains("end_min"));
  CHECK_FALSE(file.contains("pour_within_min"));
  CHECK_FALSE(file["remedy"].contains("doses_per_bag"));
}
