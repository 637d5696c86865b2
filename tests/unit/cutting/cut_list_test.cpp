// SPDX-License-Identifier: MIT
#include "cutting/cut_list.h"

#include <catch2/catch.hpp>

#include "cutting/verify.h"
#include "slab/measure.h"
#include "slab/panels.h"
#include "slab/strips.h"
#include "support/cutting.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

const Saw full_kerf{in(0.125), {}};
const std::vector<std::string> nothing;

/// How many pieces of this length come from one board, by asking for more and more.
int pieces_from_one(double board_in, double piece_in, double kerf_in) {
  for (int n = 1;; ++n) {
    const auto list = cut_parts({strip_part("E1", in(1), in(piece_in), n)}, {board(board_in, 1)},
                                {}, {}, {in(kerf_in), {}});
    if (list.boards.size() > 1) return n - 1;
  }
}

}  // namespace

TEST_CASE("the potting bench comes from one board and that is proven", "[cutting]") {
  MarkCounter marks;
  const Slab slab = potting_bench();
  const SlabPlan shape = measure_slab(slab);
  const Forms forms = forms_with({board(84, 13.5)}, in(0.125), in(0.125));
  std::vector<Part> parts = form_work(slab, shape, forms, kilograms_per_m3(2300), marks).parts;
  const PanelLayout panels = lay_panels(slab, shape, forms.kerf, marks);
  parts.insert(parts.end(), panels.parts.begin(), panels.parts.end());
  const CutList list = cut_parts(parts, forms.strip_stock, {*slab.panel}, {}, full_kerf);
  CHECK(cut_violations(list, forms.strip_stock, {*slab.panel}, {}, full_kerf) == nothing);

  REQUIRE(list.boards.size() == 1);
  // Three strips of 2 1/2 in and three of 1 1/8 in, with their kerfs 11 5/8 in of 13 1/2 in.
  CHECK(list.boards[0].strips.size() == 6);
  CHECK(list.boards[0].left_over_width == in(13.5 - 11.625));
  REQUIRE(list.totals.size() == 2);
  CHECK(list.totals[0].stock == "board");
  CHECK(list.totals[0].bound == 1);
  CHECK(list.totals[0].proven);
  CHECK(list.totals[1].used == 2);
  CHECK(list.totals[1].proven);
  CHECK(list.unplaced.empty());
}

TEST_CASE("the saw takes its kerf between pieces and not after the last", "[cutting]") {
  // n = floor((L + k)/(p + k)); common woodworking practice, from memory.
  CHECK(pieces_from_one(96, 24, 0) == 4);
  CHECK(pieces_from_one(96, 24, 0.125) == 3);
  CHECK(pieces_from_one(96, 23.5, 0.125) == 4);
  CHECK(pieces_from_one(96, 23.90625, 0.125) == 4);
  CHECK(pieces_from_one(144, 36, 0.125) == 3);
  CHECK(pieces_from_one(96, 1.5, 0.125) == 59);
  CHECK(pieces_from_one(48, 11.90625, 0.125) == 4);
}

TEST_CASE("what is left of a strip is less one kerf for each piece", "[cutting]") {
  const CutList list =
      cut_parts({strip_part("E1", in(1), in(30), 3)}, {board(96, 1)}, {}, {}, full_kerf);
  CHECK(list.boards[0].strips[0].left_over == in(5.625));
  const CutList exact =
      cut_parts({strip_part("E1", in(1), in(23.90625), 4)}, {board(96, 1)}, {}, {}, full_kerf);
  CHECK(exact.boards[0].strips[0].left_over == Length{});
  CHECK(exact.boards[0].left_over_width == Length{});
}

