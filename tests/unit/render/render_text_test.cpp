// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include "render/text_sections.h"
#include "render/text_table.h"
#include "strikeoff/render.h"
#include "support/render_sample.h"

using namespace strikeoff;
using Catch::Matchers::Contains;

namespace {

void require_fits_the_page(const std::string& text) {
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    CAPTURE(line);
    CHECK(text::columns(line) <= 100);
    CHECK((line.empty() || line.back() != ' '));
    CHECK(std::none_of(line.begin(), line.end(), [](char c) { return c >= 0 && c < ' '; }));
  }
}

}  // namespace

TEST_CASE("the text plan follows the order of the day") {
  const std::string text = render_text(test::printed_bench_plan());
  std::size_t at = 0;
  for (const char* title :
       {"greenhouse potting bench\n====", "\nIN SHORT\n", "\nSHOP\n", "\nCUT\n", "\nMIX CARD\n",
        "\nPOUR\n", "\nTHE DAY\n", "\nCHECKS\n", "\nASSUMPTIONS\n"}) {
    CAPTURE(title);
    const std::size_t found = text.find(title);
    REQUIRE(found != std::string::npos);
    CHECK(found >= at);
    at = found;
  }
  require_fits_the_page(text);
}

TEST_CASE("a stop stands before everything else with what to do") {
  Plan plan = test::printed_bench_plan();
  plan.checks.insert(plan.checks.begin(), test::cold_joint());
  const std::string text = render_text(plan);
  CHECK(text.find("!!! STOP") < text.find("IN SHORT"));
  CHECK_THAT(text, Contains("!!! 1. the edge of batch 1 sets before batch 2 meets it (15.5 min, "
                            "limit 12)\n!!!    What to do: add a second mixer"));
  CHECK(render_text(test::printed_bench_plan()).find("!!!") == std::string::npos);
}

TEST_CASE("names of any length and content keep the page") {
  Plan plan = test::printed_bench_plan();
  const std::string name = std::string(150, 'W') + "\x1b[2J\n" + std::string(50, 'i');
  plan.name = plan.mix.name = plan.slabs[0].name = plan.pour.bottleneck = name;
  for (Batch& batch : plan.batches) batch.zones[0].slab = name;
  plan.slabs.push_back(plan.slabs[0]);
  for (Part& part : plan.cut_list.parts) part.slab = part.place = part.stock = name;
  for (Board& board : plan.cut_list.boards) board.stock = name;
  for (Material& material : plan.materials) material.item = material.note = name;
  for (Check& check : plan.checks) check.title = check.advice = name;
  for (Task& task : plan.schedule) task.phase = task.task = task.who = name;
  for (Assumption& assumption : plan.assumptions) assumption.path = assumption.reason = name;
  require_fits_the_page(render_text(plan));
}

TEST_CASE("a zone too narrow to mark is not named") {
  Plan plan = test::printed_bench_plan();
  const std::string before = text::pour(plan).str();
  Zone sliver = plan.batches[0].zones[0];
  for (Point& p : sliver.outline) p.x = sliver.outline[0].x;
  plan.batches[0].zones.push_back(sliver);
  CHECK(text::pour(plan).str() == before);
}

TEST_CASE("boards are ripped widest first and say what to keep") {
  const std::string text = text::cut(test::printed_bench_plan()).str();
  CHECK_THAT(text, Contains("Rip the full length, fence at 2 1/2 in (3 strips), then 1 1/8 in "
                            "(3 strips)."));
  CHECK_THAT(text, Contains("3  2 1/2 in  E2 26 1/4 in | E2 26 1/4 in\n"));
  CHECK_THAT(text, Contains("Keep: 84 x 1 7/8 in, 31 1/4 x 2 1/2 in."));
  CHECK_THAT(text, Contains("under 12 x 1 1/2 in it is waste."));
  CHECK(text.find("Square both ends") == std::string::npos);
}

TEST_CASE("the cut list says whether fewer boards could do") {
  const std::string text = text::cut(test::printed_bench_plan()).str();
  CHECK_THAT(text, Contains("1 board of board-13x84; no plan can use fewer."));
  CHECK_THAT(text, Contains("2 sheets of backer-34x52 (1 on hand, 1 to buy); no plan can buy "
                            "fewer."));
  Plan plan = test::printed_bench_plan();
  plan.cut_list.totals[1] = {"backer-34x52", 3, 0, 3, 2, false, 2};
  CHECK_THAT(text::cut(plan).str(),
             Contains("at least 2 must be bought, so this may be 1 too many."));
}

TEST_CASE("boards all on hand are not said to be bought") {
  Plan plan = test::printed_bench_plan();
  plan.cut_list.totals[0] = {"board-13x84", 1, 1, 0, 0, false, 0};
  CHECK_THAT(text::cut(plan).str(), Contains("1 board of board-13x84, on hand.\n"));
}

