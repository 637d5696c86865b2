// SPDX-License-Identifier: MIT
#include "support/sample_plan.h"

#include <algorithm>

namespace strikeoff::test {
namespace {

constexpr Length in(double value) {
  return Length::inches(value);
}

Stock shelf_board() {
  return {"board-13x84", "shelf board", in(84), in(13.5), in(0.625), 16.0, std::nullopt};
}

Stock backer_sheet() {
  return {"backer-34x52", "backer sheet", in(52), in(34), in(0.4375), 13.0, std::nullopt};
}

Mix rapid_mix() {
  Mix mix;
  mix.id = "rapid-fine-48lb";
  mix.name = "rapid fine topping";
  mix.bag = pounds(48);
  mix.yield = cubic_feet(0.44);
  mix.yield_water = quarts(3.7);
  mix.water_least = quarts(3.2);
  mix.water_most = quarts(4.2);
  mix.working_time = minutes(22);
  mix.at = Temperature::fahrenheit(68);
  mix.final_set = minutes(45);
  mix.strip_after = hours(2);
  mix.sand_after = hours(4);
  mix.seal_after = hours(36);
  mix.full_service = days(28);
  mix.aggregate = Length::mm(1);
  mix.least_thickness = in(0.625);
  mix.price = 27;
  return mix;
}

Sealer sealer() {
  return {
      "penetrating-sealer", "penetrating sealer", 2, Area::from_si(9), litres(0.75), hours(5), 24};
}

Slab bench_slab() {
  Slab slab;
  slab.name = "bench";
  slab.base = corners_of({{}, in(76), in(24)});
  int number = 0;
  for (const char* name : {"front", "right", "back", "left"}) {
    slab.sides.push_back({++number, name, in(1.125), in(0.5), false});
  }
  slab.thickness = in(1.75);
  slab.panel = backer_sheet();
  slab.panel_gap = in(0.125);
  return slab;
}

SlabPlan bench_shape() {
  SlabPlan shape;
  shape.name = "bench";
  shape.outline = corners_of({{in(-1.125), in(-1.125)}, in(78.25), in(26.25)});
  shape.panel = corners_of({{in(-0.5), in(-0.5)}, in(77), in(25)});
  shape.area = shape.top_area = in(78.25) * in(26.25);
  shape.perimeter = in(209);
  shape.edge_thickness = in(1.75);
  shape.least_thickness = in(1.3125);
  shape.panel_displacement = in(77) * in(25) * in(0.4375);
  shape.concrete = shape.area * in(1.75) - shape.panel_displacement;
  shape.mass = kilograms(100);
  shape.base_load = kilopascals(0.83);
  shape.forms.screw_spacing = in(8);
  shape.forms.soffit = in(204.5);
  shape.forms.edge = in(211.5);
  shape.forms.seams = in(25);
  shape.forms.panel = in(77) * in(25);
  shape.forms.formed = in(209) * in(1.75);
  return shape;
}

/// 78 1/4 x 26 1/4 in and an edge of 209 x 1 3/4 in: 2419.8125 in2, 1.561 m2. Two coats of 9 m2 a
/// can of 0.75 L, and a tenth more: 0.2862 L.
FinishPlan bench_finish() {
  FinishPlan plan;
  plan.top = in(78.25) * in(26.25);
  plan.edges = in(209) * in(1.75);
  const Area all = plan.top + plan.edges;
  for (const int grit : {100, 200, 400}) plan.sanding.push_back({grit, all, minutes(15.61), 1});
  plan.fill_pits = true;
  plan.sealer = "penetrating sealer";
  plan.coats = 2;
  plan.sealed = all;
  plan.recoat = hours(5);
  plan.coating = minutes(6.24);
  plan.sealer_volume = litres(0.2862);
  return plan;
}

Part part(const char* mark, const char* role, const char* stock, Length width, Length length) {
  Part made;
  made.mark = mark;
  made.slab = "bench";
  made.role = role;
  made.stock = stock;
  made.width = width;
  made.length = length;
  made.quantity = 2;
  return made;
}

CutList bench_cut_list() {
  CutList list;
  list.parts = {part("S1", "soffit strip", "board-13x84", in(1.125), in(78.25)),
                part("S2", "soffit strip", "board-13x84", in(1.125), in(24)),
                part("E1", "edge strip", "board-13x84", in(2.5), in(79.5)),
                part("E2", "edge strip", "board-13x84", in(2.5), in(26.25)),
                part("P1", "backer panel", "backer-34x52", in(25), in(38.4375))};
  Board board{"board-13x84", false, in(84), in(13.5), {}, in(1.875)};
  // A kerf of 1/8 in after each piece.
  const Strip front{in(2.5), {{"E1", in(79.5)}}, in(4.375)};
  const Strip under_front{in(1.125), {{"S1", in(78.25)}}, in(5.625)};
  const Strip ends{in(2.5), {{"E2", in(26.25)}, {"E2", in(26.25)}}, in(31.25)};
  const Strip under_ends{in(1.125), {{"S2", in(24)}, {"S2", in(24)}}, in(35.75)};
  board.strips = {front, front, ends, under_front, under_front, under_ends};
  board.left_over = {{in(84), in(1.875)}, {in(31.25), in(2.5)}};
  list.boards = {board};
  const SheetPiece panel{"P1", {{}, in(38.4375), in(25)}};
  const std::vector<SheetCut> cuts{{1, false, "", in(38.4375), "P1"},
                                   {2, true, "P1", in(25), "P1"}};
  list.sheets.assign(2, {"backer-34x52", false, in(52), in(34), {panel}, {}, cuts});
  list.totals = {{"board-13x84", 1, 0, 1, 1, true}, {"backer-34x52", 2, 0, 2, 2, true}};
  return list;
}

/// The air is the label's; the pour ends at 22 min.
HardeningPlan bench_hardening() {
  HardeningPlan plan;
  plan.coldest = plan.warmest = plan.mean = Temperature::fahrenheit(68);
  plan.slowing = 1;
  const auto by_label = [&](const char* step, Duration label) {
    const Duration from = minutes(22) + label;
    plan.milestones.push_back({step, from, std::nullopt, std::nullopt, from, "the bag's"});
  };
  by_label("strip", hours(2));
  by_label("sand", hours(4));
  by_label("seal", hours(36));
  by_label("full use", days(28));
  return plan;
}

}  // namespace

Job potting_bench_job() {
  Job job;
  job.name = "potting bench";
  job.units = Units::us;
  job.currency = "USD";
  job.slabs = {bench_slab()};
  job.mix = rapid_mix();
  job.forms.strip_stock = {shelf_board()};
  job.forms.kerf = job.forms.oversize = in(0.125);
  job.forms.screw_spacing = in(8);
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}, {Role::finish}};
  job.crew.mixer_capacity = cubic_feet(0.6);
  const auto usual = [](double value) { return UsualBad{minutes(value), minutes(value * 1.5)}; };
  job.crew.times = {usual(1), usual(3), usual(0.5), usual(0.5), usual(0.5), usual(0.5), usual(3)};
  job.finish = {{100, 200, 400}, true, sealer()};
  job.site.air = job.site.bag_temperature = job.site.water_temperature = job.mix.at;
  return job;
}

