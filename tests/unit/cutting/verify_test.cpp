// SPDX-License-Identifier: MIT
#include "cutting/verify.h"

#include <catch2/catch.hpp>

#include "cutting/sheet_replay.h"
#include "support/cutting.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

const Saw saw{in(0.125), in(0.5)};
const std::vector<Stock> boards{board(96, 7.25)};
const std::vector<Stock> sheets{sheet(60, 36)};

CutList a_list() {
  return cut_parts({strip_part("E1", in(2.5), in(40), 4), strip_part("S1", in(1), in(30), 2),
                    panel_part("P1", in(30), in(20), 3)},
                   boards, sheets, {}, saw);
}

std::vector<std::string> wrong_with(const CutList& list) {
  return cut_violations(list, boards, sheets, {}, saw);
}

}  // namespace

TEST_CASE("a good cut list has nothing wrong with it", "[verify]") {
  CHECK(wrong_with(a_list()).empty());
}

TEST_CASE("each way to spoil a cut list is found", "[verify]") {
  CutList list = a_list();
  SECTION("a piece left out") {
    list.boards[0].strips[0].pieces.pop_back();
  }
  SECTION("a piece too many") {
    list.boards[0].strips[0].pieces.push_back(list.boards[0].strips[0].pieces[0]);
  }
  SECTION("a piece cut short") {
    list.boards[0].strips[0].pieces[0].length -= in(1);
  }
  SECTION("a strip of another width") {
    list.boards[0].strips[0].width += in(0.25);
  }
  SECTION("a board that does not exist") {
    list.boards[0].length += in(1);
  }
  SECTION("a board said to be on hand") {
    list.boards[0].on_hand = true;
  }
  SECTION("a wrong left over") {
    list.boards[0].strips[0].left_over += in(1);
  }
  SECTION("a wrong left over width") {
    list.boards[0].left_over_width += in(1);
  }
  SECTION("a left-over to keep that is not there") {
    list.boards[0].left_over.push_back({in(40), in(3)});
  }
  SECTION("a left-over to keep that is not named") {
    list.boards[0].left_over.clear();
  }
  SECTION("a strip wider than its board") {
    list.boards[0].strips[0].width = in(8);
  }
  SECTION("a third cut wider than its strip") {
    list.boards[0].strips[0].pieces[0].width = in(3);
  }
  SECTION("a board that loses its ends") {
    list.boards[0].strips[0].pieces[0].length += in(20);
    list.parts[0].length += in(20);
  }
  SECTION("a strip of a board that bends") {
    list.parts[0].stock = "bending board";
  }
  SECTION("fewer bought than the bound") {
    list.totals[0].buy_bound = list.totals[0].buy + 1;
  }
  SECTION("cheaper than the bound") {
    list.cost = Money::from_si(1);
    list.cost_bound = Money::from_si(2);
  }
  SECTION("an unknown mark") {
    list.boards[0].strips[0].pieces[0].mark = "X9";
  }
  SECTION("a wrong total") {
    ++list.totals[0].used;
  }
  SECTION("a bound above what is used") {
    list.totals[0].bound = list.totals[0].used + 1;
  }
  SECTION("a total left out") {
    list.totals.pop_back();
  }
  SECTION("a part said to be unplaced") {
    list.unplaced.push_back("E1");
  }
  SECTION("a panel off its sheet") {
    list.sheets[0].pieces[0].at.at.x += in(40);
  }
  SECTION("a left-over on a panel") {
    list.sheets[0].left_over.push_back(list.sheets[0].pieces[0].at);
  }
  SECTION("a left-over off its sheet") {
    list.sheets[0].left_over.push_back({{in(60), in(36)}, in(20), in(10)});
  }
  SECTION("a fence set too wide") {
    list.sheets[0].cuts[0].fence += in(0.125);
  }
  SECTION("a pass of the saw forgotten") {
    list.sheets[0].cuts.pop_back();
  }
  SECTION("a pass in a stage of its own") {
    ++list.sheets[0].cuts[0].stage;
  }
  SECTION("a pass the other way") {
    list.sheets[0].cuts[0].along_length = !list.sheets[0].cuts[0].along_length;
  }
  SECTION("panels on one another") {
    list.sheets[0].pieces[1].at.at = list.sheets[0].pieces[0].at.at;
  }
  CHECK_FALSE(wrong_with(list).empty());
}

TEST_CASE("five panels round a middle one cannot be sawn apart", "[verify]") {
  CutList list;
  list.parts = {panel_part("P1", in(20), in(10), 4), panel_part("P2", in(9), in(9), 1)};
  const Length l = in(20), w = in(10), k = saw.kerf;
  list.sheets = {{"panel",
                  false,
                  in(60),
                  in(36),
                  {{"P1", {{}, l, w}},
                   {"P1", {{l + k, {}}, w, l}},
                   {"P1", {{w + k, l + k}, l, w}},
                   {"P1", {{Length{}, w + k}, w, l}},
                   {"P2", {{w + k, w + k}, in(9), in(9)}}}}};
  list.totals = {{"panel", 1, 0, 1, 1, true}};
  CHECK_FALSE(wrong_with(list).empty());
  // Whatever cut is tried first goes through a panel.
  list.sheets[0].cuts = {{1, true, "", w, "strip 1"}, {2, false, "strip 1", l, "P1", "P1"}};
  CHECK_FALSE(wrong_with(list).empty());
}

TEST_CASE("a fourth stage of the saw is too many", "[verify]") {
  // 40 x 20 with no kerf: each pass halves what the one before leaves, turned by turns.
  const auto piece = [](const char* mark, double x, double y, double length, double width) {
    return SheetPiece{mark, {{in(x), in(y)}, in(length), in(width)}};
  };
  Sheet sheet{"panel", false, in(40), in(20), {}};
  sheet.pieces = {piece("P1", 0, 0, 20, 20), piece("P2", 20, 0, 20, 10),
                  piece("P3", 20, 10, 10, 10), piece("P4", 30, 10, 10, 10)};
  sheet.cuts = {{1, false, "", in(20), "P1", "strip 1"},
                {2, true, "strip 1", in(10), "P2", "strip 2"},
                {3, false, "strip 2", in(10), "P3", "P4"}};
  CHECK(saw_violations(sheet, Length{}).empty());
  sheet.pieces[3] = piece("P4", 30, 10, 10, 5);
  sheet.cuts.push_back({4, true, "P4", in(5), "P4"});
  CHECK_FALSE(saw_violations(sheet, Length{}).empty());
  // With a kerf nothing fits any more.
  sheet.cuts.pop_back();
  sheet.pieces[3] = piece("P4", 30, 10, 10, 10);
  CHECK_FALSE(saw_violations(sheet, in(0.125)).empty());
}
