// SPDX-License-Identifier: MIT
// What single kinds of drawings show.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <regex>
#include <set>
#include <string>

#include "strikeoff/draw.h"
#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"

using namespace strikeoff;

namespace {

Plan plan_of(const std::string& slab, const std::string& units = "metric") {
  const ReadResult read = read_job(R"({"units": ")" + units + R"(", "slabs": [)" + slab +
                                   R"(], "mix": "rapid-fine-48lb"})");
  REQUIRE(read.job);
  return make_plan(*read.job);
}

std::string svg_of(const Plan& plan, const std::string& name) {
  for (const Drawing& drawing : drawings_of(plan)) {
    if (drawing.name == name) return drawing.svg;
  }
  return "";
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

std::vector<std::string> sections(const Plan& plan) {
  std::vector<std::string> all;
  for (int k = 1; !svg_of(plan, "slab-1-edge-" + std::to_string(k)).empty(); ++k) {
    all.push_back(svg_of(plan, "slab-1-edge-" + std::to_string(k)));
  }
  return all;
}

double scale_of(const std::string& svg) {
  std::smatch found;
  REQUIRE(std::regex_search(svg, found, std::regex("Scale 1:(\\d+)")));
  return std::stod(found[1]);
}

/// How high the concrete of a section stands in the slab, in mm.
double concrete_height(const std::string& svg) {
  std::smatch found;
  REQUIRE(std::regex_search(svg, found,
                            std::regex("data-what=\"concrete\">\n<polygon points=\"([^\"]+)\"")));
  const std::string points = found[1];
  double least = 1e9, most = -1e9;
  const std::regex height(",([-0-9.]+)");
  for (std::sregex_iterator it(points.begin(), points.end(), height), end; it != end; ++it) {
    least = std::min(least, std::stod((*it)[1]));
    most = std::max(most, std::stod((*it)[1]));
  }
  return (most - least) * scale_of(svg);
}

const char* const falling = R"({"base": {"rectangle": {"length": "2000 mm", "depth": "600 mm"}},
  "overhang": "25 mm", "thickness": "45 mm", "fall": {"percent": "2 %", "towards": "front"}})";

const char* const trapezium = R"({"base": {"corners": [["0 mm", "0 mm"], ["2400 mm", "0 mm"],
  ["2000 mm", "700 mm"], ["200 mm", "900 mm"]]}, "overhang": "25 mm", "thickness": "45 mm"})";

}  // namespace

TEST_CASE("each side is cut through as thick as the plan says", "[draw]") {
  const Plan plan = plan_of(falling);
  std::set<long> planned, drawn;
  for (const SidePlan& side : plan.slabs.front().sides) {
    planned.insert(std::lround(side.thickness.in_mm() * 10));
  }
  for (const std::string& svg : sections(plan)) {
    drawn.insert(std::lround(concrete_height(svg) * 10));
    CHECK(has(svg, "mm at its thickest here"));
  }
  CHECK(planned.size() > 1);
  CHECK(drawn == planned);
}

TEST_CASE("a section names the strips of all its sides", "[draw]") {
  const Plan plan = plan_of(
      R"({"base": {"rectangle": {"length": "1500 mm", "depth": "600 mm"}}, "overhang": "25 mm",
          "thickness": "45 mm"})");
  const std::vector<std::string> all = sections(plan);
  REQUIRE(all.size() == 1);
  const std::string words = all.front().substr(all.front().find(">edge strip ") + 1, 60);
  for (const SidePlan& side : plan.slabs.front().sides) CHECK(has(words, side.edge_marks));
}

TEST_CASE("sides whose strips stand lower are cut through apart", "[draw]") {
  Plan plan = plan_of(
      R"({"base": {"rectangle": {"length": "1500 mm", "depth": "600 mm"}}, "overhang": "25 mm",
          "thickness": "45 mm"})");
  plan.slabs.front().sides[1].edge_drop += Length::mm(5);
  CHECK(sections(plan).size() == 2);
  plan.slabs.front().sides[2].soffit_strip += Length::mm(5);
  CHECK(sections(plan).size() == 3);
}

TEST_CASE("a slab of four corners that are not square has all sides and a diagonal", "[draw]") {
  const Plan plan = plan_of(trapezium);
  const std::string svg = svg_of(plan, "slab-1-plan");
  const Polygon& sharp = plan.slabs.front().sharp;
  for (std::size_t k = 0; k < 4; ++k) {
    const double side = distance(sharp[k], Polygon{sharp[(k + 1) % 4]}).in_mm();
    CHECK(has(svg, ">" + std::to_string(std::lround(side * 10) / 10)));
  }
  CHECK(count_of(svg, "data-what=\"diagonal\">\n<text") + count_of(svg, "Diagonal from where") ==
        2);
}

TEST_CASE("a panel cut to a slanting edge is drawn as it is cut", "[draw]") {
  Plan plan = plan_of(
      R"({"base": {"rectangle": {"length": "1500 mm", "depth": "600 mm"}}, "thickness": "45 mm"})");
  const Rectangle box{{}, Length::mm(400), Length::mm(300)};
  plan.slabs.front().panels = {
      {"P1", box, {}, {{}, {Length::mm(400), Length{}}, {Length{}, Length::mm(300)}}}};
  const std::string svg = svg_of(plan, "slab-1-plan");
  std::smatch found;
  REQUIRE(std::regex_search(svg, found, std::regex("\"seam\">\n<polygon points=\"([^\"]+)\"")));
  CHECK(count_of(found[1], ",") == 3);
}

