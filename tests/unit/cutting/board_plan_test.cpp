// SPDX-License-Identifier: MIT
#include "cutting/board_plan.h"

#include <catch2/catch.hpp>

#include "cutting/verify.h"
#include "support/cutting.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

const Saw full_kerf{in(0.125), {}};

int third_cuts(const CutList& list) {
  int sum = 0;
  for (const Board& board : list.boards) {
    for (const Strip& strip : board.strips) {
      for (const Piece& piece : strip.pieces) sum += int{piece.width.has_value()};
    }
  }
  return sum;
}

const std::vector<Part> three_widths{strip_part("E1", in(3), in(60)),
                                     strip_part("E2", in(2.25), in(60)),
                                     strip_part("E3", in(1), in(30))};

}  // namespace

TEST_CASE("a third cut saves a board", "[cutting]") {
  // 3 + 1/8 + 2 1/4 = 5 3/8 of 5 1/2 in: no third strip. Beside the 60 in of a strip and a kerf
  // 35 7/8 in of 96 in are left, and 30 in of them hold E3.
  const std::vector<Stock> boards{board(96, 5.5)};
  const CutList list = cut_parts(three_widths, boards, {}, {}, full_kerf);
  CHECK(cut_violations(list, boards, {}, {}, full_kerf).empty());
  CHECK(list.boards.size() == 1);
  CHECK(third_cuts(list) == 1);
  CHECK(list.totals[0].proven);
}

TEST_CASE("a third cut takes what the strips of its own width leave", "[cutting]") {
  // Of 1800 x 180 mm: strips of 68, 68 and 25.4 mm with two kerfs are 167.4 mm, a fourth does not
  // go. The 25.4 mm pieces take 2 x 560.8 + 2 x 410 and three kerfs, 1950.6 mm: one is cut from
  // the second strip of 68 mm, which beside 460.8 mm and a kerf has 1336.2 mm left.
  const Saw saw{Length::mm(3), {}};
  const std::vector<Part> parts{strip_part("S1", Length::mm(25.4), Length::mm(560.8), 2),
                                strip_part("S2", Length::mm(25.4), Length::mm(410), 2),
                                strip_part("E1", Length::mm(68), Length::mm(596.8), 2),
                                strip_part("E2", Length::mm(68), Length::mm(460.8), 2)};
  const std::vector<Stock> boards{board(1800 / 25.4, 180 / 25.4)};
  const CutList list = cut_parts(parts, boards, {}, {}, saw);
  CHECK(cut_violations(list, boards, {}, {}, saw).empty());
  CHECK(list.boards.size() == 1);
  CHECK(list.totals[0].proven);
}

TEST_CASE("a third cut is not made where a strip does", "[cutting]") {
  // 3 + 2 1/4 + 1 in and two kerfs are 6 1/2 of 7 in.
  const CutList list = cut_parts(three_widths, {board(96, 7)}, {}, {}, full_kerf);
  CHECK(list.boards.size() == 1);
  CHECK(third_cuts(list) == 0);
}

TEST_CASE("an offcut on hand saves a board", "[cutting]") {
  // Two parts of 50 in take two boards of 96 in, or one and an offcut of 50 in.
  const std::vector<Part> parts{strip_part("E1", in(3), in(50), 2)};
  const std::vector<Stock> boards{board(96, 5)};
  CHECK(cut_parts(parts, boards, {}, {}, full_kerf).totals[0].buy == 2);
  const OnHand offcut{"board", 1, in(50), in(3)};
  const CutList list = cut_parts(parts, boards, {}, {offcut}, full_kerf);
  CHECK(cut_violations(list, boards, {}, {offcut}, full_kerf).empty());
  CHECK(list.totals[0].buy == 1);
  CHECK(list.totals[0].on_hand == 1);
}

TEST_CASE("the cheapest mix of two boards is found and proven by its cost", "[cutting]") {
  // Six parts of 31 in: a 96 in board holds three (93 1/4 in) for 10, a 64 in board two
  // (62 1/8 in) for 6. Three short boards cost 18, two long ones 20, one of each holds five.
  Stock long_one = board(96, 3), short_one = board(64, 3);
  long_one.id = "long", long_one.price = 10;
  short_one.id = "short", short_one.price = 6;
  const CutList list =
      cut_parts({strip_part("E1", in(3), in(31), 6)}, {long_one, short_one}, {}, {}, full_kerf);
  CHECK(total_of(list, "short").buy == 3);
  REQUIRE(list.cost_bound);
  CHECK(list.cost_bound->si() == Approx(18));
}

TEST_CASE("what is wasted gathers in one left-over", "[cutting]") {
  // Four parts of 40 in on strips of 96 in: two to a strip. Two strips of 2 in on one board, and
  // the rest of the width stays whole: 5 - 2 (2 + 1/8) = 3/4 in.
  const CutList list =
      cut_parts({strip_part("E1", in(2), in(40), 4)}, {board(96, 5)}, {}, {}, full_kerf);
  REQUIRE(list.boards.size() == 1);
  CHECK(list.boards[0].strips.size() == 2);
  CHECK(list.boards[0].left_over_width == in(0.75));
}

TEST_CASE("a board is cut without a kerf and without a price", "[cutting]") {
  const CutList list = cut_parts({strip_part("E1", in(1), in(24), 20)}, {board(96, 5)}, {}, {}, {});
  CHECK(list.boards.size() == 1);
  CHECK(list.boards[0].left_over_width == Length{});
  CHECK(list.totals[0].proven);
  CHECK_FALSE(list.cost_bound);
}

TEST_CASE("a part wider than every board is unplaced and the rest is cut", "[cutting]") {
  const CutList list = cut_parts({strip_part("E1", in(6), in(24)), strip_part("E2", in(2), in(24))},
                                 {board(96, 5)}, {}, {}, full_kerf);
  CHECK(list.unplaced == std::vector<std::string>{"E1"});
  CHECK(list.boards.size() == 1);
  CHECK_FALSE(list.totals[0].proven);
}