void set_batches(Plan& plan, int count, Duration takt, Duration lead) {
  plan.batches.clear();
  const Rectangle top = bounding_box(plan.slabs.front().outline);
  const Length width = top.length / count;
  for (int i = 1; i <= count; ++i) {
    Batch batch;
    const Point corner{top.at.x + width * (i - 1), top.at.y};
    batch.zones = {{plan.slabs.front().name, corners_of({corner, width, top.depth})}};
    batch.number = i;
    batch.dry = pounds(48);
    batch.water = quarts(3.7);
    batch.water_mass = kilograms(3.502);
    batch.volume = cubic_feet(0.44);
    batch.contact = takt * (i - 1);
    batch.place_start = batch.contact + lead - minutes(3);
    batch.place_end = batch.contact + lead;
    plan.batches.push_back(batch);
  }
  PourPlan& pour = plan.pour;
  pour.batches = count;
  pour.takt = takt;
  pour.lead = lead;
  pour.gap = count > 1 ? 1 : 0;
  pour.edge_wait_max = count > 1 ? takt + lead : Duration{};
  pour.end = takt * (count - 1) + lead;
  if (pour.usable) {
    pour.margin = *pour.usable - pour.edge_wait_max;
    pour.feasible = *pour.margin >= Duration{};
  }
}

