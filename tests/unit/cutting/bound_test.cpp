// SPDX-License-Identifier: MIT
#include "cutting/bound.h"

#include <catch2/catch.hpp>

#include "support/slabs.h"

using namespace strikeoff;
using strikeoff::test::in;

TEST_CASE("parts over half a board need a board each", "[bound]") {
  CHECK(boards_bound({{in(49), in(1), 5}}, in(96), in(1), {}) == 5);
  CHECK(boards_bound({{in(48), in(1), 5}}, in(96), in(1), {}) == 3);
  // The kerf puts two 48 in parts beyond a 96 in board.
  CHECK(boards_bound({{in(48), in(1), 5}}, in(96), in(1), in(0.125)) == 5);
}

TEST_CASE("a dual feasible function sees what the area does not", "[bound]") {
  // Seven parts of just over a third: two to a board. Their area would fit three boards.
  CHECK(boards_bound({{in(33), in(1), 7}}, in(96), in(1), {}) == 4);
  // The same across the width at once: two by two to a board.
  CHECK(boards_bound({{in(33), in(3), 9}}, in(96), in(8), {}) == 3);
}

TEST_CASE("an exact fit is not counted twice", "[bound]") {
  CHECK(boards_bound({{in(32), in(1), 6}}, in(96), in(1), {}) == 2);
  CHECK(boards_bound({{in(23.90625), in(2.5), 8}}, in(96), in(5.125), in(0.125)) == 1);
  CHECK(boards_bound({}, in(96), in(5.5), {}) == 0);
  CHECK(boards_bound({{in(30), in(18), 8, true}}, in(60), in(36), {}) == 2);
}

TEST_CASE("a large part leaves no room for some and little for others", "[bound]") {
  // 69 and 30 in do not share a 96 in board, nor do 47, 30 and 30 in: three boards, though the
  // area would fit two.
  CHECK(boards_bound({{in(30), in(1), 2}, {in(47), in(1), 1}, {in(69), in(1), 1}}, in(96), in(1),
                     {}) == 3);
  // Beside each 77 in there is room for one 11 in.
  CHECK(boards_bound({{in(11), in(1), 3}, {in(77), in(1), 2}}, in(96), in(1), {}) == 3);
}

TEST_CASE("a part that may be turned counts as the lesser of its ways", "[bound]") {
  // Upright, 31 in parts want a 60 in board each; turned, three stand beside each other.
  CHECK(boards_bound({{in(31), in(20), 3}}, in(60), in(31), {}) == 3);
  CHECK(boards_bound({{in(31), in(20), 3, true}}, in(60), in(31), {}) == 1);
  // 31 in squares are over half the board both ways, though three have the area of 1.34 boards.
  CHECK(boards_bound({{in(31), in(31), 3, true}}, in(60), in(36), {}) == 3);
}
