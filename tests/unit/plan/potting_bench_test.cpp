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
    "base": {"rectangle": {"length": "92 in", "depth": "26 in"}},
    "overhang": "1 in",
    "thickness": "1 1/2 in",
    "panel": {"stock": {"name": "backer", "length": "60 in", "width": "36 in",
                        "thickness": "1/2 in"},
              "overhang": "1/4 in"}
  }],
  "mix": "rapid-fine-50lb",
  "forms": {
    "strip_stock": [{"name": "board", "length": "96 in", "width": "15 3/4 in",
                     "thickness": "3/4 in"}],
    "kerf": "1/8 in", "oversize": "1/4 in", "corner": "through"
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
  // 92 + 2 x 1 by 26 + 2 x 1 = 94 x 28 in.
  CHECK(slab.outline ==
        corners_of(
            {{Length::inches(-1), Length::inches(-1)}, Length::inches(94), Length::inches(28)}));
  CHECK(slab.area.si() == Approx(2632 * 0.0254 * 0.0254).epsilon(1e-12));
  CHECK(slab.perimeter == Length::inches(244));
  // The panel is 92 1/2 x 26 1/2 x 1/2 in.
  CHECK(in_litres(slab.panel_displacement) ==
        Approx(1225.625 * cubic_inches_to_litres).epsilon(1e-12));
  // 94 x 28 x 1 1/2 - 1225.625 = 2722.375 in3 = 44.61173 L.
  CHECK(in_litres(slab.concrete) == Approx(2722.375 * cubic_inches_to_litres).epsilon(1e-12));
  CHECK(in_litres(slab.concrete) == Approx(44.61173).margin(5e-6));
  CHECK(slab.edge_thickness == Length::inches(1.5));
  CHECK(slab.least_thickness == Length::inches(1));
}

TEST_CASE("the potting bench is formed by eight strips from one board", "[potting-bench]") {
  const Plan plan = plan_bench();
  CHECK(parts_of(plan, "soffit strip") ==
        std::map<std::pair<double, double>, int>{{{1, 94}, 2}, {{1, 26}, 2}});
  // 3/4 + 1 1/2 + 1/4 = 2 1/2 in high; the long ones pass: 94 + 2 x 3/4 = 95 1/2 in.
  CHECK(parts_of(plan, "edge strip") ==
        std::map<std::pair<double, double>, int>{{{2.5, 95.5}, 2}, {{2.5, 28}, 2}});
  const StockTotal* board = nullptr;
  for (const StockTotal& total : plan.cut_list.totals) {
    if (total.stock == "board") board = &total;
  }
  REQUIRE(board != nullptr);
  CHECK(board->used == 1);
  CHECK(board->buy == 1);
  CHECK(board->bound == 1);
  CHECK(board->proven);
  // Three strips of 2 1/2 in and three of 1 in with six kerfs take 11 1/4 of 15 3/4 in.
  REQUIRE(plan.cut_list.boards.size() == 1);
  const Board& cut = plan.cut_list.boards[0];
  REQUIRE(cut.strips.size() == 6);
  Length taken;
  for (const Strip& strip : cut.strips) taken += strip.width + Length::inches(0.125);
  CHECK(taken == Length::inches(11.25));
}

TEST_CASE("the potting bench takes four bags and sixteen quarts", "[potting-bench]") {
  const MixPlan mix = plan_bench().mix;
  // 1.575448 ft3 x 1.1 / 0.45 ft3 = 3.851.
  CHECK(mix.bags_exact == Approx(3.851).margin(5e-4));
  CHECK(mix.bags == 4);
  CHECK(mix.spare_bags == 1);
  CHECK(in_quarts(mix.water_per_bag) == Approx(4));  // the middle of 3.5 and 4.5 qt
  CHECK(in_quarts(mix.water_total) == Approx(16));
  // 4 x 0.45 / 1.575448 = 1.1425.
  CHECK(mix.bags * mix.yield.si() / mix.concrete.si() == Approx(1.1425).margin(5e-5));
  // The plain box 94 x 28 x 1 1/2 in = 2.2847 ft3 would ask for 5.585, so 6 bags.
  const double box = 94 * 28 * 1.5 / 1728;
  CHECK(std::ceil(box * 1.1 / 0.45) == 6);
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
  // Solids 0.22 x 50 lb at 70 F, 4 qt (8.3454 lb of water at 1 kg/L) at 15 C:
  // (11 x 21.111 + 8.3454 x 15) / 19.3454 = 18.475 C, cooler than the label's 70 F, so longer:
  // exp(30000/8.314 x (1/291.625 - 1/294.261)) = 1.117.
  CHECK(plan.pour.mix_temperature.in_c() == Approx(18.475).margin(5e-3));
  CHECK(plan.pour.temperature_factor == Approx(1.117).margin(1e-3));
  CHECK(in_minutes(*plan.pour.usable) == Approx(0.6 * 20 * 1.117).margin(0.02));
  CHECK(plan.pour.feasible);
  for (const Batch& batch : plan.batches) {
    CAPTURE(batch.number);
    CHECK(in_quarts(batch.water) == Approx(4));
    CHECK(in_litres(batch.zone) == Approx(44.61173 / 4).margin(1e-5));
    CHECK(in_minutes(batch.contact) == Approx(5 * (batch.number - 1)));
  }
}
