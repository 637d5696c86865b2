// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>

#include "cutting/board_plan.h"
#include "cutting/bound.h"
#include "cutting/cut_list.h"
#include "cutting/verify.h"
#include "render/json_parts.h"
#include "support/cutting.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

const std::vector<std::string> nothing;

struct CutJob {
  std::vector<Part> parts;
  std::vector<Stock> boards, sheets;
  std::vector<OnHand> on_hand;
  Saw saw;
};

CutJob random_job(Draw& draw) {
  CutJob job;
  job.saw = {mm(draw.whole(0, 4)), mm(draw.whole(0, 1) * 10)};
  const bool priced = draw.one_in(2);
  for (int i = draw.whole(1, 3); i > 0; --i) {
    Stock stock{"board " + std::to_string(i),
                "",
                mm(draw.whole(8, 40) * 100),
                mm(draw.whole(50, 300)),
                mm(18),
                {},
                {}};
    stock.name = stock.id;
    if (priced) stock.price = draw.whole(3, 30);
    if (draw.one_in(4)) stock.quantity = draw.whole(0, 3);
    if (draw.one_in(4)) job.on_hand.push_back({stock.id, double(draw.whole(1, 2)), {}, {}});
    if (draw.one_in(4)) {
      job.on_hand.push_back({stock.id, 2.5, mm(draw.whole(300, 800)), mm(draw.whole(40, 100))});
    }
    job.boards.push_back(stock);
  }
  job.sheets.push_back(sheet(60, 36));
  if (draw.one_in(3)) job.on_hand.push_back({"panel", 1, mm(700), mm(400)});
  for (int i = draw.whole(0, 12); i > 0; --i) {
    const Length width = mm(draw.whole(1, 6) * 20);
    job.parts.push_back(
        strip_part("E" + std::to_string(i), width, mm(draw.whole(100, 3000)), draw.whole(1, 4)));
  }
  for (int i = draw.whole(0, 6); i > 0; --i) {
    job.parts.push_back(panel_part("P" + std::to_string(i), mm(draw.whole(300, 1600)),
                                   mm(draw.whole(75, 900)), draw.whole(1, 3)));
  }
  return job;
}

CutList cut(const CutJob& job) {
  return cut_parts(job.parts, job.boards, job.sheets, job.on_hand, job.saw);
}

/// The fewest bins for these sizes, by trying every assignment (small counts only).
int fewest_bins(const std::vector<Length>& sizes, Length capacity) {
  int best = static_cast<int>(sizes.size());
  std::vector<Length> room;
  const std::function<void(std::size_t)> assign = [&](std::size_t i) {
    if (static_cast<int>(room.size()) >= best) return;
    if (i == sizes.size()) {
      best = static_cast<int>(room.size());
      return;
    }
    for (std::size_t bin = 0; bin < room.size(); ++bin) {
      if (sizes[i] > room[bin]) continue;
      room[bin] -= sizes[i];
      assign(i + 1);
      room[bin] += sizes[i];
    }
    room.push_back(capacity - sizes[i]);
    assign(i + 1);
    room.pop_back();
  };
  assign(0);
  return best;
}

}  // namespace

TEST_CASE("every cut list can be cut as it stands", "[properties][cutting]") {
  Draw draw(21);
  for (int round = 0; round < 2000; ++round) {
    CAPTURE(round);
    const CutJob job = random_job(draw);
    const CutList list = cut(job);
    CHECK(cut_violations(list, job.boards, job.sheets, job.on_hand, job.saw) == nothing);
  }
}

TEST_CASE("a cut list is the same bytes whatever the order of its parts", "[properties][cutting]") {
  // But for the parts themselves and those left over, which are listed in the order of the job.
  const auto bytes_of = [](CutList list) {
    list.parts.clear();
    std::sort(list.unplaced.begin(), list.unplaced.end());
    return written(json::cut_list(list));
  };
  Draw draw(22);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    CutJob job = random_job(draw);
    const std::string before = bytes_of(cut(job));
    for (std::size_t i = job.parts.size(); i > 1; --i) {
      const int other = draw.whole(0, static_cast<int>(i) - 1);
      std::swap(job.parts[i - 1], job.parts[static_cast<std::size_t>(other)]);
    }
    REQUIRE(bytes_of(cut(job)) == before);
  }
}