TEST_CASE("a board shows what is kept of it apart from its waste", "[draw]") {
  Plan plan = plan_of(falling);
  plan.cut_list.kerf = Length::mm(3), plan.cut_list.end_trim = Length{};
  Board board{"plank", false, Length::mm(2000), Length::mm(300), {}, {}};
  // 2000 - 900 - 3 are left of the strip, 300 - 100 - 3 of the board.
  board.strips = {{Length::mm(100), {{"E1", Length::mm(900)}}, Length::mm(1097)}};
  board.left_over_width = Length::mm(197);
  plan.cut_list.boards = {board};
  CHECK(count_of(svg_of(plan, "board-1"), "data-what=\"keep\"") == 0);
  plan.cut_list.boards.front().left_over = {{Length::mm(1097), Length::mm(100)}};
  const std::string svg = svg_of(plan, "board-1");
  CHECK(count_of(svg, "data-what=\"keep\"") == 1);
  CHECK(has(svg, ">keep: 1097 mm x 100 mm<"));
  plan.cut_list.boards.front().left_over.push_back({Length::mm(2000), Length::mm(197)});
  CHECK(has(svg_of(plan, "board-1"), ">keep: 2000 mm x 197 mm<"));
  // One that lies nowhere is not drawn but said.
  plan.cut_list.boards.front().left_over = {{Length::mm(777), Length::mm(100)}};
  CHECK(has(svg_of(plan, "board-1"), "Keep: 777 mm x 100 mm."));
}

TEST_CASE("strips too long for their line and parts without a mark are told", "[draw]") {
  Plan plan = plan_of(falling);
  Board board{"plank", false, Length::mm(4000), Length::mm(300), {}, {}};
  board.strips = {{Length::mm(10), std::vector<Piece>(60, {"E1", Length::mm(50)}), Length{}}};
  plan.cut_list.boards = {board};
  const std::string svg = svg_of(plan, "board-1");
  CHECK(has(svg, "Parts without a mark: from the left as in the list of strips."));
  CHECK(has(svg, "Longer strips, with …: as in the cut list."));
}

TEST_CASE("panels that like each other share their words where they have no room", "[draw]") {
  Plan plan = plan_of(
      R"({"base": {"rectangle": {"length": "9000 mm", "depth": "600 mm"}}, "thickness": "45 mm"})");
  plan.slabs.front().panels.clear();
  for (int k = 0; k < 90; ++k) {
    plan.slabs.front().panels.push_back(
        {"P" + std::to_string(k / 2),
         {{Length::mm(k * 100), {}}, Length::mm(90 + k / 2), Length::mm(600)}});
  }
  const std::string svg = svg_of(plan, "slab-1-panels");
  CHECK(has(svg, ">2 of P44: 134 mm x 600 mm<"));
  CHECK(has(svg, "panels have no room for their sizes here"));
}

TEST_CASE("an opening too large for a template is told in the plan", "[draw]") {
  const Plan plan = plan_of(
      R"({"base": {"rectangle": {"length": "6000 mm", "depth": "4000 mm"}}, "thickness": "45 mm",
          "openings": [{"name": "pool", "circle": "3000 mm", "at": ["3000 mm", "2000 mm"]}]})");
  CHECK(has(svg_of(plan, "slab-1-plan"), "tape: opening 1."));
}

TEST_CASE("of a slab with many short sides a page says what the plan has no room for", "[draw]") {
  std::string corners;
  for (int k = 0; k < 60; ++k) {
    const double angle = 2 * std::acos(-1.0) * k / 60;
    corners += (k == 0 ? "" : ", ");
    corners += "[\"" + std::to_string(std::lround(1500 * std::cos(angle)) + 1500) + " mm\", \"" +
               std::to_string(std::lround(1500 * std::sin(angle)) + 1500) + " mm\"]";
  }
  const Plan plan = plan_of(R"({"base": {"corners": [)" + corners + R"(]}, "thickness": "45 mm"})");
  CHECK(has(svg_of(plan, "slab-1-plan"), "Every side in words"));
  const std::string list = svg_of(plan, "slab-1-sides");
  for (const SidePlan& side : plan.slabs.front().sides) CHECK(has(list, ">" + side.name + ": "));
  CHECK(svg_of(plan_of(trapezium), "slab-1-sides").empty());
}

TEST_CASE("drawings of US jobs say lengths in both units", "[draw]") {
  const Plan plan = plan_of(
      R"({"base": {"rectangle": {"length": "60 in", "depth": "30 in"}}, "thickness": "2 in",
          "overhang": "1 1/2 in", "corner_treatment": [{"corner": 1, "radius": "2 in"}]})",
      "us");
  CHECK(has(svg_of(plan, "slab-1-plan"), "overhang 1 1/2 in (38.1 mm)"));
  CHECK(has(svg_of(plan, "slab-1-plan"), ">R 2 in (50.8 mm)<"));
  CHECK(has(svg_of(plan, "slab-1-edge-1"), ">2 in (50.8 mm)<"));
}
