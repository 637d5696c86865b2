// SPDX-License-Identifier: MIT
#include <cmath>

#include "support/worked_by_hand.h"

using namespace strikeoff;
using namespace strikeoff::test;

// examples/bakery-table worked out by hand, step by step.

namespace {

constexpr double g = 9.80665;                   // m/s2
constexpr double density = 25.6 / 11.9 * 1000;  // kg/m3: 22 kg and 3.6 kg of water make 11.9 L

const Plan& table() {
  static const Plan plan = example_plan("bakery-table");
  return plan;
}

/// A corner of 35 mm radius takes (1 - pi/4) r2 away, so the sink 380 x 320 less (4 - pi) 1225.
double sink() {
  return 380 * 320 - (4 - std::acos(-1.0)) * 35 * 35;  // mm2
}

/// Bags and air 20 C, water 15 C: (0.22 x 22 x 20 + 3.6 x 15) / (0.22 x 22 + 3.6) = 17.87 C.
double mix_temperature() {
  return (0.22 * 22 * 20 + 3.6 * 15) / (0.22 * 22 + 3.6);
}

/// Colder than the label's 20 C, so 30 kJ/mol: exp(30000/8.314 (1/291.02 - 1/293.15)) = 1.0944.
double factor() {
  return std::exp(30000 / 8.314 * (1 / (mix_temperature() + 273.15) - 1 / 293.15));
}

/// Uno 1998, SI form; air 20 C, 30 % because the job does not say, no wind.
double evaporation(double top) {
  return 5 * (std::pow(top + 18, 2.5) - 0.30 * std::pow(20 + 18, 2.5)) * (0 + 4) * 1e-6;
}

}  // namespace

TEST_CASE("the bakery table's concrete and bags are what hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  const SlabPlan& slab = plan.slabs.at(0);
  // An L: 2264 x 736 (32 mm over the front, 24 mm over the back and the right) and 884 x 840.
  const double outline = 2264.0 * 736 + 884.0 * 840;
  REQUIRE(slab.area.si() == by_hand(outline / 1e6));
  REQUIRE(slab.top_area.si() == by_hand((outline - sink()) / 1e6));
  // Round it: as its box, 2 (2264 + 1576) = 7680 mm, of which 1576 mm lie at the wall.
  REQUIRE(slab.perimeter.in_mm() == by_hand(7680));
  REQUIRE(slab.forms.isolation.in_mm() == by_hand(1576));
  // The panel, 12 mm in from each free edge, none at the wall: 2252 x 712 and 872 x 840, less the
  // sink; 11 mm thick.
  const double panel = 2252.0 * 712 + 872.0 * 840 - sink();
  REQUIRE(slab.forms.panel.si() == by_hand(panel / 1e6));
  REQUIRE(in_litres(slab.panel_displacement) == by_hand(panel * 11 / 1e6));
  // The base's hollow is an integral over six readings, up to 7 mm deep; tests of the level field
  // hold it. The rest is the prism less the panel.
  const double hollow = in_litres(slab.level_correction);
  REQUIRE(hollow > 0);
  REQUIRE(hollow < 7 * outline / 1e6);
  const double concrete = ((outline - sink()) * 48 - panel * 11) / 1e6 + hollow;
  REQUIRE(in_litres(slab.concrete) == by_hand(concrete));
  // 91.8 L x 1.07 / 11.9 L = 8.25 bags: 9.
  REQUIRE(plan.mix.bags_exact == by_hand(concrete * 1.07 / 11.9));
  REQUIRE(plan.mix.bags == 9);
  // Half way between 3.2 and 4 L a bag.
  REQUIRE(in_litres(plan.mix.water_total) == by_hand(9 * 3.6));
  REQUIRE(plan.mix.fresh_density.si() == by_hand(density));
  REQUIRE(slab.mass.si() == by_hand(concrete * density / 1000));
  // On 2240 x 680 + 860 x 840 mm = 2.2456 m2: 197.4 x 9.807 / 2.2456 = 862 Pa.
  REQUIRE(slab.base_load.si() == by_hand(concrete * density / 1000 * g / 2.2456));
}

TEST_CASE("the bakery table's pour is what hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  REQUIRE(plan.pour.mix_temperature.in_c() == by_hand(mix_temperature()));
  REQUIRE(plan.pour.temperature_factor == by_hand(factor()));
  REQUIRE(in_minutes(*plan.pour.working_time) == by_hand(50 * factor()));
  REQUIRE(in_minutes(*plan.pour.usable) == by_hand(0.6 * 50 * factor()));
  // Two mixers of 5.5 min a batch give one every 2.75 min; placing takes 4.5 min and sets the beat.
  // A batch: mix 3.5, tip out 0.5, carry 0.5, place 4.5 = 9 min. Joints wait 4.5 + 9 = 13.5 min;
  // the ninth batch is placed 8 x 4.5 + 9 = 45 min after the first water.
  REQUIRE(in_minutes(plan.pour.takt) == by_hand(4.5));
  REQUIRE(in_minutes(plan.pour.lead) == by_hand(9));
  REQUIRE(in_minutes(plan.pour.edge_wait_max) == by_hand(13.5));
  REQUIRE(in_minutes(plan.pour.end) == by_hand(45));
  REQUIRE(in_minutes(*plan.pour.margin) == by_hand(0.6 * 50 * factor() - 13.5));
}

