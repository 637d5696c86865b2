// SPDX-License-Identifier: MIT
#include "plan/materials.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "basis/basis.h"
#include "core/format.h"
#include "mix/mix.h"
#include "plan/purchasing.h"
#include "plan/steel_rows.h"
#include "plan/supplies.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

std::string bags_basis(const Job& job, const MixPlan& mix) {
  const int least = whole_packs(mix.bags_exact);
  std::string text = fmt::format(
      "{} net + {} waste = {}; {} a bag; {}, so {}", show_concrete(mix.concrete, job.units),
      show_percent(job.waste), show_concrete(mix.concrete + mix.waste, job.units),
      show_concrete(mix.yield, job.units), show_number(mix.bags_exact, 2), least);
  if (mix.bags > least) text += fmt::format(", {} for equal batches", mix.bags);
  if (mix.spare_bags > 0) text += fmt::format(", and {} spare kept closed", mix.spare_bags);
  return text;
}

// Assumptions: less waste than this is a gamble, and a smaller surplus is lost on the tools.
constexpr double least_waste = 0.05;
constexpr Volume least_surplus = Volume::from_si(0.0005);

/// "With 9 % waste instead of 10 % one bag fewer would do"; empty where no smaller whole percent
/// saves a bag.
std::string cheaper_waste(const Job& job, const MixPlan& mix) {
  const int batches = batch_count(mix, job.crew.bags_per_batch);
  const double fewer = std::floor((batches - 1) * job.crew.bags_per_batch + 1e-9);
  const double most = mix.yield * fewer / mix.concrete - 1;
  Job leaner = job;
  leaner.waste = std::floor(most * 100) / 100;
  if (leaner.waste < least_waste || leaner.waste >= job.waste) return "";
  const int saved = mix.bags - plan_mix(leaner, mix.concrete).bags;
  if (saved < 1) return "";
  return fmt::format("with {} waste instead of {}, {} fewer would do", show_percent(leaner.waste),
                     show_percent(job.waste), count(saved, "bag", "bags"));
}

void add_note(Material& row, const std::string& note) {
  if (note.empty()) return;
  row.note += (row.note.empty() ? "" : "; ") + note;
}

Material mix_bags(const Job& job, const Plan& plan) {
  Material bags;
  bags.item = job.mix.name;
  bags.stock = job.mix.id;
  bags.needed = plan.mix.bags + plan.mix.spare_bags;
  bags.unit = "bags";
  bags.on_hand = quantity_on_hand(job, bags);
  bags.pack = "bag of " + show(job.mix.bag, job.units);
  bags.basis = basis("bags-to-have", bags_basis(job, plan.mix));
  buy(job, whole_packs(bags.needed - bags.on_hand), job.mix.price, job.mix.price_breaks, bags);
  if (plan.mix.surplus >= least_surplus) {
    add_note(bags, fmt::format("about {} will be left over: have a mould ready for a test tile",
                               show_concrete(plan.mix.surplus, job.units)));
  }
  if (bags.packs > 0) add_note(bags, cheaper_waste(job, plan.mix));
  return bags;
}

std::string dose_pack(const std::variant<std::monostate, Mass, Volume>& size, Units units) {
  if (const Mass* mass = std::get_if<Mass>(&size)) return "dose of " + show(*mass, units);
  if (const Volume* volume = std::get_if<Volume>(&size)) {
    return "dose of " + show_water(*volume, units);
  }
  return "dose";
}

Material doses(const Job& job, const Plan& plan, const Additive& additive, const DoseTotal& total) {
  Material row;
  row.item = additive.name;
  row.stock = additive.id;
  row.needed = total.total;
  row.unit = "doses";
  row.on_hand = quantity_on_hand(job, row);
  row.pack = dose_pack(additive.dose_size, job.units);
  const double mixed = job.crew.bags_per_batch * plan.pour.batches;  // part bags not rounded up
  std::string worked =
      fmt::format("{} a bag x {} {} = {}", show_number(total.per_bag, 2), show_number(mixed, 2),
                  mixed == 1 ? "bag" : "bags", show_number(total.total, 2));
  if (total.falls) {
    worked = fmt::format("{} a bag in batch 1, falling to the last: {} in all",
                         show_number(total.per_bag, 2), show_number(total.total, 2));
  }
  if (const int whole = whole_packs(total.total); whole - total.total > 1e-9) {
    worked += fmt::format(", rounded up to {}", whole);
  }
  row.basis = basis("doses-to-have", worked);
  buy(job, whole_packs(total.total - row.on_hand), additive.price, {}, row);
  if (additive.kind == AdditiveKind::retarder && plan.pour.usable && !plan.pour.feasible) {
    add_note(row, "even with it the pour does not work as planned: mend the checks before buying");
  }
  return row;
}

