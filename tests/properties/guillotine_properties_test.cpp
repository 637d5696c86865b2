// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>
#include <tuple>

#include "support/guillotine.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// Pieces one by one, as bits of a set.
class Exhaustive {
 public:
  explicit Exhaustive(const GuillotineProblem& problem) : stocks_(problem.stocks) {
    for (const RectangleItem& item : problem.items) {
      for (int n = 0; n < item.demand; ++n) pieces_.push_back(item);
    }
  }

  /// Pieces unplaced, cost, sheets.
  using Worth = std::tuple<int, std::int64_t, int>;

  Worth best() { return best(all()); }

 private:
  [[nodiscard]] unsigned all() const { return (1U << pieces_.size()) - 1; }

  /// The first piece left out, or on some sheet with some of the others.
  Worth best(unsigned left) {
    if (left == 0) return {0, 0, 0};
    const unsigned first = left & (~left + 1);
    Worth least = best(left & ~first);
    ++std::get<0>(least);
    for (SheetStock& stock : stocks_) {
      if (stock.available <= 0) continue;
      for (unsigned set = left; set != 0; set = (set - 1) & left) {
        if ((set & first) == 0 || !holds(stock.length, stock.width, set)) continue;
        --stock.available;
        Worth worth = best(left & ~set);
        ++stock.available;
        std::get<1>(worth) += stock.cost;
        ++std::get<2>(worth);
        least = std::min(least, worth);
      }
    }
    return least;
  }

  bool holds(std::int64_t length, std::int64_t width, unsigned set) {
    return holds(length, width, set, true, 3) || holds(length, width, set, false, 3);
  }

  /// Top down: every place of the first cut, every way to share the pieces out; on in the same
  /// direction, or in the other at the price of a stage.
  bool holds(std::int64_t length, std::int64_t width, unsigned set, bool across_x, int stages) {
    if (set == 0) return true;
    const bool one = (set & (set - 1)) == 0;
    if (one && is_size(length, width, set)) return true;
    if (stages == 0) return false;
    const std::tuple key(length, width, set, across_x, stages);
    const auto known = known_.find(key);
    if (known != known_.end()) return known->second;
    bool held = holds(length, width, set, !across_x, stages - 1);
    const std::int64_t end = across_x ? length : width;
    for (std::int64_t at = 1; at < end && !held; ++at) {
      for (unsigned part = set; !held; part = (part - 1) & set) {
        held = across_x ? holds(at, width, part, true, stages) &&
                              holds(length - at, width, set & ~part, true, stages)
                        : holds(length, at, part, false, stages) &&
                              holds(length, width - at, set & ~part, false, stages);
        if (part == 0) break;
      }
    }
    return known_[key] = held;
  }

  [[nodiscard]] bool is_size(std::int64_t length, std::int64_t width, unsigned one) const {
    std::size_t i = 0;
    while (one >> i != 1U) ++i;
    const RectangleItem& p = pieces_[i];
    return (p.length == length && p.width == width) ||
           (p.may_turn && p.width == length && p.length == width);
  }

  std::vector<SheetStock> stocks_;
  std::vector<RectangleItem> pieces_;
  std::map<std::tuple<std::int64_t, std::int64_t, unsigned, bool, int>, bool> known_;
};

GuillotineProblem small_job(Draw& draw) {
  GuillotineProblem job;
  int pieces = draw.whole(1, 5);
  while (pieces > 0) {
    RectangleItem item{draw.whole(1, 7), draw.whole(1, 7), std::min(pieces, draw.whole(1, 3))};
    item.may_turn = !draw.one_in(3);
    pieces -= item.demand;
    job.items.push_back(item);
  }
  for (int s = draw.whole(1, 3); s > 0; --s) {
    job.stocks.push_back({draw.whole(4, 9), draw.whole(4, 9), draw.whole(1, 4)});
    if (draw.one_in(3)) job.stocks.back().available = draw.whole(0, 2);
  }
  if (draw.one_in(2)) {
    job.stocks.insert(job.stocks.begin(),
                      {draw.whole(2, 6), draw.whole(2, 6), 0, draw.whole(1, 2)});
  }
  return job;
}

