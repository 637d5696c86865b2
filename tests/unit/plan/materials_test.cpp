// SPDX-License-Identifier: MIT
#include "plan/materials.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "basis/basis.h"
#include "mix/mix.h"
#include "plan/purchasing.h"
#include "plan/supplies.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

std::vector<Material> materials_of(const Job& job, const Plan& plan) {
  return list_materials(job, sample_supplies(), plan);
}

bool lists(const std::vector<Material>& rows, const std::string& stock) {
  return std::any_of(rows.begin(), rows.end(),
                     [&](const Material& row) { return row.stock == stock; });
}

Additive retarder() {
  Additive additive;
  additive.id = "retarder-scoop";
  additive.name = "set retarder";
  additive.dose_size = kilograms(0.025);
  additive.price = 1.6;
  return additive;
}

}  // namespace

TEST_CASE("bags are counted with the spare and say how they came about", "[materials]") {
  const Material bags =
      find_material(materials_of(potting_bench_job(), potting_bench_plan()), "rapid-fine-48lb");
  CHECK(bags.needed == 5);
  CHECK(bags.packs == 5);
  CHECK(bags.pack == "bag of 48 lb");
  CHECK(bags.cost->si() == Approx(135));
  CHECK(bags.basis == basis("bags-to-have") +
                          ": 1.59 ft3 net + 10 % waste = 1.75 ft3; 0.44 ft3 a bag; 3.98, so 4, and "
                          "1 spare kept closed");
}

TEST_CASE("bags added for equal batches are named as such", "[materials]") {
  Plan plan = potting_bench_plan();
  plan.mix.bags = 6;
  plan.mix.spare_bags = 0;
  const Material bags = materials_of(potting_bench_job(), plan).front();
  CHECK(bags.packs == 6);
  CHECK(bags.basis.find("3.98, so 4, 6 for equal batches") != std::string::npos);
}

TEST_CASE("what is on hand comes off by item or by stock and an offcut is not a pack",
          "[materials]") {
  Job job = potting_bench_job();
  job.on_hand = {{"rapid-fine-48lb", 1.5, std::nullopt, std::nullopt},
                 {"rapid fine topping", 1, std::nullopt, std::nullopt},
                 {"rapid-fine-48lb", 9, Length::mm(300), Length::mm(40)}};
  const Material bags = materials_of(job, potting_bench_plan()).front();
  CHECK(bags.on_hand == Approx(2.5));
  CHECK(bags.packs == 3);  // 5 - 2.5, up
}

TEST_CASE("more than enough on hand leaves nothing to buy or pay", "[materials]") {
  Job job = potting_bench_job();
  job.on_hand = {{"rapid-fine-48lb", 7, std::nullopt, std::nullopt}};
  const auto rows = materials_of(job, potting_bench_plan());
  CHECK(rows.front().packs == 0);
  CHECK(rows.front().cost->si() == Approx(0));
  const Cost cost = add_up(job, rows);
  CHECK(std::none_of(cost.lines.begin(), cost.lines.end(),
                     [&](const CostLine& line) { return line.item == job.mix.name; }));
}

TEST_CASE("a larger number of bags is bought where it costs less", "[materials]") {
  Job job = potting_bench_job();
  job.mix.price = 9.5;
  job.mix.price_breaks = {{10, 8.4}};
  Plan plan = potting_bench_plan();
  plan.mix.bags = 8;
  const Material bags = materials_of(job, plan).front();
  CHECK(bags.packs == 10);
  CHECK(bags.cost->si() == Approx(84));
  CHECK(bags.note == "10 bags cost less than 9: 84.00 instead of 85.50");
}

TEST_CASE("the cheapest number of packs is never fewer than needed", "[materials]") {
  const std::vector<PriceBreak> breaks{{5, 9}, {20, 7}};
  for (int needed = 0; needed <= 30; ++needed) {
    const Purchase bought = cheapest(needed, 10, breaks);
    CAPTURE(needed);
    CHECK(bought.packs >= needed);
    // Brute force over every number up to 40.
    double least = 1e9;
    for (int n = needed; n <= 40; ++n) {
      least = std::min(least, n * (n >= 20 ? 7.0 : n >= 5 ? 9.0 : 10.0));
    }
    CHECK(bought.packs * bought.price == Approx(least));
  }
  CHECK(cheapest(0, 10, breaks).packs == 0);
}

TEST_CASE("equal cost buys the fewer packs", "[materials]") {
  CHECK(cheapest(9, 10, {{10, 9}}).packs == 9);
  CHECK(cheapest(9, 10.01, {{10, 9}}).packs == 10);
}

