// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

Text title(const Plan& plan) {
  return Text(Heading{plan.name.empty() ? "slab" : plan.name, '='});
}

Text when(const Plan& plan) {
  if (!plan.date) return "";
  if (!plan.date->time) return fmt::format("Pour day: {}\n", iso(*plan.date));
  return fmt::format("First water: {} (local time)\n", readable(iso(*plan.date)));
}

Text stops(const Plan& plan) {
  Text list;
  int number = 0;
  for (const Check& check : plan.checks) {
    if (check.level != Level::stop) continue;
    const std::string value = found(check);
    list += paragraph(fmt::format("!!! {}. ", ++number),
                      check.title + (value.empty() ? "" : " (" + value + ")"), Emphasis::stop);
    if (!check.advice.empty()) list += paragraph("!!!    ", "What to do: " + check.advice);
  }
  if (number == 0) return "";
  return "\n" +
         paragraph("!!! STOP: ",
                   fmt::format("do not pour this plan as it is. {} would fail or hurt someone:",
                               count(number, "thing", "things")),
                   Emphasis::stop) +
         list;
}

bool is_uneven(const SlabPlan& slab) {
  return slab.level_correction != Volume{} || slab.fall_wedge != Volume{};
}

/// What of a slab's concrete a plain slab would not need; empty for a plain one.
std::string extra_concrete(const SlabPlan& slab, Units units) {
  constexpr Volume shown = Volume::from_si(0.00005);  // less is printed as 0
  std::vector<std::string> parts;
  const auto add = [&](Volume volume, const char* purpose) {
    if (volume >= shown) parts.push_back(show_concrete(volume, units) + purpose);
  };
  add(slab.level_correction, " to level the base");
  add(-slab.level_correction, " less where the base rises");
  add(slab.fall_wedge, " for the fall of the top");
  add(slab.apron, " in the apron");
  return joined(parts, ", ");
}

std::string slab_line(const SlabPlan& slab, Units units) {
  std::string text = fmt::format("{}, {} thick at the edge", size(slab.outline, units),
                                 show(slab.edge_thickness, units));
  if (is_uneven(slab)) {
    text += fmt::format(" as asked, {} in all",
                        range(slab.thinnest.thickness, slab.thickest.thickness, units));
  } else if (slab.least_thickness < slab.edge_thickness) {
    text += fmt::format(", {} over the panel", show(slab.least_thickness, units));
  }
  return text + fmt::format("; weighs {}", show(slab.mass, units));
}

std::string stock_line(const StockTotal& total) {
  std::string text = fmt::format("{} x {}", total.used, total.stock);
  if (total.on_hand > 0) text += fmt::format(" ({} on hand, buy {})", total.on_hand, total.buy);
  return text;
}

std::string bags_line(const MixPlan& mix) {
  std::string text = fmt::format("{} of {}", count(mix.bags, "bag", "bags"), mix.name);
  if (mix.spare_bags > 0) text += fmt::format(", and {} kept closed as a spare", mix.spare_bags);
  return text;
}

}  // namespace

Text headline(const Plan& plan) {
  Table facts({{""}, {""}});
  for (const SlabPlan& slab : plan.slabs) {
    facts.add({plan.slabs.size() == 1 ? "Slab" : "Slab " + slab.name, slab_line(slab, plan.units)});
  }
  facts.add({"Concrete", fmt::format("{} in the forms, and {} for waste",
                                     show_concrete(plan.mix.concrete, plan.units),
                                     show_concrete(plan.mix.waste, plan.units))});
  for (const SlabPlan& slab : plan.slabs) {
    const std::string extra = extra_concrete(slab, plan.units);
    if (!extra.empty())
      facts.add({plan.slabs.size() == 1 ? "Of it" : "Of it, " + slab.name, extra});
  }
  facts.add({"Mix", bags_line(plan.mix)});
  const bool several = plan.pour.batches > 1;
  facts.add(
      {"Batches", several ? fmt::format("{}, one every {}", plan.pour.batches, show(plan.pour.takt))
                          : std::to_string(plan.pour.batches)});
  std::vector<std::string> stock;
  for (const StockTotal& total : plan.cut_list.totals) stock.push_back(stock_line(total));
  if (!stock.empty()) facts.add({"Boards, sheets", joined(stock, "; ")});
  if (several) facts.add({"Fresh edge waits", edge_verdict(plan.pour)});
  const std::string clock = time_of_day(plan.date, plan.pour.end, false);
  facts.add({"End of the pour", show(plan.pour.end) + " after the first water" +
                                    (clock.empty() ? "" : ", at " + clock)});
  const int unpriced = static_cast<int>(plan.cost.unpriced.size());
  const std::string left_out =
      unpriced == 0 ? "" : ", leaving out what has no price: " + count(unpriced, "item", "items");
  facts.add({"Cost", show_money(plan.cost.total, plan.cost.currency) + left_out});
  return title(plan) + when(plan) + stops(plan) + heading("IN SHORT") + placed(facts);
}

}  // namespace strikeoff::text
