// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "job/read_parts.h"
#include "job/suggest.h"

namespace strikeoff {
namespace {

constexpr Range<Length> stock_length{Length::mm(100), Length::m(100),
                                     "100 mm (4 in) and 100 m (328 ft)"};
constexpr Range<Length> stock_width{Length::mm(10), Length::m(10),
                                    "10 mm (3/8 in) and 10 m (32 ft)"};
constexpr Range<Length> stock_thickness{Length::mm(1), Length::mm(200),
                                        "1 mm (1/16 in) and 200 mm (8 in)"};
constexpr Range<Length> panel_gap{Length{}, Length::mm(50), "0 mm and 50 mm (2 in)"};
constexpr Range<Length> bend_radius{Length::mm(10), Length::m(10),
                                    "10 mm (3/8 in) and 10 m (32 ft)"};
constexpr Range<int> stock_quantity{0, 10000, "0 and 10000"};

/// The first entry of this kind for these units, or else the first of this kind, or nothing.
const Stock* first_stock(const std::vector<CatalogueEntry<Stock>>& entries, Units units,
                         bool bends) {
  const Stock* found = nullptr;
  for (const auto& entry : entries) {
    if (entry.item.bends_to.has_value() != bends) continue;
    if (entry.units == units) return &entry.item;
    if (found == nullptr) found = &entry.item;
  }
  return found;
}

constexpr auto example =
    R"({"name": "board", "length": "84 in", "width": "11 in", "thickness": "5/8 in"})";

}  // namespace

Stock read_stock_facts(Object& o) {
  Stock stock;
  stock.name = read_text(o.reader(), o.need("name", example)).value_or("");
  stock.id = stock.name;
  const auto length = [&](const char* key, const Range<Length>& range) {
    return read_quantity(o.reader(), o.need(key, example), range).value_or(Length{});
  };
  stock.length = length("length", stock_length);
  stock.width = length("width", stock_width);
  stock.thickness = length("thickness", stock_thickness);
  stock.price = o.number("price", any_price);
  stock.quantity = o.count("quantity", stock_quantity);
  stock.gap = o.quantity("gap", panel_gap);
  stock.bends_to = o.quantity("bends_to", bend_radius);
  return stock;
}

std::optional<Units> read_units_word(Reader& reader, const Node& node) {
  return read_choice<Units>(reader, node, {{"us", Units::us}, {"metric", Units::metric}});
}

const Stock& default_stock(const std::vector<CatalogueEntry<Stock>>& entries, Units units) {
  const Stock* found = first_stock(entries, units, false);
  return found == nullptr ? entries.front().item : *found;
}

const Stock* default_bend_stock(const std::vector<CatalogueEntry<Stock>>& entries, Units units) {
  return first_stock(entries, units, true);
}

std::string default_stock_reason(std::string_view what, Units units) {
  return fmt::format("the catalogue's first {} for {} jobs", what,
                     units == Units::us ? "US" : "metric");
}

template <class Item>
const Item* find_in_catalogue(Reader& reader, const Node& node,
                              const std::vector<CatalogueEntry<Item>>& entries,
                              const std::string& what, const std::string& command) {
  const auto id = read_text(reader, node);
  if (!id) return nullptr;
  std::vector<std::string> ids;
  for (const auto& entry : entries) {
    if (entry.item.id == *id) return &entry.item;
    ids.push_back(entry.item.id);
  }
  reader.error(node.pointer,
               {"unknown-id", fmt::format("the catalogue has no {} {}", what, in_quotes(*id)),
                did_you_mean(*id, ids,
                             fmt::format("see them all: strikeoff list {}; or describe your own",
                                         command))});
  return nullptr;
}

template const Mix* find_in_catalogue(Reader&, const Node&, const std::vector<CatalogueEntry<Mix>>&,
                                      const std::string&, const std::string&);
template const Stock* find_in_catalogue(Reader&, const Node&,
                                        const std::vector<CatalogueEntry<Stock>>&,
                                        const std::string&, const std::string&);
template const Additive* find_in_catalogue(Reader&, const Node&,
                                           const std::vector<CatalogueEntry<Additive>>&,
                                           const std::string&, const std::string&);
template const Sealer* find_in_catalogue(Reader&, const Node&,
                                         const std::vector<CatalogueEntry<Sealer>>&,
                                         const std::string&, const std::string&);

}  // namespace strikeoff