TEST_CASE("the cut list says which plans it compares with where it compares") {
  Plan plan = test::printed_bench_plan();
  const std::string meaning = "\"No plan\" counts plans cut like this one: boards ripped from end";
  CHECK_THAT(text::cut(plan).str(), Contains(meaning));
  for (StockTotal& total : plan.cut_list.totals) {
    total.proven = false;
    total.buy_bound = 0;
  }
  CHECK(text::cut(plan).str().find("No plan") == std::string::npos);
}

TEST_CASE("the cut list says how far from the cheapest it may be") {
  Plan plan = test::printed_bench_plan();
  plan.currency = "USD";
  CutList& list = plan.cut_list;
  CHECK(text::cut(plan).str().find("for boards and sheets") == std::string::npos);
  list.cost = list.cost_bound = Money::from_si(40);
  list.cost_gap = 0;
  CHECK_THAT(text::cut(plan).str(),
             Contains("40.00 USD for boards and sheets; no plan is cheaper."));
  list.cost = Money::from_si(41);
  list.cost_gap = 0.025;
  CHECK_THAT(text::cut(plan).str(),
             Contains("No plan costs less than 40.00 USD for boards and sheets; "
                      "this one costs 41.00 USD, at most about\n  2.5 % over."));
}

TEST_CASE("the ends of a board are squared before it is ripped") {
  Plan plan = test::printed_bench_plan();
  plan.cut_list.end_trim = Length::inches(0.5);
  CHECK_THAT(text::cut(plan).str(),
             Contains("Square both ends first: 1/2 in off each.\n    Rip the"));
}

TEST_CASE("widths that read the same are one setting of the fence") {
  Plan plan = test::printed_bench_plan();
  plan.cut_list.boards[0].strips[0].width += Length::mm(0.001);
  CHECK_THAT(text::cut(plan).str(),
             Contains("fence at 2 1/2 in (3 strips), then 1 1/8 in (3 strips)."));
}

TEST_CASE("boards cut alike are shown once") {
  Plan plan = test::printed_bench_plan();
  plan.cut_list.boards.push_back(plan.cut_list.boards[0]);
  plan.cut_list.boards.push_back(plan.cut_list.boards[0]);
  CHECK_THAT(text::cut(plan).str(), Contains("Boards 1 to 3, all alike: board-13x84"));
}

TEST_CASE("parts that fit no stock are called out") {
  Plan plan = test::printed_bench_plan();
  plan.cut_list.unplaced = {"E1", "P1"};
  CHECK_THAT(text::cut(plan).str(), Contains("or have no room where they go: E1"));
}

TEST_CASE("angled ends name the side and explain the reading") {
  Plan plan = test::printed_bench_plan();
  CHECK(text::cut(plan).str().find("End cuts: left / right") == std::string::npos);
  plan.cut_list.parts[0].right_cut_deg = 22.5;
  CHECK_THAT(text::cut(plan).str(), Contains("square / 22.5 deg"));
  CHECK_THAT(text::cut(plan).str(), Contains("End cuts: left / right"));
}

TEST_CASE("equal batches share one card with a box to tick for each") {
  const std::string text = text::mix_card(test::printed_bench_plan()).str();
  CHECK_THAT(text, Contains("Batches 1 to 4, each:"));
  CHECK_THAT(
      text,
      Contains("3 qt 22.5 fl oz (7.7 lb on a scale): 2 15/16 in deep in the bucket, from the"));
  CHECK_THAT(text, Contains("[_]1 [_]2 [_]3 [_]4"));
  CHECK_THAT(text, Contains("All batches are equal."));
}

TEST_CASE("a smaller last batch has its own card") {
  Plan plan = test::printed_bench_plan();
  plan.batches[3].bags = 0.85;
  plan.batches[3].dry = pounds(40.8);
  const std::string text = text::mix_card(plan).str();
  CHECK_THAT(text, Contains("Batches 1 to 3, each:"));
  CHECK_THAT(text, Contains("Batch 4:\n    dry mix       0.85 bag, 40.8 lb"));
  CHECK(text.find("All batches are equal") == std::string::npos);
}

TEST_CASE("several fills of the bucket are counted") {
  Plan plan = test::printed_bench_plan();
  for (Batch& batch : plan.batches) batch.bucket_fills = 2;
  CHECK_THAT(text::mix_card(plan).str(), Contains("fill 2 times, each time 2 15/16 in deep"));
}

TEST_CASE("the timetable gives water in and the latest moment the edge is met") {
  const std::string text = text::pour(test::printed_bench_plan()).str();
  CHECK_THAT(text, Contains("      2  +0:04:30  09:04:30  +0:09:00  +0:12:00  +0:20:24  "
                            "left 19 9/16 to 39 1/8 in\n"));
  CHECK_THAT(text, Contains("    4  +0:13:30"));
}

