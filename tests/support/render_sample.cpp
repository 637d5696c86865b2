// SPDX-License-Identifier: MIT
#include "support/render_sample.h"

namespace strikeoff::test {
namespace {

Length in(double value) {
  return Length::inches(value);
}

SlabPlan bench() {
  SlabPlan slab;
  slab.name = "bench";
  slab.area = in(78.25) * in(26.25);
  slab.top_area = slab.area;
  slab.perimeter = in(209);
  slab.edge_thickness = in(1.75);
  slab.least_thickness = in(1.3125);
  slab.concrete = litres(45.10411);
  slab.panel_displacement = litres(13.80098);
  slab.mass = kilograms(92);
  slab.base_load = kilopascals(0.77);
  slab.outline = corners_of({{in(-1.125), in(-1.125)}, in(78.25), in(26.25)});
  slab.panel = corners_of({{in(-0.5), in(-0.5)}, in(77), in(25)});
  slab.panels = {{"P1", {{in(-0.5), in(-0.5)}, in(52), in(25)}},
                 {"P2", {{in(51.625), in(-0.5)}, in(24.875), in(25)}}};
  slab.forms.soffit = in(204.5);
  slab.forms.edge = in(211.5);
  slab.forms.seams = in(25);
  slab.forms.panel = in(77) * in(25);
  return slab;
}

MixPlan bench_mix() {
  MixPlan mix;
  mix.name = "rapid fine topping, 48 lb bag";
  mix.concrete = litres(45.10411);
  mix.waste = litres(4.510411);
  mix.yield = cubic_feet(0.44);
  mix.bags_exact = 3.982;
  mix.bags = 4;
  mix.spare_bags = 1;
  mix.surplus = litres(0.22);
  mix.water_per_bag = quarts(3.7);
  mix.water_total = quarts(14.8);
  mix.fresh_density = kilograms_per_m3(2029);
  mix.doses = {{"set retarder", AdditiveKind::retarder, 0.5, 2, kilograms(0.0125)}};
  return mix;
}

SitePlan bench_site() {
  SitePlan site;
  site.concrete = Temperature::fahrenheit(68);
  site.air = site.warmest = Temperature::fahrenheit(77);
  site.humidity = 0.4;
  site.wind = miles_per_hour(5);
  site.dew_point = Temperature::fahrenheit(51);
  site.covered = minutes(50);
  site.evaporation = kilograms_per_m2_h(0.3);
  site.evaporation_least = kilograms_per_m2_h(0.18);
  site.evaporation_most = kilograms_per_m2_h(0.42);
  site.skin = minutes(14);
  site.wettings = {
      {"bare", Length::mm(0.2), kilograms_per_m2_h(0.4), minutes(21)},
      {"sheet over the wet top", Length::mm(0.2), kilograms_per_m2_h(0.04), hours(3.5)}};
  site.cure_cover = "sheet over the wet top";
  site.wet_cure = hours(1);
  site.bucket = gallons(2.5);
  site.cure_water = gallons(0.5);
  site.cure_buckets = 0.2;
  return site;
}

std::vector<Batch> bench_batches() {
  std::vector<Batch> batches;
  for (int i = 0; i < 4; ++i) {
    Batch batch;
    batch.number = i + 1;
    batch.dry = pounds(48);
    batch.water = quarts(3.7);
    batch.water_mass = kilograms(3.502);
    batch.bucket_mark = in(2.9375);
    batch.doses = {{"set retarder", 0.5, kilograms(0.0125)}};
    batch.volume = cubic_feet(0.44);
    batch.zone = litres(11.27603);
    batch.contact = minutes(4.5 * i);
    batch.place_start = batch.contact + minutes(4.5);
    batch.place_end = batch.contact + minutes(7.5);
    if (i > 0) batch.neighbours.push_back(i);
    if (i < 3) batch.neighbours.push_back(i + 2);
    if (i < 3) batch.edge_wait = minutes(12);
    if (i < 3) batch.meet_by = batch.contact + minutes(15.9);
    if (i < 3) batch.front = in(26.25);
    batch.advance = in(19.5625);
    batch.zones = {
        {"bench", corners_of({{in(-1.125 + 19.5625 * i), in(-1.125)}, in(19.5625), in(26.25)})}};
    batches.push_back(batch);
  }
  return batches;
}

PourPlan bench_pour() {
  PourPlan pour;
  pour.batches = 4;
  pour.takt = minutes(4.5);
  pour.bottleneck = "the mixer";
  pour.lead = minutes(7.5);
  pour.gap = 1;
  pour.edge_wait_max = minutes(12);
  pour.mix_temperature = Temperature::fahrenheit(67);
  pour.working_time = minutes(26.5);
  pour.usable = minutes(15.9);
  pour.margin = minutes(3.9);
  pour.end = minutes(21);
  pour.wet_edge_max = in(26.25);
  pour.joint_length = in(78.75);
  pour.feasible = true;
  pour.sweeps = {{"bench", "the left end", "the right end", 1}};
  for (int i = 1; i < 4; ++i) {
    const Length x = in(-1.125 + 19.5625 * i);
    pour.joints.push_back(
        {i, i + 1, in(26.25), "bench", {{x, in(-1.125)}, {x, in(25.125)}}, {}, minutes(12)});
    pour.joints.back().ends = {{"the front", "the left", in(19.5625 * i)},
                               {"the back", "the left", in(19.5625 * i)}};
  }
  pour.retarder_per_bag = 0.5;
  pour.retarder_reason = "half a dose a bag is the least that covers a wait of 12 min";
  pour.water_rule = "water goes in when the batch before starts being placed";
  pour.smallest_crew = "2 people: one mixes, one carries and places";
  return pour;
}

CutList bench_cuts() {
  CutList cuts;
  cuts.parts = {
      {"E1", "bench", "edge strip", "board-13x84", in(2.5), in(79.5), 2, 0, 0, "front, back"},
      {"E2", "bench", "edge strip", "board-13x84", in(2.5), in(26.25), 2, 0, 0, "right, left"},
      {"S1", "bench", "soffit strip", "board-13x84", in(1.125), in(78.25), 2, 0, 0, "front, back"},
      {"S2", "bench", "soffit strip", "board-13x84", in(1.125), in(24), 2, 0, 0, "right, left"},
      {"P1", "bench", "backer panel", "backer-34x52", in(25), in(52), 1, 0, 0, "left"},
      {"P2", "bench", "backer panel", "backer-34x52", in(25), in(24.875), 1, 0, 0, "right"}};
  const Strip soffit{in(1.125), {{"S1", in(78.25)}}, in(5.625)};
  const Strip edge{in(2.5), {{"E1", in(79.5)}}, in(4.375)};
  cuts.boards = {{"board-13x84",
                  false,
                  in(84),
                  in(13.5),
                  {soffit,
                   edge,
                   soffit,
                   edge,
                   {in(2.5), {{"E2", in(26.25)}, {"E2", in(26.25)}}, in(31.25)},
                   {in(1.125), {{"S2", in(24)}, {"S2", in(24)}}, in(35.75)}},
                  in(1.875)}};
  cuts.sheets = {{"backer-34x52", false, in(52), in(34), {{"P1", {{}, in(52), in(25)}}}},
                 {"backer-34x52", true, in(52), in(34), {{"P2", {{}, in(24.875), in(25)}}}}};
  cuts.totals = {{"board-13x84", 1, 0, 1, 1, true}, {"backer-34x52", 2, 1, 1, 1, false, 1}};
  cuts.boards[0].left_over = {{in(84), in(1.875)}, {in(31.25), in(2.5)}};
  cuts.reusable = {in(12), in(1.5)};
  return cuts;
}

std::vector<Material> bench_materials() {
  Material bags{"rapid fine topping, 48 lb bag",
                "rapid-fine-48lb",
                5,
                "bags",
                0,
                5,
                "bag",
                Money::from_si(27),
                Money::from_si(135),
                "4 bags to mix and 1 spare",
                ""};
  Material screws{"form screws",
                  "strip-screws",
                  37,
                  "screws",
                  0.5,
                  0,
                  "box of 80 screws",
                  std::nullopt,
                  std::nullopt,
                  "one every 8 in of edge strip",
                  "half a box is on hand"};
  return {bags, screws};
}

}  // namespace

Plan printed_bench_plan() {
  Plan plan;
  plan.name = "greenhouse potting bench";
  plan.date = StartDate{std::chrono::year{2026} / 5 / 9, std::chrono::minutes{9 * 60}};
  plan.units = Units::us;
  plan.currency = "USD";
  plan.assumptions = {{"/site/air", "68 F", "the temperature the mix's times hold at", 10}};
  plan.slabs = {bench()};
  plan.mix = bench_mix();
  plan.batches = bench_batches();
  plan.pour = bench_pour();
  plan.site = bench_site();
  plan.cut_list = bench_cuts();
  plan.materials = bench_materials();
  plan.cost = {{{"rapid fine topping, 48 lb bag", 5, Money::from_si(27), Money::from_si(135)}},
               Money::from_si(135),
               Money::from_si(10.8),
               Money::from_si(145.8),
               "USD",
               {"form screws"}};
  plan.schedule = {{"the day before",
                    "bucket test of the working time",
                    "anyone",
                    minutes(-1440),
                    minutes(-1380),
                    "2026-05-08T09:00",
                    "2026-05-08T10:00",
                    {}},
                   {"pour",
                    "water into batch 1",
                    "person 1",
                    minutes(0),
                    minutes(0),
                    "2026-05-09T09:00",
                    "2026-05-09T09:00",
                    {"bucket test of the working time"}}};
  plan.checks = {{"evaporation", Level::caution, "the top dries fast", 0.6, 0.5, "kg/m2/h",
                  "cover it between passes", "Uno 1998"},
                 {"cold-joint", Level::ok, "every edge is met in time", 12, 15.9, "min", "", ""},
                 {"silica", Level::caution, "dust from the bag harms the lungs", std::nullopt,
                  std::nullopt, "", "wear a fitted mask while bags are opened", ""}};
  return plan;
}

Check cold_joint() {
  return {"cold-joint", Level::stop, "the edge of batch 1 sets before batch 2 meets it",     15.5,
          12,           "min",       "add a second mixer, or half a dose of retarder a bag", ""};
}

}  // namespace strikeoff::test