TEST_CASE("the bakery table's air and cure are what hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  REQUIRE(in_kilograms_per_m2_h(plan.site.evaporation) == by_hand(evaporation(mix_temperature())));
  // Stripped after 20 h, so it sets like ordinary cement: as warm as the air, wet for 7 days under
  // damp cloth and sheet: 0.6 mm at first, then 1.4 E / 10 for 168 h, on the top less the sink.
  const double cure = evaporation(20);
  REQUIRE(in_kilograms_per_m2_h(plan.site.cure_evaporation) == by_hand(cure));
  REQUIRE(in_hours(*plan.site.wettings.at(3).every) == by_hand(0.6 / (1.4 * cure / 10)));
  REQUIRE(in_hours(plan.site.wet_cure) == by_hand(168));
  const double top = (2264.0 * 736 + 884.0 * 840 - sink()) / 1e6;
  REQUIRE(in_litres(plan.site.cure_water) == by_hand(top * (0.6 + 1.4 * cure / 10 * 168)));
}

TEST_CASE("the bakery table hardens as hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  // The air has the label's 20 C: 20 h after the pour's end at 45 min.
  REQUIRE(in_minutes(*milestone(plan.hardening, "strip")->from) == by_hand(45 + 20 * 60));
  // The bag's 13 MPa at 24 h and 36 MPa at 28 d, set at 3 h, by S = Su k t/(1 + k t): 1/S is a
  // straight line over 1/t, t being 21 h and 669 h. Its slope (1/13 - 1/36)/(1/21 - 1/669) =
  // 1.06549 is 1/(Su k), and where 1/t is nothing it is 1/Su: Su = 38.2 MPa.
  const double slope = (1 / 13.0 - 1 / 36.0) / (1 / 21.0 - 1 / 669.0);
  const double ultimate = 1 / (1 / 36.0 - slope / 669);
  REQUIRE(in_megapascals(*plan.hardening.ultimate) == by_hand(ultimate));
  // 10 MPa for light use: 3 h + 1/(k (Su/10 - 1)) = 17.4 h after the pour's end.
  const double k = 1 / (ultimate * slope);
  const Milestone* light = milestone(plan.hardening, "light use");
  REQUIRE(in_minutes(*light->strong) == by_hand(45 + 60 * (3 + 1 / (k * (ultimate / 10 - 1)))));
}

TEST_CASE("the bakery table's loads are what hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  // The front hangs out farthest, 32 mm, on 48 - 11 = 37 mm of concrete.
  const double h = 0.037, c = 0.032, t = 0.048;  // m
  const Cantilever& edge = *plan.slabs.at(0).loads.worst;
  REQUIRE(edge.reach.in_mm() == by_hand(32));
  REQUIRE(edge.own.si() == by_hand(6 / (h * h) * density * g * t * c * c / 2));
  REQUIRE(edge.leaning.si() == by_hand(6 / (h * h) * 1000 * c / (0.3 + 2 * c)));
  // 36 MPa at 28 days: 0.30 x 36^(2/3) = 3.27 MPa in tension.
  REQUIRE(in_megapascals(*edge.strength) == by_hand(0.30 * std::pow(36.0, 2.0 / 3)));
}

TEST_CASE("the bakery table's lifts are what hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  // Two people mix: 4.5 bags each in 45 min, 0.1 a minute: FM = 1. As for any bag on the floor
  // 23 x 25/30.48 x (1 - 0.003 (75 - 15.24)) x (0.82 + 4.5/76.2) x 0.95 = 12.93 kg.
  const double limit = 23 * (25 / 30.48) * (1 - 0.003 * (75 - 15.24)) * (0.82 + 4.5 / 76.2) * 0.95;
  REQUIRE(lift_named(plan, "bag").recommended.si() == by_hand(limit));
  REQUIRE(*lift_named(plan, "bag").index == by_hand(22 / limit));
  // One person carries: 22 kg and 3.6 kg of water.
  REQUIRE(lift_named(plan, "batch").mass.si() == by_hand(25.6));
  REQUIRE(lift_named(plan, "batch").sharing == 1);
}

TEST_CASE("the bakery table's cost is what hand calculation gives", "[by-hand]") {
  const Plan& plan = table();
  // Nine bags and a spare one at the price from five on.
  REQUIRE(line_of(plan, "table mix").total.si() == by_hand(10 * 15.5));
  REQUIRE(line_of(plan, "shelf board 2450").total.si() == by_hand(16));
  REQUIRE(line_of(plan, "cement backer sheet, 11 x 850 x 1300 mm").total.si() == by_hand(3 * 14));
  double sum = 0;
  for (const CostLine& line : plan.cost.lines) sum += line.packs * line.price.si();
  REQUIRE(plan.cost.subtotal.si() == by_hand(sum));
  // 7 % tax, to the cent.
  REQUIRE(std::abs(plan.cost.total.si() - sum * 1.07) <= 0.005);
}
