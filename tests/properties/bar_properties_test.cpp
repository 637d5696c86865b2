// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>

#include "cutting/bar_solver.h"
#include "support/arc_flow.h"
#include "support/bar_oracles.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

const std::vector<std::string> nothing;
constexpr int any_number = std::numeric_limits<int>::max();

/// Calls `check` with every choice of at most `most` pieces of these kinds, and at least one.
void for_every_demand(BarProblem problem, int most,
                      const std::function<void(const BarProblem&)>& check) {
  const std::function<void(std::size_t, int)> go = [&](std::size_t i, int left) {
    if (i == problem.items.size()) {
      if (left < most) check(problem);
      return;
    }
    for (int n = 0; n <= left; ++n) {
      problem.items[i].demand = n;
      go(i + 1, left - n);
    }
    problem.items[i].demand = 0;
  };
  go(0, most);
}

/// That the plan can be cut and costs what the oracle says; where there is no plan, none is given.
/// With third cuts the plan may be dearer and the bound lower, but then it is not called proven.
/// Returns whether the plan is an optimum.
bool check_against(const std::optional<std::int64_t>& least, const BarProblem& problem) {
  const BarSolution solution = cut_bars(problem);
  INFO(text_of(problem));
  if (!least) {
    REQUIRE(solution.patterns.empty());
    return true;
  }
  REQUIRE(faults_of(solution, problem) == nothing);
  REQUIRE(solution.bound <= *least);
  REQUIRE(solution.cost >= *least);
  if (!problem.trim) REQUIRE(solution.proven);
  if (solution.proven) REQUIRE(solution.cost == *least);
  return solution.cost == *least;
}

void check_by_trying(const BarProblem& problem) {
  CHECK(check_against(cheapest_by_trying(problem), problem));
}

/// Pieces of every length that fits one of the bars, of every width that fits.
std::vector<BarItem> all_items(const std::vector<BarStock>& stocks) {
  std::int64_t length = 0, width = 0;
  for (const BarStock& stock : stocks) {
    length = std::max(length, stock.length);
    width = std::max(width, stock.width);
  }
  std::vector<BarItem> items;
  for (std::int64_t w = 1; w <= width; ++w) {
    for (std::int64_t l = 1; l <= length; ++l) items.push_back({l, 0, w});
  }
  return items;
}

BarProblem random_bars(Draw& draw) {
  BarProblem problem;
  for (int k = draw.whole(1, 4); k > 0; --k) {
    problem.stocks.push_back({draw.whole(30, 90), draw.whole(30, 95), any_number, 1});
  }
  for (int k = draw.whole(0, 2); k > 0; --k) {
    problem.stocks.push_back({draw.whole(10, 70), 0, draw.whole(1, 3), 1});
  }
  if (draw.one_in(4)) problem.stocks.front().available = draw.whole(0, 4);
  for (int i = draw.whole(1, 10); i > 0; --i) {
    problem.items.push_back({draw.whole(5, 45), draw.whole(1, 5), 1});
  }
  return problem;
}

BarProblem random_boards(Draw& draw) {
  BarProblem problem;
  for (int k = draw.whole(1, 3); k > 0; --k) {
    problem.stocks.push_back(
        {draw.whole(20, 40), draw.whole(30, 95), any_number, draw.whole(8, 20)});
  }
  if (draw.one_in(2)) {
    problem.stocks.push_back({draw.whole(8, 30), 0, draw.whole(1, 2), draw.whole(4, 12)});
  }
  const int widths[] = {draw.whole(2, 8), draw.whole(2, 8), draw.whole(2, 8)};
  for (int i = draw.whole(1, 6); i > 0; --i) {
    problem.items.push_back({draw.whole(3, 20), draw.whole(1, 4), widths[draw.whole(0, 2)]});
  }
  return problem;
}

}  // namespace

