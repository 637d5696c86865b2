// SPDX-License-Identifier: MIT
#include <cmath>

#include "support/worked_by_hand.h"

using namespace strikeoff;
using namespace strikeoff::test;

// examples/potting-bench worked out by hand, step by step.

namespace {

constexpr double g = 9.80665;                      // m/s2
constexpr double inch = 25.4;                      // mm
constexpr double cubic_inch = 0.016387064;         // L
constexpr double pound = 0.45359237;               // kg
constexpr double water_a_bag = 3.7 * 0.946352946;  // L: 3.7 qt
constexpr double bag = 48 * pound;                 // kg
constexpr double bag_yield = 0.44 * 28.316846592;  // L: 0.44 ft3
constexpr double air = (82 - 32) / 1.8;            // C

const Plan& bench() {
  static const Plan plan = example_plan("potting-bench");
  return plan;
}

/// 0.22 of a kilogram of dry mix takes as much heat as a kilogram of water; bags as warm as the
/// air, water 15 C: (0.22 x 21.77 x 27.78 + 3.502 x 15) / (0.22 x 21.77 + 3.502) = 22.38 C.
double mix_temperature() {
  return (0.22 * bag * air + water_a_bag * 15) / (0.22 * bag + water_a_bag);
}

/// Warmer than the label's 68 F = 293.15 K, so 50 kJ/mol: exp(50000/8.314 (1/295.53 - 1/293.15)) =
/// 0.8476.
double factor() {
  const double mix = mix_temperature() + 273.15, label = (68 - 32) / 1.8 + 273.15;
  return std::exp(50000 / 8.314 * (1 / mix - 1 / label));
}

/// Uno 1998, SI form; nobody says how dry the air is, so 30 %; no wind.
double evaporation(double top) {
  return 5 * (std::pow(top + 18, 2.5) - 0.30 * std::pow(air + 18, 2.5)) * (0 + 4) * 1e-6;
}

}  // namespace

TEST_CASE("the potting bench's concrete and bags are what hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  const SlabPlan& slab = plan.slabs.at(0);
  // Base 76 x 24 in and 1 1/8 in all round: 78 1/4 x 26 1/4 = 2054.0625 in2, round it 209 in.
  REQUIRE(slab.area.si() == by_hand(2054.0625 * inch * inch / 1e6));
  REQUIRE(slab.perimeter.in_mm() == by_hand(209 * inch));
  // Panel 77 x 25 x 7/16 in = 842.1875 in3; slab 2054.0625 x 1 3/4 = 3594.609375 in3.
  REQUIRE(in_litres(slab.panel_displacement) == by_hand(842.1875 * cubic_inch));
  REQUIRE(in_litres(slab.concrete) == by_hand((3594.609375 - 842.1875) * cubic_inch));
  // 45.10 L x 1.10 / 12.46 = 3.982 bags: 4.
  const double concrete = 2752.421875 * cubic_inch;
  REQUIRE(plan.mix.bags_exact == by_hand(concrete * 1.10 / bag_yield));
  REQUIRE(plan.mix.bags == 4);
  REQUIRE(in_litres(plan.mix.surplus) == by_hand(4 * bag_yield - concrete * 1.10));
  REQUIRE(in_litres(plan.mix.water_total) == by_hand(4 * water_a_bag));
  // (21.77 kg + 3.502 kg) / 12.46 L = 2029 kg/m3; 45.10 L weigh 91.49 kg.
  const double density = (bag + water_a_bag) / bag_yield;  // kg/L
  REQUIRE(plan.mix.fresh_density.si() == by_hand(density * 1000));
  REQUIRE(slab.mass.si() == by_hand(concrete * density));
  // On 76 x 24 in = 1.177 m2: 91.49 x 9.807 / 1.177 = 762 Pa.
  REQUIRE(slab.base_load.si() == by_hand(concrete * density * g / (76 * 24 * inch * inch / 1e6)));
}