Plan potting_bench_plan() {
  Plan plan;
  plan.name = "potting bench";
  plan.units = Units::us;
  plan.currency = "USD";
  plan.slabs = {bench_shape()};
  plan.hardening = bench_hardening();
  MixPlan& mix = plan.mix;
  mix.name = "rapid fine topping";
  mix.concrete = plan.slabs.front().concrete;
  mix.waste = mix.concrete * 0.1;
  mix.yield = cubic_feet(0.44);
  mix.bags_exact = (mix.concrete + mix.waste) / mix.yield;
  mix.bags = 4;
  mix.spare_bags = 1;
  mix.water_per_bag = quarts(3.7);
  mix.water_total = quarts(14.8);
  PourPlan& pour = plan.pour;
  pour.bottleneck = "the mixer";
  pour.mix_temperature = Temperature::fahrenheit(68);
  pour.working_time = minutes(22);
  pour.usable = minutes(13.2);
  set_batches(plan, 4, minutes(5), minutes(7));
  plan.finish = bench_finish();
  plan.cut_list = bench_cut_list();
  return plan;
}

Catalogue sample_supplies() {
  struct Row {
    const char *id, *unit;
    double pack, rate;
  };
  Catalogue catalogue;
  for (const Row& row :
       {Row{"strip-screws", "screws", 60, 1}, Row{"panel-screws", "screws", 120, 25},
        Row{"bedding", "cartridges", 1, 0.675}, Row{"sealant", "cartridges", 1, 0.135},
        Row{"seam-tape", "m", 15, 1.05}, Row{"form-tape", "m", 50, 1.05},
        Row{"release-agent", "L", 1, 0.04}, Row{"ledger-batten", "m", 2.4, 1.1},
        Row{"isolation-strip", "m", 10, 1.05}, Row{"stakes", "stakes", 12, 1},
        Row{"prop", "props", 1, 1}, Row{"bracket", "brackets", 1, 1},
        Row{"curing-sheet", "m2", 10, 1.3}, Row{"damp-cloth", "m2", 5, 1.1},
        Row{"sanding-discs", "discs", 1, 0.4}}) {
    Supply good;
    good.id = row.id;
    good.item = std::string("plain ") + row.id;
    good.unit = row.unit;
    good.pack = row.pack;
    good.pack_name = std::string("pack of ") + row.id;
    good.rate = row.rate;
    good.price = 10;
    catalogue.supplies.push_back({good, {}});
  }
  return catalogue;
}

namespace {

template <class Item, class Match>
Item first(const std::vector<Item>& items, Match match) {
  const auto found = std::find_if(items.begin(), items.end(), match);
  return found == items.end() ? Item{} : *found;
}

}  // namespace

Check find_check(const std::vector<Check>& checks, const std::string& code) {
  return first(checks, [&](const Check& check) { return check.code == code; });
}

Material find_material(const std::vector<Material>& materials, const std::string& stock) {
  return first(materials, [&](const Material& row) { return row.stock == stock; });
}

Task find_task(const std::vector<Task>& tasks, const std::string& beginning) {
  return first(tasks, [&](const Task& task) { return task.task.rfind(beginning, 0) == 0; });
}

}  // namespace strikeoff::test