TEST_CASE("the job's own price replaces the catalogue's and its breaks", "[materials]") {
  Job job = potting_bench_job();
  job.mix.price_breaks = {{1, 1.0}};
  job.prices = {{"rapid-fine-48lb", 30.0}};
  CHECK(materials_of(job, potting_bench_plan()).front().cost->si() == Approx(150));
  job.prices["rapid fine topping"] = 31.0;  // the item's name goes before its stock's
  CHECK(materials_of(job, potting_bench_plan()).front().cost->si() == Approx(155));
}

TEST_CASE("the basis of doses counts part bags as they are mixed", "[materials]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  job.additives = {retarder()};
  job.crew.bags_per_batch = 0.7;
  plan.mix.bags = 5;
  plan.pour.batches = 6;
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 1, 4.2, kilograms(0.025)}};
  CHECK(find_material(materials_of(job, plan), "retarder-scoop").basis ==
        basis("doses-to-have") + ": 1 a bag x 4.2 bags = 4.2, rounded up to 5");
}

TEST_CASE("doses round up to whole packs and spare bags get none", "[materials]") {
  Job job = potting_bench_job();
  job.additives = {retarder()};
  Plan plan = potting_bench_plan();
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 0.5, 2.5, kilograms(0.0125)}};
  plan.pour.batches = 5;
  const Material doses = find_material(materials_of(job, plan), "retarder-scoop");
  CHECK(doses.needed == Approx(2.5));
  CHECK(doses.packs == 3);
  CHECK(doses.pack == "dose of 0.9 oz");
  CHECK(doses.basis == basis("doses-to-have") + ": 0.5 a bag x 5 bags = 2.5, rounded up to 3");
  plan.mix.doses.front().total = 2;
  CHECK(find_material(materials_of(job, plan), "retarder-scoop").packs == 2);
  plan.mix.doses.front().total = 0;
  CHECK_FALSE(lists(materials_of(job, plan), "retarder-scoop"));
}

TEST_CASE("boards already on hand are used but not bought", "[materials]") {
  Plan plan = potting_bench_plan();
  plan.cut_list.totals[1] = {"backer-34x52", 2, 1, 1, 1, false};
  const auto rows = materials_of(potting_bench_job(), plan);
  const Material sheets = find_material(rows, "backer-34x52");
  CHECK(sheets.needed == 2);
  CHECK(sheets.on_hand == 1);
  CHECK(sheets.packs == 1);
  CHECK(sheets.cost->si() == Approx(13));
  CHECK(sheets.basis == "as in the cut list: no plan needs fewer than 1 sheet");
  const Material board = find_material(rows, "board-13x84");
  CHECK(board.pack == "board");
  CHECK(board.basis == "as in the cut list: no plan needs fewer");
}

TEST_CASE("each slab has screws as closely as planned for it", "[materials]") {
  Plan plan = potting_bench_plan();
  plan.slabs.front().forms.screw_spacing = Length::inches(4);
  plan.slabs.front().forms.ledger = Length::inches(204.5);
  const Material screws = find_material(materials_of(potting_bench_job(), plan), "strip-screws");
  // 78.25 and 79.5 in take 21 at 4 in, 24 in take 7, 26.25 in 8; two of each; 53 along the
  // ledger.
  CHECK(screws.needed == 2 * (21 + 21 + 7 + 8) + 53);
  CHECK(screws.basis.find("a screw every 4 in") != std::string::npos);
}

TEST_CASE("props and brackets are bought by the piece", "[materials]") {
  Plan plan = potting_bench_plan();
  plan.slabs.front().forms.props = 7;
  plan.slabs.front().forms.brackets = 4;
  const auto rows = materials_of(potting_bench_job(), plan);
  CHECK(find_material(rows, "prop").packs == 7);
  CHECK(find_material(rows, "bracket").packs == 4);
}

TEST_CASE("supplies follow from the form work in the reader's units", "[materials]") {
  const auto rows = materials_of(potting_bench_job(), potting_bench_plan());
  // 78.25 and 79.5 in take 11 screws at 8 in, 24 in take 4, 26.25 in 5; two of each.
  CHECK(find_material(rows, "strip-screws").needed == 62);
  CHECK(find_material(rows, "strip-screws").packs == 2);
  const Material tape = find_material(rows, "form-tape");
  CHECK(tape.unit == "ft");
  CHECK(tape.needed == Approx(211.5 / 12 * 1.05));
  CHECK(tape.pack == "pack of form-tape");
  // 1/4 in square beads: 24.3 ft a cartridge, as a sealant maker's coverage table says.
  // 236.5 in of joint take 0.81 of one, and a cartridge is bought whole.
  CHECK(236.5 / 12 / 24.3 == Approx(0.811).epsilon(0.005));
  CHECK(find_material(rows, "sealant").needed == 1);
}