TEST_CASE("the potting bench's pour is what hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  REQUIRE(plan.pour.mix_temperature.in_c() == by_hand(mix_temperature()));
  REQUIRE(plan.pour.temperature_factor == by_hand(factor()));
  // 22 min and half a dose of 9 min: 26.5 min, x 0.8476 = 22.46 min, of which 60 % may be used.
  REQUIRE(plan.pour.retarder_per_bag == 0.5);
  REQUIRE(in_minutes(*plan.pour.working_time) == by_hand(26.5 * factor()));
  REQUIRE(in_minutes(*plan.pour.usable) == by_hand(0.6 * 26.5 * factor()));
  // The mixer: load 1, mix 3, tip out 0.5, reset 0.5 = 5 min a batch. A batch: mix 3, tip out 0.5,
  // carry 0.5, place 3 = 7 min from water to placed. The joint waits 5 + 7 = 12 min, the fourth
  // batch is placed 3 x 5 + 7 = 22 min after the first water.
  REQUIRE(in_minutes(plan.pour.takt) == by_hand(5));
  REQUIRE(in_minutes(plan.pour.lead) == by_hand(7));
  REQUIRE(in_minutes(plan.pour.edge_wait_max) == by_hand(12));
  REQUIRE(in_minutes(plan.pour.end) == by_hand(22));
  REQUIRE(in_minutes(*plan.pour.margin) == by_hand(0.6 * 26.5 * factor() - 12));
  // Without the half dose 0.6 x 22 x 0.8476 = 11.19 min are not enough for 12.
  REQUIRE(0.6 * 22 * factor() < 12);
  // A bucket 9 1/2 in wide at its foot, 11 in at its brim 13 3/4 in up: filled to the mark it holds
  // pi h (a2 + a b + b2)/3 = 3.7 qt.
  const double mark = plan.batches.at(0).bucket_mark->in_mm() / inch;
  const double foot = 9.5 / 2, there = foot + 0.75 * mark / 13.75;
  const double held = std::acos(-1.0) * mark * (foot * foot + foot * there + there * there) / 3;
  REQUIRE(held * cubic_inch == by_hand(water_a_bag));
}

TEST_CASE("the potting bench's air and cure are what hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  const double rate = evaporation(mix_temperature());
  REQUIRE(in_kilograms_per_m2_h(plan.site.evaporation) == by_hand(rate));
  REQUIRE(in_kilograms_per_m2_h(plan.site.evaporation_least) == by_hand(0.6 * rate));
  REQUIRE(in_kilograms_per_m2_h(plan.site.evaporation_most) == by_hand(1.4 * rate));
  // The bag's mix sets fast: 10 C warmer than the air while it is kept wet, for an hour. 0.2 mm of
  // water on the bare top last 0.2 / (1.4 E) h, 0.6 mm in damp cloth three times as long, and ten
  // times as long under a sheet.
  const double cure = evaporation(air + 10);
  REQUIRE(in_kilograms_per_m2_h(plan.site.cure_evaporation) == by_hand(cure));
  REQUIRE(in_hours(*plan.site.wettings.at(0).every) == by_hand(0.2 / (1.4 * cure)));
  REQUIRE(in_hours(*plan.site.wettings.at(1).every) == by_hand(0.6 / (1.4 * cure)));
  REQUIRE(in_hours(*plan.site.wettings.at(2).every) == by_hand(2.0 / (1.4 * cure)));
  // Under the sheet: 0.2 mm at first and an hour's 1.4 E / 10, on 1.325 m2.
  const double top = 2054.0625 * inch * inch / 1e6;
  REQUIRE(in_litres(plan.site.cure_water) == by_hand(top * (0.2 + 1.4 * cure / 10 * 1)));
}

TEST_CASE("the potting bench hardens as hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  // Air warmer than the label never hastens the later work: 2 h after the end of the pour, and
  // later by what the half dose adds, 4.5 min x 0.8476.
  const Milestone* strip = milestone(plan.hardening, "strip");
  REQUIRE(strip != nullptr);
  REQUIRE(in_minutes(*strip->from) == by_hand(22 + 4.5 * factor() + 120));
  REQUIRE(*plan.hardening.slowing == by_hand(1));
}

