// SPDX-License-Identifier: MIT
#include "checks/checks.h"
#include "loads/cantilever.h"
#include "loads/control_joints.h"
#include "site/wet_cure.h"
#include "slab/heights.h"
#include "slab/measure.h"
#include "slab/stiffness.h"
#include "support/pour_job.h"
#include "support/published.h"
#include "support/sample_plan.h"
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
  return Heights(slab).rise.at({{}, along});
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

/// The stress of an overhang: its own weight, and a load on a width of its edge. The program's
/// person is 1 kN.
Answers edge_stress(const PublishedCase& one) {
  const Length reach = one.get<Length>("L"), deep = one.get<Length>("h");
  const double load = one.get<Mass>("P").si() * standard_gravity / 1000;
  const Pressure own = own_weight_stress(one.get<Density>("gamma"), deep, reach, deep);
  return {{"stress", own + leaning_stress(reach, deep, one.get<Length>("b")) * load}};
}

/// How much less a deeper section is stressed by the same person.
Answers thickness_squared(const PublishedCase& one) {
  const Length reach = Length::inches(10), wide = Length::inches(12);
  const auto stress = [&](const char* deep) {
    return leaning_stress(reach, one.get<Length>(deep), wide);
  };
  return {{"ratio", stress("h1") / stress("h2")}};
}

/// A slab this thick, 60 ft long, of fine mix.
struct LongSlab {
  Slab slab;
  SlabPlan plan;
  Mix mix;
  explicit LongSlab(Length thickness)
      : slab(slab_on(corners_of({{}, Length::inches(720), Length::inches(60)}), {}, thickness)),
        plan(measure_slab(slab)) {
    mix.aggregate = Length::mm(4);
  }
  /// What the check on steel allows without any.
  [[nodiscard]] Length without_steel() const {
    Job job = a_pour_job();
    job.slabs = {slab};
    Plan all;
    all.slabs = {plan};
    return Length::mm(find_check(steel_checks(job, all), "reinforcement").limit.value());
  }
};

Answers joint_spacing(const PublishedCase& one) {
  const LongSlab slab(one.get<Length>("t"));
  return {{"min", control_joints(slab.slab, slab.plan, slab.mix).apart},
          {"max", slab.without_steel()}};
}

Answers joint_factors(const PublishedCase&) {
  Mix fine, coarse;
  fine.aggregate = Length::mm(10);
  coarse.aggregate = Length::inches(0.75);
  return {{"k_small", joint_factor(fine)}, {"k_large", joint_factor(coarse)}};
}

Answers panel_shape(const PublishedCase&) {
  return {{"max", longest_panel}};
}

Answers joint_depth(const PublishedCase& one) {
  const LongSlab slab(one.get<Length>("t"));
  return {{"depth", control_joints(slab.slab, slab.plan, slab.mix).depth}};
}

Answers ordinary_cure(const char* value) {
  Mix mix;
  mix.strip_after = hours(24);
  return {{value, wet_cure(mix)}};
}

Answers moist_cure(const PublishedCase&) {
  return ordinary_cure("days");
}

Answers cure_by_the_code(const PublishedCase&) {
  return ordinary_cure("normal");
}

/// The limit of the check on the fresh mix at this temperature.
Temperature mix_limit(double celsius) {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(celsius);
  return Temperature::celsius(find_check(mix_checks(job, plan), "mix-temperature").limit.value());
}

/// The limit of the check on a night of 3 C.
Temperature cold_air() {
  Job job = potting_bench_job();
  job.site.night = Temperature::celsius(3);
  const auto checks = site_checks(job, potting_bench_plan());
  return Temperature::celsius(find_check(checks, "frost").limit.value());
}

Answers cold_day(const PublishedCase&) {
  return {
      {"ambient", cold_air()}, {"concrete_min", mix_limit(8)}, {"concrete_min_C", mix_limit(8)}};
}

Answers cold_weather(const PublishedCase&) {
  return {{"T", cold_air()}};
}

Answers hot_mix(const PublishedCase&) {
  return {{"T", mix_limit(40)}, {"T_C", mix_limit(40)}};
}

}  // namespace

Asks strength_asks() {
  return {{"PC-07", edge_stress},    {"PC-10", thickness_squared},
          {"SL-01", joint_spacing},  {"SL-02", joint_spacing},
          {"SL-03", joint_spacing},  {"SL-R1", joint_factors},
          {"SL-R2", panel_shape},    {"SL-R3", joint_depth},
          {"CU-R1", moist_cure},     {"CU-R4", cure_by_the_code},
          {"CU-R5", cold_day},       {"CU-R12", cold_weather},
          {"CU-R13", hot_mix},       {"FP-01", pressure},
          {"FP-02", dead_load},      {"FP-03", push},
          {"FP-04", pressure_in_si}, {"FP-07", cap},
          {"BG-10", weight_of_slab}, {"SL-04", quarter_inch_a_foot},
          {"SL-05", four_feet},      {"SL-07", two_percent}};
}

}  // namespace strikeoff::test
