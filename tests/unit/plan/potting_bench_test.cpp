// SPDX-License-Identifier: MIT
// The greenhouse potting bench (invented), worked by hand from the file to the bags. The
// arithmetic stands beside each figure.
#include <catch2/catch.hpp>
#include <map>
#include <utility>

#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"

using namespace strikeoff;

namespace {

constexpr const char* bench = R"({
  "units": "us",
  "slabs": [{
    "name": "bench",
    "base": {"rectangle": {"length": "76 in", "depth": "24 in"}},
    "overhang": "1 1/8 in",
    "thickness": "1 3/4 in",
    "panel": {"stock": {"name": "backer", "length": "52 in", "width": "34 in",
                        "thickness": "7/16 in"},
              "overhang": "1/2 in"}
  }],
  "mix": "rapid-fine-48lb",
  "forms": {
    "strip_stock": [{"name": "board", "length": "84 in", "width": "13 1/2 in",
                     "thickness": "5/8 in"}],
    "kerf": "1/8 in", "oversize": "1/8 in", "corner": "through"
  }
})";

Plan plan_bench() {
  const ReadResult read = read_job(bench);
  REQUIRE(read.diagnostics.empty());
  return make_plan(*read.job);
}

/// How many of each part: (width, length) in inches.
std::map<std::pair<double, double>, int> parts_of(const Plan& plan, const std::string& role) {
  std::map<std::pair<double, double>, int> found;
  for (const Part& part : plan.cut_list.parts) {
    if (part.role == role) found[{part.width.in_in(), part.length.in_in()}] += part.quantity;
  }
  return found;
}

constexpr double cubic_inches_to_litres = 0.016387064;  // 2.54^3 / 1000, exact

}  // namespace

TEST_CASE("the potting bench is measured exactly", "[potting-bench]") {
  const SlabPlan slab = plan_bench().slabs.at(0);
  // 76 + 2 x 1 1/8 by 24 + 2 x 1 1/8 = 78 1/4 x 26 1/4 in.
  CHECK(slab.outline == corners_of({{Length::inches(-1.125), Length::inches(-1.125)},
                                    Length::inches(78.25),
                                    Length::inches(26.25)}));
  CHECK(slab.area.si() == Approx(2054.0625 * 0.0254 * 0.0254).epsilon(1e-12));
  CHECK(slab.perimeter == Length::inches(209));
  // The panel is 77 x 25 x 7/16 in.
  CHECK(in_litres(slab.panel_displacement) ==
        Approx(842.1875 * cubic_inches_to_litres).epsilon(1e-12));
  // 2054.0625 x 1 3/4 - 842.1875 = 2752.421875 in3 = 45.10411 L.
  CHECK(in_litres(slab.concrete) == Approx(2752.421875 * cubic_inches_to_litres).epsilon(1e-12));
  CHECK(in_litres(slab.concrete) == Approx(45.10411).margin(5e-6));
  CHECK(slab.edge_thickness == Length::inches(1.75));
  CHECK(slab.least_thickness == Length::inches(1.3125));
}

TEST_CASE("the potting bench is formed by eight strips from one board", "[potting-bench]") {
  const Plan plan = plan_bench();
  CHECK(parts_of(plan, "soffit strip") ==
        std::map<std::pair<double, double>, int>{{{1.125, 78.25}, 2}, {{1.125, 24}, 2}});
  // 5/8 + 1 3/4 + 1/8 = 2 1/2 in high; the long ones pass: 78 1/4 + 2 x 5/8 = 79 1/2 in.
  CHECK(parts_of(plan, "edge strip") ==
        std::map<std::pair<double, double>, int>{{{2.5, 79.5}, 2}, {{2.5, 26.25}, 2}});
  const StockTotal* board = nullptr;
  for (const StockTotal& total : plan.cut_list.totals) {
    if (total.stock == "board") board = &total;
  }
  REQUIRE(board != nullptr);
  CHECK(board->used == 1);
  CHECK(board->buy == 1);
  CHECK(board->bound == 1);
  CHECK(board->proven);
  // Three strips of 2 1/2 in and three of 1 1/8 in with six kerfs take 11 5/8 of 13 1/2 in.
  REQUIRE(plan.cut_list.boards.size() == 1);
  const Board& cut = plan.cut_list.boards[0];
  REQUIRE(cut.strips.size() == 6);
  Length taken;
  for (const Strip& strip : cut.strips) taken += strip.width + Length::inches(0.125);
  CHECK(taken == Length::inches(11.625));
}

TEST_CASE("the potting bench takes four bags and 14.8 quarts", "[potting-bench]") {
  const MixPlan mix = plan_bench().mix;
  // 1.592837 ft3 x 1.1 / 0.44 ft3 = 3.982.
  CHECK(mix.bags_exact == Approx(3.982).margin(5e-4));
  CHECK(mix.bags == 4);
  CHECK(mix.spare_bags == 1);
  CHECK(in_quarts(mix.water_per_bag) == Approx(3.7));  // the middle of 3.2 and 4.2 qt
  CHECK(in_quarts(mix.water_total) == Approx(14.8));
  // 4 x 0.44 / 1.592837 = 1.1049.
  CHECK(mix.bags * mix.yield.si() / mix.concrete.si() == Approx(1.1049).margin(5e-5));
  // The plain box 78 1/4 x 26 1/4 x 1 3/4 in = 2.0802 ft3 would ask for 5.2, so 6 bags.
  const double box = 78.25 * 26.25 * 1.75 / 1728;
  CHECK(std::ceil(box * 1.1 / 0.44) == 6);
}

TEST_CASE("the potting bench is poured in four equal batches at a beat", "[potting-bench]") {
  const Plan plan = plan_bench();
  REQUIRE(plan.batches.size() == 4);
  // One mixer: load 1 + mix 3 + discharge 0.5 + reset 0.5 = 5 min, slower than carrying
  // (0.5 + 0.5 + 0.5) and placing (3). Lead: 3 + 0.5 + 0.5 + 3 = 7 min.
  CHECK(in_minutes(plan.pour.takt) == Approx(5));
  CHECK(in_minutes(plan.pour.lead) == Approx(7));
  CHECK(plan.pour.gap == 1);
  CHECK(in_minutes(plan.pour.edge_wait_max) == Approx(12));
  CHECK(in_minutes(plan.pour.end) == Approx(3 * 5 + 7));
  // Solids 0.22 x 48 lb at 68 F, 3.7 qt (7.7195 lb of water at 1 kg/L) at 15 C:
  // (10.56 x 20 + 7.7195 x 15) / 18.2795 = 17.888 C, cooler than the label's 68 F, so longer:
  // exp(30000/8.314 x (1/291.038 - 1/293.15)) = 1.0934.
  CHECK(plan.pour.mix_temperature.in_c() == Approx(17.888).margin(5e-3));
  CHECK(plan.pour.temperature_factor == Approx(1.0934).margin(1e-3));
  CHECK(in_minutes(*plan.pour.usable) == Approx(0.6 * 22 * 1.0934).margin(0.02));
  CHECK(plan.pour.feasible);
  for (const Batch& batch : plan.batches) {
    CAPTURE(batch.number);
    CHECK(in_quarts(batch.water) == Approx(3.7));
    CHECK(in_litres(batch.zone) == Approx(45.10411 / 4).margin(1e-5));
    CHECK(in_minutes(batch.contact) == Approx(5 * (batch.number - 1)));
  }
}
