// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "render/text_sections.h"
#include "render/text_table.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

std::string title(const Plan& plan) {
  std::string result;
  std::size_t widest = 0;
  for (const std::string& line : wrap(plan.name.empty() ? "slab" : plan.name, page_width)) {
    result += line + "\n";
    widest = std::max(widest, columns(line));
  }
  return result + std::string(widest, '=') + "\n";
}

std::string when(const Plan& plan) {
  if (!plan.date) return "";
  if (!plan.date->time) return fmt::format("Pour day: {}\n", iso(*plan.date));
  return fmt::format("First water: {} (local time)\n", readable(iso(*plan.date)));
}

std::string stops(const Plan& plan) {
  std::string list;
  int number = 0;
  for (const Check& check : plan.checks) {
    if (check.level != Level::stop) continue;
    const std::string value = found(check);
    list += paragraph(fmt::format("!!! {}. ", ++number),
                      check.title + (value.empty() ? "" : " (" + value + ")"));
    if (!check.advice.empty()) list += paragraph("!!!    ", "What to do: " + check.advice);
  }
  if (number == 0) return "";
  return fmt::format(
      "\n!!! STOP: do not pour this plan as it is. {} would fail or hurt someone:\n{}",
      count(number, "thing", "things"), list);
}

std::string slab_line(const SlabPlan& slab, Units units) {
  std::string text = fmt::format("{}, {} thick at the edge", size(slab.outline, units),
                                 show(slab.edge_thickness, units));
  if (slab.least_thickness < slab.edge_thickness) {
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

std::string headline(const Plan& plan) {
  Table facts({{""}, {""}});
  for (const SlabPlan& slab : plan.slabs) {
    facts.add({plan.slabs.size() == 1 ? "Slab" : "Slab " + slab.name, slab_line(slab, plan.units)});
  }
  facts.add({"Concrete", fmt::format("{} in the forms, and {} for waste",
                                     show_concrete(plan.mix.concrete, plan.units),
                                     show_concrete(plan.mix.waste, plan.units))});
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
  return title(plan) + when(plan) + stops(plan) + heading("IN SHORT") + facts.str();
}

}  // namespace strikeoff::text