TEST_CASE("both ends of a board are squared off first", "[cutting]") {
  const Saw trimmed{in(0.125), in(1)};
  const auto list = cut_parts({strip_part("E1", in(1), in(94))}, {board(96, 3.5)}, {}, {}, trimmed);
  CHECK(list.boards.size() == 1);
  CHECK(list.boards[0].strips[0].left_over == Length{});
  const auto too_long = cut_parts({strip_part("E1", in(1), in(94) + Length::nm(1))},
                                  {board(96, 3.5)}, {}, {}, trimmed);
  CHECK(too_long.boards.empty());
  CHECK(too_long.unplaced == std::vector<std::string>{"E1"});
  CHECK(too_long.totals.empty());
}

TEST_CASE("the cheapest boards that do are bought", "[cutting]") {
  Stock wide = board(96, 11.25), narrow = board(96, 5.5);
  wide.id = "wide";
  narrow.id = "narrow";
  // Three strips of 2 1/2 in: one wide board, or two narrow ones.
  const std::vector<Part> parts{strip_part("E1", in(2.5), in(90), 3)};
  wide.price = 20, narrow.price = 9;
  CutList list = cut_parts(parts, {wide, narrow}, {}, {}, full_kerf);
  CHECK(list.parts[0].stock == "narrow");
  CHECK(total_of(list, "narrow").buy == 2);
  narrow.price = 11;
  list = cut_parts(parts, {wide, narrow}, {}, {}, full_kerf);
  CHECK(total_of(list, "wide").buy == 1);
  // Without a price the area bought decides: 11 in of narrow board.
  wide.price.reset();
  list = cut_parts(parts, {wide, narrow}, {}, {}, full_kerf);
  CHECK(total_of(list, "narrow").buy == 2);
  // Nothing here must be cut from narrow boards, so nothing is proven.
  CHECK(total_of(list, "narrow").bound == 0);
  CHECK_FALSE(total_of(list, "narrow").proven);
}

TEST_CASE("a last board is changed for a cheaper one that still holds its parts", "[cutting]") {
  Stock big = board(96, 5.5), small = board(48, 5.5);
  big.id = "big", big.price = 10;
  small.id = "small", small.price = 6;
  const std::vector<Part> parts{strip_part("E1", in(5.5), in(90), 2),
                                strip_part("E2", in(5.5), in(40), 1)};
  const CutList list = cut_parts(parts, {big, small}, {}, {}, full_kerf);
  CHECK(total_of(list, "big").buy == 2);
  CHECK(total_of(list, "big").bound == 2);
  CHECK(total_of(list, "big").proven);
  CHECK(total_of(list, "small").buy == 1);
  CHECK(list.boards.back().strips[0].left_over == in(48 - 40 - 0.125));

  // The same for a narrower one.
  small = board(96, 3.5), small.id = "small", small.price = 8;
  const CutList narrower =
      cut_parts({strip_part("E1", in(5.5), in(90), 2), strip_part("E2", in(2.5), in(90))},
                {big, small}, {}, {}, full_kerf);
  CHECK(total_of(narrower, "small").buy == 1);
  CHECK(narrower.boards.back().left_over_width == in(3.5 - 2.5 - 0.125));
}

TEST_CASE("a bound counts only boards of its own kind and what can be used of them", "[cutting]") {
  // One 60 in part of 5 in to a 96 in board; the longer boards are too narrow for it.
  Stock wide = board(96, 5.5), narrow = board(144, 2);
  wide.id = "wide";
  const std::vector<Part> parts{strip_part("E1", in(5), in(60), 3)};
  CutList list = cut_parts(parts, {wide, narrow}, {}, {}, full_kerf);
  CHECK(total_of(list, "wide").bound == 3);
  CHECK(total_of(list, "wide").proven);
  // Two parts of 46.9 in and a kerf take 93.925 of 94 in.
  list =
      cut_parts({strip_part("E1", in(1), in(46.9), 2)}, {board(96, 1)}, {}, {}, {in(0.125), in(1)});
  CHECK(list.totals[0].used == 1);
  CHECK(list.totals[0].bound == 1);
}