TEST_CASE("thousands of one part are cut from as many boards as they fill",
          "[properties][cutting]") {
  // Four of 600 to 2400 without a kerf; two strips of 50 to 100.
  const Stock stock{"board", "board", mm(2400), mm(100), mm(18), {}, {}};
  const std::vector<Part> parts{strip_part("E1", mm(50), mm(600), 4'000)};
  const CutList list = cut_parts(parts, {stock}, {}, {}, {});
  CHECK(total_of(list, "board").used == 500);
  CHECK(total_of(list, "board").proven);
}

TEST_CASE("small jobs from one width meet the optimum found by trying everything",
          "[properties][cutting]") {
  Draw draw(23);
  int optimal = 0, proven = 0;
  constexpr int rounds = 500;
  for (int round = 0; round < rounds; ++round) {
    CAPTURE(round);
    const Length capacity = mm(2400), kerf = mm(3);
    std::vector<Part> parts;
    std::vector<Length> sizes;
    for (int i = draw.whole(1, 9); i > 0; --i) {
      const Length length = mm(draw.whole(20, 160) * 10);
      parts.push_back(strip_part("E" + std::to_string(i), mm(50), length));
      sizes.push_back(length + kerf);
    }
    const Stock stock{"board", "board", capacity, mm(50), mm(18), {}, {}};
    const CutList list = cut_parts(parts, {stock}, {}, {}, {kerf, {}});
    const int fewest = fewest_bins(sizes, capacity + kerf);
    const StockTotal& total = list.totals.front();
    CHECK(total.bound <= fewest);
    CHECK(total.used >= fewest);
    if (total.proven) CHECK(total.used == fewest);
    optimal += int{total.used == fewest};
    proven += int{total.proven};
  }
  // No promise, but a plan that is often worse would be a bug.
  CHECK(optimal >= rounds * 99 / 100);
  CHECK(proven >= rounds * 90 / 100);
}

TEST_CASE("thousands of parts are cut in a moment", "[properties][cutting]") {
  Draw draw(24);
  std::vector<Part> parts;
  for (int i = 0; i < 5000; ++i) {
    parts.push_back(
        strip_part("E" + std::to_string(i), mm(draw.whole(20, 140)), mm(draw.whole(100, 2400))));
  }
  for (int i = 0; i < 2000; ++i) {
    parts.push_back(
        panel_part("P" + std::to_string(i), mm(draw.whole(100, 1500)), mm(draw.whole(75, 900))));
  }
  Stock second = board(96, 5.5);
  second.id = second.name = "second";
  const std::vector<Stock> boards{board(96, 12), second}, sheets{sheet(60, 36)};
  const Saw saw{mm(3), {}};
  const CutList list = cut_parts(parts, boards, sheets, {}, saw);
  CHECK(cut_violations(list, boards, sheets, {}, saw) == nothing);
  CHECK(list.unplaced.empty());
}

TEST_CASE("an exact plan costs no more than the first one and no less than its bound",
          "[properties][cutting]") {
  Draw draw(25);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const Saw saw{mm(draw.whole(0, 4)), {}};
    std::vector<BoardSource> sources;
    for (int k = draw.whole(1, 3); k > 0; --k) {
      sources.push_back({0,
                         false,
                         mm(draw.whole(12, 40) * 100),
                         mm(draw.whole(120, 300)),
                         {},
                         double(draw.whole(3, 30))});
    }
    std::vector<BoardItem> items;
    for (int i = draw.whole(1, 20); i > 0; --i) {
      items.push_back(
          {mm(draw.whole(1, 6) * 20), mm(draw.whole(100, 1200)), static_cast<std::size_t>(i)});
    }
    const auto cost_of = [&](const BoardPacking& packing) {
      double sum = 0;
      for (const PackedBoard& board : packing.boards) sum += sources[board.source].cost;
      return sum;
    };
    const double first = cost_of(pack_boards(items, sources, saw));
    const BoardPlan plan = plan_boards(items, sources, 1, saw);
    CHECK(cost_of(plan.packing) <= first);
    CHECK(plan.cost_bound <= cost_of(plan.packing));
    CHECK(plan.stock_bounds[0] <= static_cast<int>(plan.packing.boards.size()));
  }
}
