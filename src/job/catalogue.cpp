// SPDX-License-Identifier: MIT
#include "strikeoff/catalogue.h"

#include <fmt/core.h>

#include <algorithm>
#include <stdexcept>
#include <type_traits>

#include "embedded.h"
#include "job/read_parts.h"
#include "strikeoff/diagnostic.h"

namespace strikeoff {
namespace {

constexpr Range<double> any_pack{1e-3, 1e6, "0.001 and 1000000"};

Supply read_supply_facts(Object& o) {
  const auto text = [&](const char* key) {
    return read_text(o.reader(), o.need(key, "the other supplies")).value_or("");
  };
  const auto number = [&](const char* key) {
    return read_number(o.reader(), o.need(key, "the other supplies"), any_pack).value_or(1);
  };
  Supply supply;
  supply.item = text("item");
  supply.use = text("use");
  supply.unit = text("unit");
  supply.pack = number("pack");
  supply.pack_name = text("pack_name");
  supply.rate = number("rate");
  supply.rate_per = text("rate_per");
  supply.price = o.number("price", any_price);
  return supply;
}

Marks read_marks(Object& o) {
  Marks marks;
  const Node node = o.need("marks", R"("marks": {"": "invented"})");
  if (!node || !node.json->object()) return marks;
  for (const auto& [key, value] : *node.json->object()) {
    marks[key] = read_text(o.reader(), {&value, pointer_to(node.pointer, key)}).value_or("");
  }
  return marks;
}

/// Reads one embedded list with the readers of the job. A mistake in it is ours.
template <class Item>
std::vector<CatalogueEntry<Item>> read_entries(std::string_view text, Item (*read_facts)(Object&)) {
  const JsonResult read = read_json(text);
  std::vector<CatalogueEntry<Item>> entries;
  std::vector<Diagnostic> problems = read.diagnostics;
  if (read.json) {
    Reader reader(*read.json);
    const auto nodes = read_list(reader, reader.root(), "goods");
    for (const Node& node : nodes.value_or(std::vector<Node>{})) {
      Object o(reader, node, "a catalogue entry");
      CatalogueEntry<Item> entry;
      entry.item = read_facts(o);
      entry.item.id = read_text(reader, o.need("id", "the other entries")).value_or("");
      entry.marks = read_marks(o);
      if constexpr (std::is_same_v<Item, Stock>) {
        entry.units = read_units_word(reader, o.need("units", R"("units": "us")"));
      }
      o.finish();
      entries.push_back(std::move(entry));
    }
    problems = reader.diagnostics(std::move(problems));
  }
  if (!problems.empty() || entries.empty()) {
    throw std::logic_error("the shipped catalogue is wrong:\n" +
                           render_diagnostics(problems, "catalogue", text));
  }
  return entries;
}

Additive read_catalogue_additive(Object& o) {
  return read_additive_facts(o, {});
}

}  // namespace

const Catalogue& shipped_catalogue() {
  static const Catalogue catalogue{
      read_entries<Mix>(embedded::mixes(), read_mix_facts),
      read_entries<Stock>(embedded::boards(), read_stock_facts),
      read_entries<Stock>(embedded::panels(), read_stock_facts),
      read_entries<Additive>(embedded::additives(), read_catalogue_additive),
      read_entries<Sealer>(embedded::sealers(), read_sealer_facts),
      read_entries<Supply>(embedded::supplies(), read_supply_facts),
  };
  return catalogue;
}

const Supply& supply(const Catalogue& catalogue, std::string_view id) {
  const auto entry = std::find_if(catalogue.supplies.begin(), catalogue.supplies.end(),
                                  [&](const auto& e) { return e.item.id == id; });
  if (entry == catalogue.supplies.end()) {
    throw std::logic_error(fmt::format("no supply \"{}\" in the catalogue", id));
  }
  return entry->item;
}

}  // namespace strikeoff