TEST_CASE("panels prove nothing about boards", "[cutting]") {
  Stock wide = board(96, 5.5), narrow = board(96, 3.5);
  wide.id = "wide";
  const std::vector<Part> parts{strip_part("E1", in(2.5), in(90)),
                                panel_part("P1", in(30), in(20))};
  const CutList list = cut_parts(parts, {wide, narrow}, {sheet(60, 36)}, {}, full_kerf);
  CHECK(total_of(list, "board").bound == 0);
  CHECK_FALSE(total_of(list, "board").proven);
}

TEST_CASE("a plan that meets the bound is proven with offcuts in it too", "[cutting]") {
  const std::vector<Part> parts{strip_part("E1", in(2.5), in(90)),
                                strip_part("E2", in(2.5), in(30))};
  OnHand offcut{"board", 1, in(40), in(2.5)};
  CutList list = cut_parts(parts, {board(96, 2.5)}, {}, {offcut}, full_kerf);
  CHECK((list.totals[0].used == 2 && list.totals[0].bound == 2 && list.totals[0].buy == 1));
  CHECK(list.totals[0].proven);  // two pieces of stock, whichever they are
  offcut.item = "something else";
  list = cut_parts(parts, {board(96, 2.5)}, {}, {offcut}, full_kerf);
  CHECK((list.totals[0].used == 2 && list.totals[0].bound == 2 && list.totals[0].buy == 2));
  CHECK(list.totals[0].proven);
}

TEST_CASE("boards on hand are filled as closely as bought ones", "[cutting]") {
  // Two strips beside each other on the one board that is there.
  CutList list = cut_parts({strip_part("E1", in(2.5), in(90), 2)}, {board(96, 5.5)}, {},
                           {{"board", 1, {}, {}}}, full_kerf);
  CHECK((list.totals[0].used == 1 && list.totals[0].buy == 0));
  // Long parts first: 59 and 36 in share a board twice over.
  list = cut_parts({strip_part("E1", in(1), in(59), 2), strip_part("E2", in(1), in(36), 2)},
                   {board(96, 1)}, {}, {{"board", 1, {}, {}}}, full_kerf);
  CHECK((list.totals[0].used == 2 && list.totals[0].buy == 1));
}

TEST_CASE("boards run out where the stock says so", "[cutting]") {
  Stock few = board(96, 2.5), dear = board(96, 2.5);
  few.quantity = 2, few.price = 1;
  dear.id = "dear", dear.price = 5;
  const std::vector<Part> parts{strip_part("E1", in(2.5), in(90), 3)};
  CutList list = cut_parts(parts, {few, dear}, {}, {}, full_kerf);
  CHECK(total_of(list, "board").used == 2);
  CHECK(total_of(list, "dear").used == 1);
  CHECK(list.unplaced.empty());
  list = cut_parts(parts, {few}, {}, {}, full_kerf);
  CHECK(list.unplaced == std::vector<std::string>{"E1"});
  CHECK_FALSE(list.totals[0].proven);
  CHECK(cut_violations(list, {few}, {}, {}, full_kerf) == nothing);
}

TEST_CASE("what is on hand is cut first and offcuts count as they are", "[cutting]") {
  const std::vector<Stock> boards{board(96, 2.5)};
  const std::vector<OnHand> on_hand{{"board", 1, {}, {}}, {"board", 2, in(40), in(1.5)}};
  const std::vector<Part> parts{strip_part("E1", in(2.5), in(90), 2),
                                strip_part("S1", in(1), in(39), 1)};
  const CutList list = cut_parts(parts, boards, {}, on_hand, full_kerf);
  CHECK(cut_violations(list, boards, {}, on_hand, full_kerf) == nothing);
  const StockTotal& total = total_of(list, "board");
  CHECK(total.used == 3);
  CHECK(total.on_hand == 2);
  CHECK(total.buy == 1);
  CHECK(list.boards[0].on_hand);
  CHECK_FALSE(list.boards[2].on_hand);
}

