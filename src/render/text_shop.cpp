// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

std::string amount(Money money) {
  return fmt::format("{:.2f}", money.si());
}

/// "2 rolls of 49 ft (15 m)": the first word of a pack is what is counted, "32 m in bars" where it
/// is a unit.
std::string packs(int number, const std::string& pack) {
  const std::size_t word = std::min(pack.find(' '), pack.size());
  const std::string counted = pack.substr(0, word);
  const bool unit = counted == "m" || counted == "m2" || counted == "ft" || counted == "ft2";
  if (number == 1 || unit) return fmt::format("{} {}", number, pack);
  const bool hissing = pack[word - 1] == 'x' || pack[word - 1] == 's' || pack[word - 1] == 'h';
  return fmt::format("{} {}{}{}", number, pack.substr(0, word), hissing ? "es" : "s",
                     pack.substr(word));
}

std::string to_buy(const Material& material) {
  if (material.packs == 0) return "nothing";
  if (material.pack.empty()) return std::to_string(material.packs);
  return packs(material.packs, material.pack);
}

std::string cost(const Material& material) {
  if (material.cost) return amount(*material.cost);
  return material.packs == 0 ? "-" : "no price";
}

/// "1 board", "2 boards", "23.8 ft2".
std::string need(const Material& material) {
  std::string unit = material.unit;
  if (material.needed == 1 && unit.size() > 2 && unit.ends_with('s')) unit.pop_back();
  return show_number(material.needed, material.needed < 1 ? 2 : 1) +
         (unit.empty() ? "" : " " + unit);
}

Table list(const Plan& plan) {
  Table table({{"[ ]"},
               {"Item"},
               {"Need", Align::right},
               {"On hand", Align::right},
               {"Buy"},
               {plan.cost.currency, Align::right}});
  for (const Material& material : plan.materials) {
    table.add({"[ ]", material.item, need(material),
               material.on_hand == 0 ? "-" : show_number(material.on_hand, 1), to_buy(material),
               cost(material)});
  }
  if (plan.cost.tax != Money{}) {
    table.add({"", "Subtotal", "", "", "", amount(plan.cost.subtotal)});
    table.add({"", "Tax", "", "", "", amount(plan.cost.tax)});
  }
  table.add({"", "TOTAL", "", "", "", amount(plan.cost.total)});
  return table;
}

}  // namespace

Text shop(const Plan& plan) {
  if (plan.materials.empty()) return "";
  Text result = heading("SHOP") + placed(list(plan));
  for (const Material& material : plan.materials) {
    if (!material.note.empty()) result += paragraph("  ", material.item + ": " + material.note);
  }
  if (!plan.cost.unpriced.empty()) {
    result += paragraph("  ", "No price is known for " + joined(plan.cost.unpriced, ", ") +
                                  ": the total leaves that out.");
  }
  if (!plan.also_ready.empty()) {
    result += paragraph(
        "  ", "Also have ready, not counted here: " + joined(plan.also_ready, ", ") + ".");
  }
  return result;
}

}  // namespace strikeoff::text
