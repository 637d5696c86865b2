// SPDX-License-Identifier: MIT
#include <fmt/core.h>

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
  if (mix.water_temperature) text += " at " + show(*mix.water_temperature, units);
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

Text rule(bool all_equal) {
  if (all_equal) {
    return paragraph("  ",
                     "All batches are equal. Measure the water every time, mix for the same "
                     "minutes every time, and never add water to a batch that stiffens.");
  }
  return paragraph("  ",
                   "Measure the water every time, and never add water to a batch that stiffens.");
}

bool any_batch(const Plan& plan, bool (*has)(const Batch&)) {
  return std::any_of(plan.batches.begin(), plan.batches.end(), has);
}

std::string bucket(const Batch& batch, Units units) {
  if (!batch.bucket_mark) return "-";
  const std::string mark = show(*batch.bucket_mark, units);
  return batch.bucket_fills == 1 ? mark : fmt::format("{} times {}", batch.bucket_fills, mark);
}

std::string dose_words(const Batch& batch, Units units) {
  std::vector<std::string> words;
  for (const BatchDose& dose : batch.doses) {
    if (dose.doses > 0) words.push_back(dose.name + ": " + doses(dose.doses, dose.amount, units));
  }
  return joined(words, "; ");
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

Text batch_rows(const Plan& plan) {
  if (plan.batches.empty()) return {};
  const Units units = plan.units;
  const bool ice = any_batch(plan, [](const Batch& batch) { return batch.ice > Mass{}; });
  const bool mark =
      any_batch(plan, [](const Batch& batch) { return batch.bucket_mark.has_value(); });
  const bool dosed = any_batch(plan, [](const Batch& batch) {
    return std::any_of(batch.doses.begin(), batch.doses.end(),
                       [](const BatchDose& dose) { return dose.doses > 0; });
  });
  std::vector<Column> columns = {
      {"Batch", Align::right}, {"Dry mix"}, {"Water"}, {"On a scale", Align::right}};
  if (mark) columns.push_back({"Bucket mark", Align::right});
  if (ice) columns.push_back({"Ice", Align::right});
  if (dosed) columns.push_back({"Doses"});
  columns.push_back({"Weighed"});
  columns.push_back({"Charged"});
  Table table(std::move(columns));
  for (const Batch& batch : plan.batches) {
    std::vector<std::string> row = {std::to_string(batch.number),
                                    bags(batch.bags) + ", " + show(batch.dry, units),
                                    show_water(batch.water, units), show(batch.water_mass, units)};
    if (mark) row.push_back(bucket(batch, units));
    if (ice) row.push_back(show(batch.ice, units));
    if (dosed) row.push_back(dose_words(batch, units));
    row.insert(row.end(), {"[ ]", "[ ]"});
    table.add(std::move(row));
  }
  Text result = paragraph("  ", per_bag(plan.mix, units)) + placed(std::move(table));
  if (mark) {
    result += paragraph("  ", "Bucket mark: how deep the water stands, from the inside bottom.");
  }
  const bool equal = std::all_of(plan.batches.begin(), plan.batches.end(), [&](const Batch& batch) {
    return same_card(plan.batches.front(), batch);
  });
  return result + rule(equal && plan.batches.size() > 1);
}

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
  return result + "\n" + rule(cards == 1 && plan.batches.size() > 1);
}

}  // namespace strikeoff::text
