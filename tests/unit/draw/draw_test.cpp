// SPDX-License-Identifier: MIT
#include "strikeoff/draw.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "strikeoff/planner.h"
#include "support/render_sample.h"
#include "support/sample_plan.h"

using namespace strikeoff;

namespace {

std::vector<std::string> names_of(const std::vector<Drawing>& drawings) {
  std::vector<std::string> names;
  for (const Drawing& drawing : drawings) names.push_back(drawing.name);
  return names;
}

bool names_begin(const std::vector<Drawing>& drawings, const std::string& with) {
  return std::any_of(drawings.begin(), drawings.end(),
                     [&](const Drawing& drawing) { return drawing.name.starts_with(with); });
}

Plan bench() {
  return make_plan(test::potting_bench_job());
}

}  // namespace

TEST_CASE("a slab without an outline is not drawn", "[draw]") {
  Plan plan = test::printed_bench_plan();  // filled by hand: it has no sides
  CHECK_FALSE(names_begin(drawings_of(plan), "slab-1-plan"));
  CHECK(names_begin(drawings_of(bench()), "slab-1-plan"));
}

TEST_CASE("a plan of nothing has no drawings", "[draw]") {
  CHECK(drawings_of(Plan{}).empty());
}

TEST_CASE("the names of drawings are unique in a plan", "[draw]") {
  const std::vector<std::string> names = names_of(drawings_of(bench()));
  CHECK(std::set<std::string>(names.begin(), names.end()).size() == names.size());
}

TEST_CASE("the same plan gives the same drawings", "[draw]") {
  const std::vector<Drawing> once = drawings_of(bench());
  const std::vector<Drawing> again = drawings_of(bench());
  REQUIRE(once.size() == again.size());
  for (std::size_t i = 0; i < once.size(); ++i) CHECK(once[i].svg == again[i].svg);
}

TEST_CASE("names with control characters do not break a drawing", "[draw]") {
  Plan plan = bench();
  plan.name = "two\nlines \x1B[31m";
  for (SlabPlan& slab : plan.slabs) slab.name = "<b>\t\x07";
  for (const Drawing& drawing : drawings_of(plan)) {
    CHECK(drawing.svg.find('\x1B') == std::string::npos);
    CHECK(drawing.svg.find('\x07') == std::string::npos);
    CHECK(drawing.svg.find("<b>") == std::string::npos);
  }
}

TEST_CASE("drawings are bounded and say what is left out", "[draw]") {
  Plan plan = bench();
  REQUIRE_FALSE(plan.cut_list.boards.empty());
  const Board board = plan.cut_list.boards.front();
  plan.cut_list.boards.assign(1000, board);
  const std::vector<Drawing> drawings = drawings_of(plan);
  CHECK(drawings.size() <= 400);
  REQUIRE_FALSE(drawings.empty());
  CHECK(drawings.back().name == "left-out");
  CHECK(drawings.back().svg.find("Only the first 60 boards and sheets") != std::string::npos);
}

TEST_CASE("only openings with round corners get a template", "[draw]") {
  Plan plan = bench();
  const Rectangle box{{Length::mm(300), Length::mm(200)}, Length::mm(200), Length::mm(150)};
  plan.slabs.front().openings = {{outline_of(corners_of(box)), box, "square"}};
  CHECK_FALSE(names_begin(drawings_of(plan), "slab-1-opening"));
  plan.slabs.front().openings = {{outline_of(box, Length::mm(20)), box, "round"}};
  CHECK(names_begin(drawings_of(plan), "slab-1-opening"));
}