TEST_CASE("the potting bench's loads are what hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  // The panel passes the base's face: 1 3/4 - 7/16 = 1 5/16 in of concrete holds 1 1/8 in.
  const double h = 0.0333375, c = 0.028575, t = 0.04445;  // m
  const double density = 1000 * (bag + water_a_bag) / bag_yield;
  const Cantilever& edge = *plan.slabs.at(0).loads.worst;
  // 6/h2 of the moment rho g T c2/2, and of 1 kN x c over 300 mm + 2 c.
  REQUIRE(edge.own.si() == by_hand(6 / (h * h) * density * g * t * c * c / 2));
  REQUIRE(edge.leaning.si() == by_hand(6 / (h * h) * 1000 * c / (0.3 + 2 * c)));
  // Mix 1 3/4 in high pushes w h2/2 on the front's strip, 2 1/2 x 5/8 in, screwed every 200 mm:
  // 5 q a4 / (384 E I) with E = 1.8 GPa is 0.011 mm.
  const double push = density * g * t * t / 2;                 // N/m
  const double inertia = 0.0635 * std::pow(0.015875, 3) / 12;  // m4
  const double bow = 5 * push * std::pow(0.2, 4) / (384 * 1.8e9 * inertia);
  REQUIRE(value_of(plan, "form-deflection") == by_hand(bow * 1000));
}

TEST_CASE("the potting bench's lifts are what hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  // A bag from the floor: hands 12 in out, 6 in up, lifted 30 in; 4 bags in 22 min are one in
  // 5.5 min, under 0.2 a minute: FM = 1; a full bag is held fairly, CM = 0.95.
  // 23 x 25/30.48 x (1 - 0.003 |15.24 - 75|) x (0.82 + 4.5/76.2) x 1 x 0.95 = 12.93 kg.
  const double bag_limit =
      23 * (25 / 30.48) * (1 - 0.003 * (75 - 15.24)) * (0.82 + 4.5 / 76.2) * 0.95;
  REQUIRE(lift_named(plan, "bag").recommended.si() == by_hand(bag_limit));
  REQUIRE(*lift_named(plan, "bag").index == by_hand(bag / bag_limit));
  // A batch in a bucket: 35 cm out, 38 cm up, lifted 90 cm:
  // 23 x 25/35 x (1 - 0.003 x 37) x (0.82 + 4.5/90) x 0.95 = 12.07 kg.
  const double batch_limit = 23 * (25 / 35.0) * (1 - 0.003 * 37) * (0.82 + 4.5 / 90) * 0.95;
  REQUIRE(lift_named(plan, "batch").recommended.si() == by_hand(batch_limit));
  REQUIRE(lift_named(plan, "batch").mass.si() == by_hand(bag + water_a_bag));
}

TEST_CASE("the potting bench's cost is what hand calculation gives", "[by-hand]") {
  const Plan& plan = bench();
  // Strips of 2 1/2 in: 79 1/2, 79 1/2 and the two ends of 26 1/4 in one after the other; of 1 1/8
  // in: 78 1/4, 78 1/4 and 24 + 24: six strips, 3 x 2 1/2 + 3 x 1 1/8 + 6 kerfs of 1/8 = 11 5/8 in
  // of one 13 1/2 in board, whose 84 in hold 79 1/2. A panel of 77 x 25 in takes two sheets of 52 x
  // 34 in.
  REQUIRE(line_of(plan, "coated shelf board, 5/8 x 13 1/2 x 84 in").total.si() == by_hand(1 * 16));
  REQUIRE(line_of(plan, "cement backer sheet, 7/16 x 34 x 52 in").total.si() == by_hand(2 * 13));
  // Four bags and a spare one; half a dose in each of four bags.
  REQUIRE(line_of(plan, "rapid fine topping, 48 lb bag").total.si() == by_hand(5 * 27));
  REQUIRE(line_of(plan, "set retarder").total.si() == by_hand(2 * 1.6));
  double sum = 0;
  for (const CostLine& line : plan.cost.lines) sum += line.packs * line.price.si();
  REQUIRE(plan.cost.total.si() == by_hand(sum));  // no tax
}