std::vector<Material> additives(const Job& job, const Plan& plan) {
  std::vector<Material> rows;
  for (const DoseTotal& total : plan.mix.doses) {
    const auto additive = std::find_if(job.additives.begin(), job.additives.end(),
                                       [&](const Additive& a) { return a.name == total.name; });
    if (additive == job.additives.end() || total.total <= 0) continue;
    rows.push_back(doses(job, plan, *additive, total));
  }
  return rows;
}

std::string proof(const CutList& list, const StockTotal& total, const std::string& piece) {
  if (total.proven) return "no plan needs fewer";
  if (!list.unplaced.empty()) return "for the parts that fit";
  if (total.buy == total.buy_bound) return "no plan buys fewer";
  if (list.cost_gap && *list.cost_gap <= 0) return "no plan is cheaper";
  if (total.bound == 0) return "other boards of the job could do instead";
  return fmt::format("no plan needs fewer than {}", count(total.bound, piece, piece + "s"));
}

/// One row of a stock in the cut list; `piece` is "board" or "sheet".
Material stock_row(const Job& job, const Plan& plan, const Stock& stock, const StockTotal& total,
                   const std::string& piece) {
  Material row;
  row.item = stock.name;
  row.stock = stock.id;
  row.needed = total.used;
  row.unit = piece + "s";
  row.on_hand = total.on_hand;
  row.pack = piece;
  row.basis = basis("boards-to-have", proof(plan.cut_list, total, piece));
  // What is on hand is already off the number to buy: the cut list used it first.
  buy(job, total.buy, stock.price, {}, row);
  return row;
}

const Stock* sheet_of(const Job& job, const std::string& id) {
  for (const Slab& slab : job.slabs) {
    if (slab.panel && slab.panel->id == id) return &*slab.panel;
  }
  return nullptr;
}

const Stock* board_of(const Job& job, const std::string& id) {
  for (const Stock& stock : job.forms.strip_stock) {
    if (stock.id == id) return &stock;
  }
  const auto& bend = job.forms.bend_stock;
  return bend && bend->id == id ? &*bend : nullptr;
}

std::vector<Material> boards_and_sheets(const Job& job, const Plan& plan) {
  std::vector<Material> rows;
  for (const StockTotal& total : plan.cut_list.totals) {
    if (total.used == 0) continue;
    if (const Stock* board = board_of(job, total.stock)) {
      rows.push_back(stock_row(job, plan, *board, total, "board"));
    } else if (const Stock* sheet = sheet_of(job, total.stock)) {
      rows.push_back(stock_row(job, plan, *sheet, total, "sheet"));
    }
  }
  return rows;
}

bool has_steel(const Plan& plan) {
  return std::any_of(plan.slabs.begin(), plan.slabs.end(),
                     [](const SlabPlan& slab) { return !slab.steel.none(); });
}

}  // namespace

std::vector<std::string> list_tools(const Job& job, const Plan& plan) {
  std::vector<std::string> tools{"waterproof gloves", "goggles",       "dust mask",    "scale",
                                 "buckets",           "mixing paddle", "straightedge", "float",
                                 "steel trowel",      "spirit level"};
  if (!job.additives.empty()) tools.push_back("cups for the doses");
  if (plan.mix.water_temperature) tools.push_back("thermometer for the water");
  if (has_steel(plan)) tools.insert(tools.end(), {"spacers and tie wire", "bolt cutter"});
  if (!plan.cut_list.parts.empty()) tools.insert(tools.end(), {"saw", "screwdriver"});
  if (!plan.finish.sanding.empty()) tools.push_back("sander with water or extraction");
  if (plan.finish.fill_pits)
    tools.push_back("sieve, putty knife and a closed jar of dry mix for pits");
  if (plan.finish.coats > 0) tools.push_back("roller or cloth for the sealer");
  // Any other mix is kept wet under cloth, which is bought.
  if (!is_ordinary(job.mix)) tools.push_back("spray bottle for the cure");
  return tools;
}

std::vector<Material> list_materials(const Job& job, const Catalogue& catalogue, const Plan& plan) {
  std::vector<Material> rows{mix_bags(job, plan)};
  for (auto part : {additives(job, plan), steel_rows(job, plan), boards_and_sheets(job, plan),
                    list_supplies(job, catalogue, plan)}) {
    rows.insert(rows.end(), part.begin(), part.end());
  }
  return rows;
}

}  // namespace strikeoff
