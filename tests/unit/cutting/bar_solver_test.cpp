// SPDX-License-Identifier: MIT
#include "cutting/bar_solver.h"

#include <catch2/catch.hpp>
#include <limits>

#include "support/bar_oracles.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

const std::vector<std::string> nothing;
constexpr int any_number = std::numeric_limits<int>::max();

BarProblem bars(std::vector<BarStock> stocks, std::vector<BarItem> items) {
  BarProblem problem;
  problem.stocks = std::move(stocks);
  problem.items = std::move(items);
  return problem;
}

/// The cost of a plan that is proven and can be cut.
std::int64_t proven_cost(const BarProblem& problem) {
  const BarSolution solution = cut_bars(problem);
  CHECK(faults_of(solution, problem) == nothing);
  CHECK(solution.proven);
  return solution.cost;
}

}  // namespace

TEST_CASE("rolls of three widths are cut from as few as the textbook cuts them from",
          "[cutting][bars]") {
  // Chvatal, Linear Programming, 1983, chapter 13 (from memory): rolls 100 wide; 97 of 45, 610 of
  // 36, 395 of 31, 211 of 14. The continuous optimum is 452.25, and 453 rolls do.
  CHECK(proven_cost(bars({{100, 1, any_number, 1}},
                         {{45, 97, 1}, {36, 610, 1}, {31, 395, 1}, {14, 211, 1}})) == 453);
}

TEST_CASE("a job whose least is a bar above its length divided out is proven", "[cutting][bars]") {
  // Five pieces of 4 are 20, two bars of 10 in length; a bar holds two of them, so three bars.
  CHECK(proven_cost(bars({{10, 1, any_number, 1}}, {{4, 5, 1}})) == 3);
}

TEST_CASE("the cheapest bars are not those of the lowest price per length", "[cutting][bars]") {
  // Three pieces of 4. The bar of 12 at 13 has all of them; by the unit of length the one of 5 at 5
  // is cheaper (1.00 against 1.08), but it takes three: 15.
  CHECK(proven_cost(bars({{12, 13, any_number, 1}, {5, 5, any_number, 1}}, {{4, 3, 1}})) == 13);
}

TEST_CASE("bars on hand go before bars that are bought", "[cutting][bars]") {
  // Two of 6 and one of 4: without the offcut two bars of 10; it takes one 6, and one bar the rest.
  CHECK(proven_cost(bars({{10, 7, any_number, 1}}, {{6, 2, 1}, {4, 1, 1}})) == 14);
  CHECK(proven_cost(bars({{10, 7, any_number, 1}, {6, 0, 1, 1}}, {{6, 2, 1}, {4, 1, 1}})) == 7);
}

TEST_CASE("when the cheap bars run out dear ones are bought", "[cutting][bars]") {
  // Four pieces of 5 in bars of 5: two at 1, then two at 9.
  CHECK(proven_cost(bars({{5, 1, 2, 1}, {5, 9, any_number, 1}}, {{5, 4, 1}})) == 20);
}

TEST_CASE("a job that its bars do not hold has no plan", "[cutting][bars]") {
  CHECK(cut_bars(bars({{10, 1, any_number, 1}}, {{11, 1, 1}})).patterns.empty());
  // Two of 6 need two bars.
  CHECK(cut_bars(bars({{10, 1, 1, 1}}, {{6, 2, 1}})).patterns.empty());
}

TEST_CASE("a plan as dear as a known one is not looked for", "[cutting][bars]") {
  const BarProblem problem = bars({{10, 1, any_number, 1}}, {{4, 5, 1}});  // three bars, as above
  const BarSolution none = cut_bars(problem, {}, 3);
  CHECK(none.patterns.empty());
  CHECK(none.bound == 3);
  CHECK(cut_bars(problem, {}, 4).cost == 3);
}

TEST_CASE("pieces of two widths share a board side by side", "[cutting][bars]") {
  // Strips of 3 and of 2 lie side by side on a board of 5; 2 + 2 pieces of 5 fill its length of 10.
  CHECK(proven_cost(bars({{10, 1, any_number, 5}}, {{5, 2, 3}, {5, 2, 2}})) == 1);
  // A strip of 3 and one of 3 do not.
  CHECK(proven_cost(bars({{10, 1, any_number, 5}}, {{5, 4, 3}})) == 2);
}

TEST_CASE("a third cut saves a board where a narrow piece fits behind a wide one",
          "[cutting][bars]") {
  // A board of 3 takes one strip: the piece of 3 and, in the same strip, the one of 2.
  BarProblem problem = bars({{10, 1, any_number, 3}}, {{6, 1, 3}, {4, 1, 2}});
  CHECK(proven_cost(problem) == 2);
  problem.trim = true;
  CHECK(proven_cost(problem) == 1);
}

TEST_CASE("a million pieces of one length are cut in a moment", "[cutting][bars]") {
  // Two of 5 to a bar of 10.
  CHECK(proven_cost(bars({{10, 1, any_number, 1}}, {{5, 1'000'000, 1}})) == 500'000);
}
