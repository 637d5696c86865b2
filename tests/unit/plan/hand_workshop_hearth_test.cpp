// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "support/worked_by_hand.h"

using namespace strikeoff;
using namespace strikeoff::test;

// examples/workshop-hearth worked out by hand, step by step.

namespace {

constexpr double g = 9.80665;                   // m/s2
constexpr double density = 32.7 / 14.4 * 1000;  // kg/m3: 30 kg and 2.7 kg of water make 14.4 L
constexpr double concrete = 1.16 * 0.88 * 68 - 1.124 * 0.844 * 13;  // L

const Plan& hearth() {
  static const Plan plan = example_plan("workshop-hearth");
  return plan;
}

/// Bags and air 18 C, water 15 C: (0.22 x 30 x 18 + 2.7 x 15) / (0.22 x 30 + 2.7) = 17.13 C.
double mix_temperature() {
  return (0.22 * 30 * 18 + 2.7 * 15) / (0.22 * 30 + 2.7);
}

/// Colder than the label's 20 C, so 30 kJ/mol: exp(30000/8.314 (1/290.28 - 1/293.15)) = 1.1294.
double factor() {
  return std::exp(30000 / 8.314 * (1 / (mix_temperature() + 273.15) - 1 / 293.15));
}

/// Uno 1998, SI form; air 18 C, 30 % because the job does not say, no wind.
double evaporation(double top) {
  return 5 * (std::pow(top + 18, 2.5) - 0.30 * std::pow(18 + 18, 2.5)) * (0 + 4) * 1e-6;
}

}  // namespace

TEST_CASE("the hearth's concrete and bags are what hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  const SlabPlan& slab = plan.slabs.at(0);
  // 1100 x 820 and 30 mm all round: 1160 x 880 mm; the panel 12 mm past the base: 1124 x 844 mm.
  REQUIRE(slab.area.si() == by_hand(1.0208));
  REQUIRE(slab.perimeter.in_mm() == by_hand(4080));
  REQUIRE(in_litres(slab.panel_displacement) == by_hand(1.124 * 0.844 * 13));
  // 1.0208 m2 x 68 mm - 12.33 L = 57.08 L.
  REQUIRE(in_litres(slab.concrete) == by_hand(concrete));
  REQUIRE(slab.least_thickness.in_mm() == by_hand(68 - 13));
  // 57.08 x 1.10 / 14.4 = 4.36 bags: 5.
  REQUIRE(plan.mix.bags_exact == by_hand(concrete * 1.10 / 14.4));
  REQUIRE(plan.mix.bags == 5);
  REQUIRE(in_litres(plan.mix.surplus) == by_hand(5 * 14.4 - concrete * 1.10));
  REQUIRE(in_litres(plan.mix.water_total) == by_hand(5 * 2.7));
  REQUIRE(plan.mix.fresh_density.si() == by_hand(density));
  // 57.08 L x 2271 kg/m3 = 129.6 kg on 1100 x 820 mm: 1409 Pa.
  REQUIRE(slab.mass.si() == by_hand(concrete * density / 1000));
  REQUIRE(slab.base_load.si() == by_hand(concrete * density / 1000 * g / (1.1 * 0.82)));
}

TEST_CASE("the hearth's pour is what hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  REQUIRE(plan.pour.mix_temperature.in_c() == by_hand(mix_temperature()));
  REQUIRE(plan.pour.temperature_factor == by_hand(factor()));
  // 80 min x 1.1294 = 90.4 min, of which 60 % may be used.
  REQUIRE(in_minutes(*plan.pour.working_time) == by_hand(80 * factor()));
  REQUIRE(in_minutes(*plan.pour.usable) == by_hand(48 * factor()));
  // One mixer: 5 min a batch; 7 min from water to placed; joints wait 12 min; the fifth batch is
  // placed 4 x 5 + 7 = 27 min after the first water.
  REQUIRE(in_minutes(plan.pour.takt) == by_hand(5));
  REQUIRE(in_minutes(plan.pour.edge_wait_max) == by_hand(12));
  REQUIRE(in_minutes(plan.pour.end) == by_hand(27));
  REQUIRE(in_minutes(*plan.pour.margin) == by_hand(48 * factor() - 12));
}

TEST_CASE("the hearth's air and cure are what hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  REQUIRE(in_kilograms_per_m2_h(plan.site.evaporation) == by_hand(evaporation(mix_temperature())));
  // Ordinary cement: 7 days under damp cloth and sheet, as warm as the air.
  const double cure = evaporation(18);
  REQUIRE(in_hours(*plan.site.wettings.at(0).every) == by_hand(0.2 / (1.4 * cure)));
  REQUIRE(in_litres(plan.site.cure_water) == by_hand(1.0208 * (0.6 + 1.4 * cure / 10 * 168)));
}

TEST_CASE("the hearth hardens as hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  // Air of 18 C against the label's 20 C: by 40 kJ/mol exp(-40000/8.314 (1/291.15 - 1/293.15)) =
  // 0.893, by degrees over freezing 18/20 = 0.9: the slower counts. 36 h become 40.3 h.
  const double rate = std::min(std::exp(-40000 / 8.314 * (1 / 291.15 - 1 / 293.15)), 18.0 / 20.0);
  REQUIRE(in_minutes(*milestone(plan.hardening, "strip")->from) == by_hand(27 + 36 * 60 / rate));
  REQUIRE(*plan.hardening.slowing == by_hand(1 / rate));
}

TEST_CASE("the hearth's loads are what hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  // 30 mm of overhang on 68 - 13 = 55 mm of concrete.
  const double h = 0.055, c = 0.030, t = 0.068;  // m
  const Cantilever& edge = *plan.slabs.at(0).loads.worst;
  REQUIRE(edge.own.si() == by_hand(6 / (h * h) * density * g * t * c * c / 2));
  REQUIRE(edge.leaning.si() == by_hand(6 / (h * h) * 1000 * c / (0.3 + 2 * c)));
  // Mix 68 mm high pushes w h2/2 on a strip 86 x 18 mm, screwed every 200 mm; E = 1.8 GPa.
  const double push = density * g * t * t / 2;
  const double inertia = 0.086 * std::pow(0.018, 3) / 12;
  REQUIRE(value_of(plan, "form-deflection") ==
          by_hand(1000 * 5 * push * std::pow(0.2, 4) / (384 * 1.8e9 * inertia)));
}

TEST_CASE("the hearth's lifts are what hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  // 5 bags in 27 min: 0.19 a minute, FM = 1; 12.93 kg as for any bag on the floor.
  const double limit = 23 * (25 / 30.48) * (1 - 0.003 * (75 - 15.24)) * (0.82 + 4.5 / 76.2) * 0.95;
  REQUIRE(lift_named(plan, "bag").recommended.si() == by_hand(limit));
  REQUIRE(lift_named(plan, "batch").mass.si() == by_hand(32.7));
}

TEST_CASE("the hearth's cost is what hand calculation gives", "[by-hand]") {
  const Plan& plan = hearth();
  // Five bags and a spare one; the offcuts on hand leave one board to buy; one panel.
  REQUIRE(line_of(plan, "coarse concrete, 30 kg bag").total.si() == by_hand(6 * 7));
  REQUIRE(line_of(plan, "shelf board").total.si() == by_hand(11));
  REQUIRE(line_of(plan, "backer 1200 x 880").total.si() == by_hand(18));
  double sum = 0;
  for (const CostLine& line : plan.cost.lines) sum += line.packs * line.price.si();
  REQUIRE(plan.cost.total.si() == by_hand(sum));  // no tax
}
