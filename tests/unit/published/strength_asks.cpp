// SPDX-License-Identifier: MIT
#include "slab/heights.h"
#include "slab/stiffness.h"
#include "support/published.h"
#include "support/slabs.h"

namespace strikeoff::test {
namespace {

Answers pressure(const PublishedCase& one) {
  const Pressure p = liquid_pressure(one.get<Density>("w"), one.get<Length>("h"));
  return {{"p", p}, {"p_psi", p}};
}

/// 12.5 psf an inch is 150 pcf.
Answers dead_load(const PublishedCase& one) {
  return {{"DL", liquid_pressure(written<Density>("150 pcf"), one.get<Length>("t"))}};
}

/// The push on a foot of the strip, in pounds of force.
Answers push(const PublishedCase& one) {
  const Density fresh = one.get<Density>("w");
  const Length depth = one.get<Length>("h");
  const double pound_a_foot = pounds(1).si() * standard_gravity / written<Length>("1 ft").in_m();
  return {{"p", liquid_pressure(fresh, depth)}, {"F", side_push(fresh, depth).si() / pound_a_foot}};
}

Density from_kilonewtons(double kn_per_m3) {
  return kilograms_per_m3(kn_per_m3 * 1000 / standard_gravity);
}

Answers pressure_in_si(const PublishedCase& one) {
  return {{"p", liquid_pressure(from_kilonewtons(one.number("w")), one.get<Length>("h"))}};
}

/// The full liquid head caps every wall formula, and is what the plan takes.
Answers cap(const PublishedCase& one) {
  const Pressure head = liquid_pressure(from_kilonewtons(one.number("D")), one.get<Length>("H"));
  return {{"cap", in_kilopascals(head)}};
}

Answers weight_of_slab(const PublishedCase& one) {
  const Density density = one.get<Density>("density");
  const Length thick = written<Length>("1.5 in");  // of the slab of BG-09
  return {{"W", one.get<Volume>("V") * density}, {"W_psf", liquid_pressure(density, thick)}};
}

/// A top that falls so much over this length: how much higher its far side is.
Length drop(double slope, Length along) {
  Slab slab = slab_on(corners_of({{}, Length::inches(25), along}), {}, Length::inches(2));
  slab.fall = Fall{slope, 0};  // towards the front
  return Heights(slab).rise({{}, along});
}

double slope_of(const PublishedCase& one) {
  return Length::inches(one.number("slope")) / Length::inches(12);
}

Answers quarter_inch_a_foot(const PublishedCase& one) {
  return {{"drop", drop(slope_of(one), one.get<Length>("L"))}, {"percent", 100 * slope_of(one)}};
}

Answers four_feet(const PublishedCase& one) {
  return {{"drop", drop(1.0 / 48, one.get<Length>("L"))}};
}

/// Two percent, read as the job is, over a foot.
Answers two_percent(const PublishedCase& one) {
  const double slope = written<Percent>(std::to_string(one.number("percent")) + " %").fraction;
  return {{"in_per_ft", drop(slope, Length::inches(12)).in_in()}, {"ratio", 1 / slope}};
}

}  // namespace

Asks strength_asks() {
  return {{"FP-01", pressure},
          {"FP-02", dead_load},
          {"FP-03", push},
          {"FP-04", pressure_in_si},
          {"FP-07", cap},
          {"BG-10", weight_of_slab},
          {"SL-04", quarter_inch_a_foot},
          {"SL-05", four_feet},
          {"SL-07", two_percent}};
}

}  // namespace strikeoff::test