GuillotineProblem large_job(Draw& draw) {
  GuillotineProblem job;
  for (int i = draw.whole(1, 20); i > 0; --i) {
    job.items.push_back({draw.whole(100, 1500), draw.whole(40, 900), draw.whole(0, 6)});
    job.items.back().may_turn = !draw.one_in(20);
  }
  job.stocks.push_back({1524, 914, 1});
  if (draw.one_in(2)) job.stocks.push_back({2440, 1220, 2, draw.whole(0, 5)});
  if (draw.one_in(2)) job.stocks.push_back({draw.whole(200, 900), 600, 0, draw.whole(1, 3)});
  return job;
}

}  // namespace

TEST_CASE("small sheet jobs meet the optimum of an exhaustive search", "[properties][guillotine]") {
  Draw draw(31);
  for (int round = 0; round < 100; ++round) {
    CAPTURE(round);
    const GuillotineProblem job = small_job(draw);
    const GuillotinePlan plan = cut_guillotine(job);
    const Exhaustive::Worth worth{unplaced_of(plan), plan.cost,
                                  static_cast<int>(plan.sheets.size())};
    REQUIRE(is_sound(plan, job));
    REQUIRE(worth == Exhaustive(job).best());
    CHECK(plan.proven);
    CHECK(plan.cost_bound == plan.cost);
    GuillotineProblem alike = job;
    for (SheetStock& stock : alike.stocks) stock.cost = 1;
    CHECK(plan.sheet_bound == std::get<2>(Exhaustive(alike).best()));
  }
}

TEST_CASE("the bound without effort never beats an exhaustive search", "[properties][guillotine]") {
  Draw draw(32);
  int proven = 0;
  constexpr int rounds = 100;
  for (int round = 0; round < rounds; ++round) {
    CAPTURE(round);
    const GuillotineProblem job = small_job(draw);
    const GuillotinePlan plan = cut_guillotine(job, {1, 1000});
    REQUIRE(is_sound(plan, job));
    if (unplaced_of(plan) > 0) continue;
    const auto [unplaced, cost, sheets] = Exhaustive(job).best();
    CHECK(plan.cost_bound <= cost);
    if (plan.proven) CHECK(plan.cost == cost);
    proven += int{plan.proven};
  }
  // No promise, but a plan or a bound that is seldom good would be a bug.
  CHECK(proven >= rounds / 3);
}

TEST_CASE("large sheet jobs can be sawn as planned", "[properties][guillotine]") {
  Draw draw(33);
  for (int round = 0; round < 100; ++round) {
    CAPTURE(round);
    const GuillotineProblem job = large_job(draw);
    const GuillotinePlan plan = cut_guillotine(job, {20000, 300000});
    CHECK(is_sound(plan, job));
    CHECK(unplaced_of(plan) == 0);
  }
}

TEST_CASE("the order of the items does not change what sheets cost", "[properties][guillotine]") {
  Draw draw(34);
  for (int round = 0; round < 100; ++round) {
    CAPTURE(round);
    GuillotineProblem job = small_job(draw);
    const GuillotinePlan plan = cut_guillotine(job);
    std::reverse(job.items.begin(), job.items.end());
    const GuillotinePlan turned = cut_guillotine(job);
    REQUIRE(turned.sheets.size() == plan.sheets.size());
    CHECK(turned.cost == plan.cost);
    CHECK(turned.cost_bound == plan.cost_bound);
    std::multiset<std::vector<std::tuple<std::int64_t, std::int64_t, std::int64_t, std::int64_t>>>
        layouts;
    const auto layout = [](const CutSheet& sheet) {
      std::vector<std::tuple<std::int64_t, std::int64_t, std::int64_t, std::int64_t>> places;
      for (const CutPiece& p : sheet.pieces) places.emplace_back(p.x, p.y, p.length, p.width);
      return places;
    };
    for (const CutSheet& sheet : plan.sheets) layouts.insert(layout(sheet));
    for (const CutSheet& sheet : turned.sheets) {
      const auto same = layouts.find(layout(sheet));
      REQUIRE(same != layouts.end());
      layouts.erase(same);
    }
  }
}