TEST_CASE("an offcut that saves no money is left whole rather than cut as well", "[cutting]") {
  // The wide part needs a bought board, which has room for the narrow one too.
  const std::vector<Part> parts{strip_part("E1", in(6), in(90)), strip_part("E2", in(2), in(30))};
  const std::vector<Stock> boards{board(96, 12)};
  const std::vector<OnHand> on_hand{{"board", 1, in(40), in(4)}};
  const CutList list = cut_parts(parts, boards, {}, on_hand, full_kerf);
  CHECK(cut_violations(list, boards, {}, on_hand, full_kerf) == nothing);
  CHECK(list.boards.size() == 1);
  CHECK(list.totals[0].buy == 1);
  CHECK(list.totals[0].on_hand == 0);
}

TEST_CASE("an offcut saves a board and the plan says that none buys fewer", "[cutting]") {
  // With the kerfs 40 + 40 + 20 in are 100 1/4 in of 96; the 24 in offcut takes the short one.
  const std::vector<Part> parts{strip_part("E1", in(2), in(40), 2),
                                strip_part("E2", in(2), in(20))};
  Stock one = board(96, 2);
  one.price = 7;
  const std::vector<OnHand> on_hand{{"board", 1, in(24), in(2)}};
  const CutList bought = cut_parts(parts, {one}, {}, {}, full_kerf);
  const CutList list = cut_parts(parts, {one}, {}, on_hand, full_kerf);
  CHECK(total_of(bought, "board").buy == 2);
  CHECK(total_of(list, "board").buy == 1);
  CHECK(total_of(list, "board").on_hand == 1);
  CHECK(total_of(list, "board").buy_bound == 1);
  CHECK(list.boards[0].on_hand);
  CHECK(list.cost->si() == Approx(7));
  CHECK(*list.cost_gap == 0);
  CHECK(cut_violations(list, {one}, {}, on_hand, full_kerf) == nothing);
}

TEST_CASE("what a board leaves is named from the size the job sets", "[cutting]") {
  // 96 x 5.5 in less a strip of 2 in and a kerf: 96 x 3.375 in, and 55.875 x 2 in behind the part.
  const auto left = [](const Reusable& least) {
    const CutList list = cut_parts({strip_part("E1", in(2), in(40))}, {board(96, 5.5)}, {}, {},
                                   {in(0.125), {}, least});
    return list.boards.front().left_over;
  };
  CHECK(left({in(12), in(1.5)}) == std::vector<LeftOver>{{in(96), in(3.375)}, {in(55.875), in(2)}});
  CHECK(left({in(12), in(2.5)}) == std::vector<LeftOver>{{in(96), in(3.375)}});
  CHECK(left({in(97), in(1)}).empty());
}

TEST_CASE("parts without a stock are left alone", "[cutting]") {
  Part block = strip_part("K1", in(10), in(10));
  block.role = "knock-out block";
  block.stock.clear();
  const CutList list = cut_parts({block}, {board(96, 3.5)}, {}, {}, full_kerf);
  CHECK(list.boards.empty());
  CHECK(list.unplaced.empty());
}

TEST_CASE("panels are turned where that saves a sheet", "[cutting]") {
  const std::vector<Stock> sheets{sheet(60, 36)};
  const CutList list = cut_parts({panel_part("P1", in(36), in(19), 3)}, {}, sheets, {}, full_kerf);
  CHECK(cut_violations(list, {}, sheets, {}, full_kerf) == nothing);
  REQUIRE(list.totals.size() == 1);
  CHECK(list.totals[0].used == 1);
  CHECK(list.totals[0].proven);
  CHECK(list.sheets[0].pieces.size() == 3);
  const CutList large = cut_parts({panel_part("P1", in(61), in(19))}, {}, sheets, {}, full_kerf);
  CHECK(large.unplaced == std::vector<std::string>{"P1"});
}