TEST_CASE("without a working time the plan promises nothing") {
  Plan plan = test::printed_bench_plan();
  plan.pour.working_time = plan.pour.usable = plan.pour.margin = std::nullopt;
  plan.pour.feasible = false;
  for (Batch& batch : plan.batches) batch.meet_by = std::nullopt;
  const std::string text = render_text(plan);
  CHECK_THAT(text, Contains("The fresh mix will be about 67 F."));
  CHECK_THAT(text, Contains("the bag states no working time"));
  CHECK(text.find("usable") == std::string::npos);
}

TEST_CASE("a table of many batches is complete") {
  Plan plan = test::printed_bench_plan();
  for (int number = 5; number <= 60; ++number) {
    Batch batch = plan.batches[1];
    batch.number = number;
    plan.batches.push_back(batch);
  }
  const std::string text = text::pour(plan).str();
  CHECK_THAT(text, Contains("\n     60  "));
  CHECK(std::count(text.begin(), text.end(), '\n') < 80);
}

TEST_CASE("an unpriced item is named and never counted as free") {
  const std::string text = render_text(test::printed_bench_plan());
  CHECK_THAT(text, Contains("145.80 USD, leaving out what has no price: 1 item"));
  CHECK_THAT(text, Contains("No price is known for form screws: the total leaves that out."));
}

TEST_CASE("metric plans show millimetres and litres") {
  Plan plan = test::printed_bench_plan();
  plan.units = Units::metric;
  const std::string text = render_text(plan);
  CHECK_THAT(text, Contains("1987.5 x 666.8 mm"));
  CHECK_THAT(text, Contains("45.1 L"));
  CHECK(text.find(" in,") == std::string::npos);
}

TEST_CASE("checks put stops first and safety last with its advice") {
  Plan plan = test::printed_bench_plan();
  plan.checks.push_back(test::cold_joint());
  const std::string text = text::checks(plan).str();
  CHECK(text.find("STOP ") < text.find("caution "));
  CHECK(text.find("caution ") < text.find("ok "));
  CHECK(text.find("ok ") < text.find("safety "));
  CHECK_THAT(text, Contains("wear a fitted mask while bags are opened"));
}

TEST_CASE("an empty plan renders without sections it has nothing for") {
  const std::string text = render_text(Plan{});
  CHECK(text.find("SHOP") == std::string::npos);
  CHECK(text.find("CUT") == std::string::npos);
  require_fits_the_page(text);
}

TEST_CASE("packs are counted as a shop counts them and tools end the list") {
  Plan plan = test::printed_bench_plan();
  Material& row = plan.materials.front();
  row.packs = 2;
  for (const auto& [pack, shown] :
       {std::pair{"box of 100", "2 boxes of 100"}, std::pair{"roll of 10 m", "2 rolls of 10 m"},
        std::pair{"cartridge", "2 cartridges"}}) {
    row.pack = pack;
    CHECK_THAT(text::shop(plan).str(), Contains(shown));
  }
  plan.also_ready = {"goggles", "buckets"};
  CHECK_THAT(text::shop(plan).str(),
             Contains("Also have ready, not counted here: goggles, buckets."));
}

TEST_CASE("openings in panels are given on the piece as it lies") {
  Plan plan = test::printed_bench_plan();
  PanelPiece& piece = plan.slabs.front().panels.front();
  piece.mark = "P1";
  piece.cuts = {{{Length::inches(5), Length::inches(3)}, Length::inches(30), Length::inches(16)}};
  CHECK_THAT(text::cut(plan).str(),
             Contains("P1: cut out 30 x 16 in, 5 in from its left and 3 in from its front edge."));
}

TEST_CASE("a total that meets its bound is never called too many") {
  Plan plan = test::printed_bench_plan();
  for (StockTotal& total : plan.cut_list.totals) {
    total.bound = total.used;
    total.proven = false;
  }
  CHECK_THAT(text::cut(plan).str(), !Contains("too many"));
}

TEST_CASE("a slab that is not level says how thick it is and what that takes") {
  Plan plan = test::printed_bench_plan();
  plan.units = Units::metric;
  SlabPlan& slab = plan.slabs.front();
  slab.thinnest.thickness = Length::mm(25.4);
  slab.thickest.thickness = Length::mm(52);
  slab.level_correction = litres(3.2);
  slab.fall_wedge = litres(1.5);
  slab.apron = litres(2.1);
  const std::string text = render_text(plan);
  CHECK_THAT(text, Contains("thick at the edge as asked, 25.4 to 52 mm in all"));
  CHECK_THAT(text, Contains("3.2 L to level the base, 1.5 L for the fall of the top, 2.1 L in the "
                            "apron"));
  CHECK(render_text(test::printed_bench_plan()).find("Of it") == std::string::npos);
}
