// SPDX-License-Identifier: MIT
#include "slab/splice.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Length sum_of(const std::vector<Length>& pieces, Length gap) {
  Length sum = -gap;
  for (const Length piece : pieces) sum += piece + gap;
  return sum;
}

}  // namespace

TEST_CASE("a length is made of full pieces and what remains", "[splice]") {
  const PieceRule rule{mm(1000), {}, mm(300)};
  CHECK(split(mm(1000), mm(1000), rule) == std::vector<Length>{mm(1000)});
  CHECK(split(mm(2400), mm(1000), rule) == std::vector<Length>{mm(1000), mm(1000), mm(400)});
  CHECK(split(mm(2200), mm(1000), rule) == std::vector<Length>{mm(1000), mm(900), mm(300)});
  CHECK(split(mm(2000), mm(700), rule) == std::vector<Length>{mm(700), mm(1000), mm(300)});
}

TEST_CASE("a gap alone never makes a piece of no length", "[splice]") {
  // 1000 and a gap of 3 leave -2 of 1001 mm.
  const PieceRule rule{mm(1000), mm(3), mm(75)};
  CHECK(split(mm(1001), mm(1000), rule) == std::vector<Length>{mm(923), mm(75)});
  CHECK(split(mm(2003), mm(1000), rule) == std::vector<Length>{mm(1000), mm(1000)});
}

TEST_CASE("split pieces add up and stay within the board whatever the numbers", "[splice]") {
  Draw draw(11);
  for (int round = 0; round < 2000; ++round) {
    const PieceRule rule{mm(draw.whole(100, 2000)), mm(draw.whole(0, 5)), mm(draw.whole(10, 400))};
    const Length whole = mm(draw.whole(1, 9000));
    const Stagger stagger{mm(draw.whole(-30, 30)), mm(draw.whole(50, 150)),
                          joints(split(whole, rule.full, rule), {}, rule.gap)};
    for (const auto& pieces : {split(whole, rule.full, rule), split_apart(whole, rule, stagger)}) {
      CAPTURE(round);
      CHECK(sum_of(pieces, rule.gap) == whole);
      CHECK(*std::max_element(pieces.begin(), pieces.end()) <= rule.full);
      CHECK(*std::min_element(pieces.begin(), pieces.end()) > Length{});
    }
  }
}

TEST_CASE("joints keep apart also where both runs are alike", "[splice]") {
  const PieceRule rule{mm(2400), {}, mm(300)};
  const auto beside = joints(split(mm(6000), mm(2400), rule), {}, {});
  const auto other = split_apart(mm(6000), rule, {{}, mm(150), beside});
  CHECK(other.size() == 3);
  for (const Length a : joints(other, {}, {})) {
    for (const Length b : beside) CHECK((a - b >= mm(150) || b - a >= mm(150)));
  }
}

TEST_CASE("both ends are tried and joints just far enough apart will do", "[splice]") {
  const PieceRule rule{mm(2400), {}, mm(300)};
  const std::vector<Length> from_left{mm(2400), mm(2400), mm(1200)};
  const std::vector<Length> from_right{mm(1200), mm(2400), mm(2400)};
  const auto beside = [&](const std::vector<Length>& joints) {
    return split_apart(mm(6000), rule, {{}, mm(150), joints});
  };
  CHECK(beside({mm(2400), mm(4800)}) == from_right);
  CHECK(beside({mm(1200), mm(3600)}) == from_left);
  CHECK(beside({mm(1350), mm(2400)}) == from_right);
  CHECK(beside({mm(2400), mm(3450)}) == from_right);
}

TEST_CASE("where no joints keep apart the run starts from the other end", "[splice]") {
  const PieceRule rule{mm(1000), {}, mm(300)};
  CHECK(split_apart(mm(2400), rule, {{}, mm(5000), {mm(1000)}}) ==
        std::vector<Length>{mm(400), mm(1000), mm(1000)});
}

TEST_CASE("a short last piece shares equally where the rule says so", "[splice]") {
  CHECK(split(mm(2200), mm(1000), {mm(1000), {}, mm(300), true}) ==
        std::vector<Length>{mm(1000), mm(600), mm(600)});
  CHECK(split(mm(2400), mm(1000), {mm(1000), {}, mm(300), true}) ==
        std::vector<Length>{mm(1000), mm(1000), mm(400)});
}