TEST_CASE("a sheet on hand is cut where that saves one", "[cutting]") {
  const std::vector<OnHand> on_hand{{"panel", 1, in(30), in(36)}};
  Stock priced = sheet(60, 36);
  priced.price = 20;
  const std::vector<Stock> sheets{priced};
  const auto cut = [&](int quantity) {
    CutList list =
        cut_parts({panel_part("P1", in(29), in(20), quantity)}, {}, sheets, on_hand, full_kerf);
    CHECK(cut_violations(list, {}, sheets, on_hand, full_kerf) == nothing);
    return list;
  };
  const CutList one = cut(1), two = cut(2);
  CHECK(one.totals[0].buy == 0);
  CHECK(one.totals[0].proven);
  CHECK(one.cost_bound->si() == 0);
  // One sheet holds both: the offcut saves nothing and stays whole.
  CHECK(two.totals[0].buy == 1);
  CHECK(two.totals[0].on_hand == 0);
  CHECK(two.totals[0].proven);
  // Of 20 in only two go along 60 in once the saw has taken its kerf, and 29 and 20 in do not stack
  // in 36 in: two to a sheet, one to the offcut.
  const CutList three = cut(3);
  CHECK(three.totals[0].buy == 1);
  CHECK(three.totals[0].on_hand == 1);
  CHECK(three.totals[0].proven);
  CHECK(three.cost_bound->si() == Approx(20));
}

TEST_CASE("what a sheet leaves is listed from 300 x 40 mm on", "[cutting]") {
  const std::vector<Stock> sheets{sheet(60, 36)};
  // 49.875 x 36 in of 60 x 36 in, with a kerf of 1/8 in: 10 in over the whole width are left.
  const CutList list = cut_parts({panel_part("P1", in(49.875), in(36))}, {}, sheets, {}, full_kerf);
  CHECK(cut_violations(list, {}, sheets, {}, full_kerf) == nothing);
  REQUIRE(list.sheets.size() == 1);
  const Sheet& cut = list.sheets.front();
  CHECK(cut.stages == 1);
  REQUIRE(cut.left_over.size() == 1);
  CHECK(cut.left_over.front() == Rectangle{{in(50), {}}, in(10), in(36)});
  // An inch is too narrow to use.
  CHECK(cut_parts({panel_part("P1", in(58.875), in(36))}, {}, sheets, {}, full_kerf)
            .sheets.front()
            .left_over.empty());
}

TEST_CASE("no plan costs less than the cost bound and what is on hand is free", "[cutting]") {
  Stock priced = board(96, 3.5);
  priced.price = 19;
  const std::vector<Part> parts{strip_part("E1", in(3), in(90), 3)};
  CHECK(cut_parts(parts, {priced}, {}, {}, full_kerf).cost_bound->si() == Approx(57));
  const std::vector<OnHand> two{{priced.id, 2, std::nullopt, std::nullopt}};
  const CutList list = cut_parts(parts, {priced}, {}, two, full_kerf);
  CHECK(list.cost_bound->si() == Approx(19));
  CHECK(list.totals[0].proven);
  Stock unpriced = priced;
  unpriced.price.reset();
  CHECK_FALSE(cut_parts(parts, {unpriced}, {}, {}, full_kerf).cost_bound);
}

TEST_CASE("an offcut on hand does not unprove the fewest boards", "[cutting]") {
  const Stock stock = board(96, 3.5);
  const std::vector<OnHand> offcut{{stock.id, 1, in(20), in(3.5)}};
  const CutList list = cut_parts({strip_part("E1", in(3), in(90))}, {stock}, {}, offcut, full_kerf);
  CHECK(list.totals[0].used == list.totals[0].bound);
  CHECK(list.totals[0].proven);
}

TEST_CASE("an edge strip without a stock has no room and is called unplaced", "[cutting]") {
  Part part = strip_part("E1", in(3), in(1));
  part.role = "edge strip";
  part.stock.clear();
  CHECK(cut_parts({part}, {board(96, 3.5)}, {}, {}, full_kerf).unplaced ==
        std::vector<std::string>{"E1"});
}
