// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

/// True when one card serves both batches.
bool same_card(const Batch& a, const Batch& b) {
  const auto same_dose = [](const BatchDose& x, const BatchDose& y) {
    return x.name == y.name && x.doses == y.doses && x.amount == y.amount;
  };
  return a.bags == b.bags && a.dry == b.dry && a.water == b.water && a.ice == b.ice &&
         a.bucket_mark == b.bucket_mark && a.bucket_fills == b.bucket_fills &&
         std::equal(a.doses.begin(), a.doses.end(), b.doses.begin(), b.doses.end(), same_dose);
}

std::string water(const Batch& batch, Units units) {
  std::string text = fmt::format("{} ({} on a scale)", show_water(batch.water, units),
                                 show(batch.water_mass, units));
  if (!batch.bucket_mark) return text;
  const std::string mark =
      show(*batch.bucket_mark, units) + " deep in the bucket, from the inside bottom";
  if (batch.bucket_fills == 1) return text + ": " + mark;
  return text + fmt::format(": fill {} times, each time {}", batch.bucket_fills, mark);
}

std::string per_bag(const MixPlan& mix, Units units) {
  std::string text = fmt::format("Each bag: {} of water", show_water(mix.water_per_bag, units));
  if (mix.ice_per_bag > Mass{}) {
    text += fmt::format(", {} of it crushed ice", show(mix.ice_per_bag, units));
  }
  for (const DoseTotal& dose : mix.doses) {
    if (dose.per_bag == 0) continue;
    if (dose.falls) {
      text += "; " + dose.name + ": less from batch to batch, as below";
      continue;
    }
    text += "; " + dose.name + ": " + doses(dose.per_bag, dose.amount_per_bag, units);
  }
  return text + fmt::format(". It makes {}.", show_concrete(mix.yield, units));
}

Text ticks(int first, int last) {
  std::vector<std::string> boxes;
  for (int number = first; number <= last; ++number) boxes.push_back(fmt::format("[_]{}", number));
  return paragraph("    Mixed:  ", joined(boxes, "  "));
}

Text card(const Batch& first, const Batch& last, Units units) {
  const bool one = first.number == last.number;
  Text result = "\n" + paragraph("  ", one ? fmt::format("Batch {}:", first.number)
                                           : fmt::format("Batches {} to {}, each:", first.number,
                                                         last.number));
  Table table({{""}, {""}});
  table.add({"dry mix", fmt::format("{}, {}", bags(first.bags), show(first.dry, units))});
  table.add({"water", water(first, units)});
  if (first.ice > Mass{}) table.add({"crushed ice", show(first.ice, units) + " on a scale"});
  for (const BatchDose& dose : first.doses) {
    if (dose.doses > 0) table.add({dose.name, doses(dose.doses, dose.amount, units)});
  }
  return result + placed(table, 4) + ticks(first.number, last.number);
}

}  // namespace

Text mix_card(const Plan& plan) {
  if (plan.batches.empty()) return "";
  Text result = heading("MIX CARD") + paragraph("  ", per_bag(plan.mix, plan.units));
  int cards = 0;
  for (auto first = plan.batches.begin(); first != plan.batches.end(); ++cards) {
    const auto next = std::find_if(first, plan.batches.end(),
                                   [&](const Batch& batch) { return !same_card(*first, batch); });
    result += card(*first, *(next - 1), plan.units);
    first = next;
  }
  result += "\n";
  if (cards == 1 && plan.batches.size() > 1) {
    result += paragraph("  ",
                        "All batches are equal. Measure the water every time, mix for the same "
                        "minutes every time, and never add water to a batch that stiffens.");
  } else {
    result += paragraph("  ",
                        "Measure the water every time, and never add water to a batch that "
                        "stiffens.");
  }
  return result;
}

}  // namespace strikeoff::text