TEST_CASE("cleats and knock-outs and every slab count", "[materials]") {
  Plan plan = potting_bench_plan();
  Part cleat = plan.cut_list.parts.front();
  cleat.role = "cleat";
  cleat.quantity = 3;
  cleat.length = Length::mm(300);  // 3 screws at 8 in, but never less than two each side
  plan.cut_list.parts.push_back(cleat);
  plan.slabs.front().forms.knock_out = Length::inches(61);
  plan.slabs.front().forms.ledger = Length::inches(204.5);
  plan.slabs.push_back(plan.slabs.front());
  const auto rows = materials_of(potting_bench_job(), plan);
  const Material screws = find_material(rows, "strip-screws");
  CHECK(screws.needed == 62 + 2 * 27 + 3 * 4);  // 27 along each ledger
  CHECK(screws.basis ==
        basis("strip-screws") +
            ": 11 strips and cleats and the ledger, a screw every 8 in and at each end: 128");
  CHECK(find_material(rows, "form-tape").needed == Approx(2 * (211.5 + 61) / 12 * 1.05));

  // 1 in2 is 6.4516 cm2, 1 fl oz is 0.0295735 L.
  const double panel_m2 = 2 * 77 * 25 * 6.4516e-4, form_m2 = 2 * 209 * 1.75 * 6.4516e-4;
  CHECK(find_material(rows, "bedding").needed == std::ceil(panel_m2 * 0.675));
  CHECK(find_material(rows, "release-agent").needed == Approx(form_m2 * 0.04 / 0.0295735295625));
}

TEST_CASE("a metric job is listed in metric units", "[materials]") {
  Job job = potting_bench_job();
  job.units = Units::metric;
  const Material tape = find_material(materials_of(job, potting_bench_plan()), "form-tape");
  CHECK(tape.unit == "m");
  CHECK(tape.needed == Approx(211.5 * 0.0254 * 1.05));
  CHECK(tape.pack == "pack of form-tape");
}

TEST_CASE("price breaks alone are a price from the first of them on", "[materials]") {
  Job job = potting_bench_job();
  job.mix.price = std::nullopt;
  const auto cost_of_bags = [&](int on_hand, int from) {
    job.on_hand = {{"rapid-fine-48lb", static_cast<double>(on_hand), std::nullopt, std::nullopt}};
    job.mix.price_breaks = {{from, 8.0}};
    return materials_of(job, potting_bench_plan()).front().cost;
  };
  CHECK(cost_of_bags(0, 5)->si() == Approx(40));  // all five are bought
  CHECK_FALSE(cost_of_bags(0, 6));
  CHECK(cost_of_bags(4, 1)->si() == Approx(8));
  CHECK_FALSE(cost_of_bags(4, 2));
  CHECK(cost_of_bags(5, 1)->si() == 0);
}

TEST_CASE("only what the job needs is listed", "[materials]") {
  const auto rows = materials_of(potting_bench_job(), potting_bench_plan());
  for (const char* absent : {"stakes", "isolation-strip", "prop", "bracket"}) {
    CHECK_FALSE(lists(rows, absent));
  }
  CHECK(std::none_of(rows.begin(), rows.end(), [](const Material& m) { return m.needed <= 0; }));
  Plan plan = potting_bench_plan();
  plan.slabs.front().forms.stakes = 13;
  CHECK(find_material(materials_of(potting_bench_job(), plan), "stakes").packs == 2);
}

TEST_CASE("items without a price are named and count nothing", "[cost]") {
  Job job = potting_bench_job();
  job.mix.price = std::nullopt;
  job.tax = 0.08;
  const auto rows = materials_of(job, potting_bench_plan());
  const Cost cost = add_up(job, rows);
  CHECK(cost.unpriced == std::vector<std::string>{"rapid fine topping"});
  double sum = 0;
  for (const CostLine& line : cost.lines) sum += line.total.si();
  CHECK(cost.subtotal.si() == Approx(sum));
  CHECK(cost.tax.si() == Approx(sum * 0.08).margin(0.005));
  CHECK(cost.total.si() == Approx(cost.subtotal.si() + cost.tax.si()));
  CHECK(cost.currency == "USD");
}

TEST_CASE("money rounds to hundredths with halves up", "[cost]") {
  CHECK(to_cents(1.005).si() == Approx(1.01));
  CHECK(to_cents(1.0049).si() == Approx(1.00));
  CHECK(to_cents(0).si() == 0);
}