TEST_CASE("every job of up to four pieces from one bar length of up to six is cut best",
          "[properties][bars]") {
  for (std::int64_t length = 1; length <= 6; ++length) {
    BarProblem problem;
    problem.stocks.push_back({length, 1, any_number, 1});
    problem.items = all_items(problem.stocks);
    for_every_demand(problem, 4, check_by_trying);
  }
}

TEST_CASE("every job of up to four pieces from two bar lengths of up to five is cut best",
          "[properties][bars]") {
  const std::pair<int, int> costs[] = {{1, 1}, {1, 2}, {2, 3}, {3, 4}, {2, 1}, {0, 1}, {1, 0}};
  for (std::int64_t shorter = 1; shorter <= 5; ++shorter) {
    for (std::int64_t longer = shorter + 1; longer <= 5; ++longer) {
      for (const auto& [cost, other] : costs) {
        // What costs nothing is on hand, and so are a few of the others.
        const int few = cost % 2 == 0 ? 1 : any_number, others = other == 0 ? 2 : any_number;
        BarProblem problem;
        problem.stocks = {{shorter, cost, few, 1}, {longer, other, others, 1}};
        problem.items = all_items(problem.stocks);
        for_every_demand(problem, 4, check_by_trying);
      }
    }
  }
}

TEST_CASE("every job of a few pieces from boards of up to three by three is cut best",
          "[properties][bars]") {
  for (const bool trim : {false, true}) {
    BarProblem problem;
    problem.trim = trim;
    problem.stocks.push_back({3, 1, any_number, 3});
    problem.items = all_items(problem.stocks);
    for_every_demand(problem, 4, check_by_trying);
    // Beside it a narrower board, and an offcut.
    problem.stocks = {{3, 5, any_number, 3}, {3, 3, any_number, 2}, {2, 0, 1, 1}};
    for_every_demand(problem, 3, check_by_trying);
  }
}

TEST_CASE("random small boards are cut as trying everything finds best", "[properties][bars]") {
  Draw draw(41);
  int missed = 0;
  for (int round = 0; round < 150; ++round) {
    CAPTURE(round);
    BarProblem problem = random_boards(draw);
    int pieces = 0;
    for (BarItem& item : problem.items) {
      item.demand = std::min(item.demand, 7 - pieces);
      pieces += item.demand;
    }
    problem.trim = draw.one_in(2);
    missed += check_against(cheapest_by_trying(problem), problem) ? 0 : 1;
  }
  CHECK(missed <= 2);
}

TEST_CASE("random bars cost what an integer program finds least", "[properties][bars]") {
  Draw draw(42);
  int compared = 0;
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const BarProblem problem = random_bars(draw);
    const ArcFlowAnswer answer = arc_flow(problem, 10);
    if (!answer.finished) continue;
    ++compared;
    CHECK(check_against(answer.least, problem));
  }
  CHECK(compared >= 290);
}

TEST_CASE("random boards cost what an integer program finds least", "[properties][bars]") {
  Draw draw(43);
  int compared = 0, missed = 0;
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    BarProblem problem = random_boards(draw);
    problem.trim = draw.one_in(2);
    const ArcFlowAnswer answer = arc_flow(problem, 10);
    if (!answer.finished) continue;
    ++compared;
    missed += check_against(answer.least, problem) ? 0 : 1;
  }
  CHECK(compared >= 190);
  CHECK(missed <= 4);
}

TEST_CASE("with no effort left to search the bound still holds", "[properties][bars]") {
  Draw draw(44);
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    const BarProblem problem = random_bars(draw);
    const BarSolution best = cut_bars(problem);
    const BarSolution hasty = cut_bars(problem, {1, 1});
    INFO(text_of(problem));
    if (best.patterns.empty()) continue;
    REQUIRE(best.proven);
    CHECK(hasty.bound <= best.cost);
    if (!hasty.patterns.empty()) CHECK(faults_of(hasty, problem) == nothing);
    if (hasty.proven) CHECK(hasty.cost == best.cost);
  }
}