TEST_CASE("counted supplies on hand are pieces and measured ones are packs", "[materials]") {
  Job job = potting_bench_job();
  job.on_hand = {{"strip-screws", 50, std::nullopt, std::nullopt},
                 {"form-tape", 1, std::nullopt, std::nullopt}};
  const auto rows = materials_of(job, potting_bench_plan());
  const Material screws = find_material(rows, "strip-screws");
  CHECK(screws.on_hand == 50);
  CHECK(screws.packs == 1);  // 62 needed, 12 short
  const Material tape = find_material(rows, "form-tape");
  const double roll = supply(sample_supplies(), "form-tape").pack;
  CHECK(tape.on_hand == Approx(Length::m(roll).in_in() / 12));
}

TEST_CASE("tiny amounts are in the smaller unit", "[materials]") {
  const Material agent =
      find_material(materials_of(potting_bench_job(), potting_bench_plan()), "release-agent");
  CHECK(agent.unit == "fl oz");
  Job metric = potting_bench_job();
  metric.units = Units::metric;
  CHECK(find_material(materials_of(metric, potting_bench_plan()), "release-agent").unit == "mL");
}

TEST_CASE("the battens row says what to cut", "[materials]") {
  Plan plan = potting_bench_plan();
  plan.slabs.front().forms.ledger = Length::inches(204.5);
  plan.slabs.front().forms.ledger_pieces = {Length::inches(78.25), Length::inches(24),
                                            Length::inches(78.25), Length::inches(24)};
  CHECK(find_material(materials_of(potting_bench_job(), plan), "ledger-batten").note ==
        "cut 2 x 78 1/4 in and 2 x 24 in");
}

TEST_CASE("the surplus and a waste that saves a bag are said at the bags", "[materials]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  job.waste = 0.10;
  job.crew.bags_per_batch = 1;
  // 5 bags hold 9 % waste and a little more, so 10 % opens a sixth.
  plan.mix.concrete = plan.mix.yield * 5 * (1 / 1.095);
  const MixPlan mix = plan_mix(job, plan.mix.concrete);
  plan.mix.concrete = mix.concrete;
  plan.mix.waste = mix.waste;
  plan.mix.yield = mix.yield;
  plan.mix.bags_exact = mix.bags_exact;
  plan.mix.bags = mix.bags;
  plan.mix.surplus = mix.surplus;
  REQUIRE(mix.bags == 6);
  const std::string note = materials_of(job, plan).front().note;
  CHECK(note.find("will be left over: have a mould ready for a test tile") != std::string::npos);
  CHECK(note.find("with 9 % waste instead of 10 %, 1 bag fewer would do") != std::string::npos);
  // Below 5 % nothing is offered.
  job.waste = 0.05;
  CHECK(materials_of(job, plan).front().note.find("fewer would do") == std::string::npos);
}

TEST_CASE("doses that do not make the pour work say so", "[materials]") {
  Job job = potting_bench_job();
  job.additives = {retarder()};
  Plan plan = potting_bench_plan();
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 1, 4, kilograms(0.025)}};
  plan.pour.usable = minutes(10);
  plan.pour.feasible = false;
  CHECK(find_material(materials_of(job, plan), "retarder-scoop").note.find("does not work") !=
        std::string::npos);
  plan.pour.feasible = true;
  CHECK(find_material(materials_of(job, plan), "retarder-scoop").note.empty());
}

TEST_CASE("cloth is bought only for a cure of days", "[materials]") {
  Job job = potting_bench_job();
  const auto cloth = [&](Duration strip_after) {
    job.mix.strip_after = strip_after;
    return find_material(materials_of(job, potting_bench_plan()), "damp-cloth");
  };
  // 78 1/4 x 26 1/4 in = 14.26 ft2, and a tenth for laps; a roll has 54 ft2.
  CHECK(cloth(hours(12)).needed == Approx(14.2643 * 1.1).epsilon(1e-4));
  CHECK(cloth(hours(12)).packs == 1);
  CHECK(cloth(hours(11.9)).stock.empty());
}

TEST_CASE("tools fit how the mix cures", "[materials]") {
  Job job = potting_bench_job();
  const auto names = [&](Duration strip_after) {
    job.mix.strip_after = strip_after;
    const auto tools = list_tools(job, potting_bench_plan());
    return std::count(tools.begin(), tools.end(), "spray bottle for the cure");
  };
  CHECK(names(hours(24)) == 0);  // its cloth is bought
  CHECK(names(hours(2)) == 1);
}
