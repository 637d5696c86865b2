// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "job/read_parts.h"
#include "job/suggest.h"

namespace strikeoff {
namespace {

constexpr Range<double> any_quantity{1e-6, 1e6, "0.000001 and 1000000"};
constexpr Range<Length> offcut_size{Length::mm(10), Length::m(100),
                                    "10 mm (3/8 in) and 100 m (328 ft)"};

/// Every name a price or a stock on hand may go by: ids and names of the catalogue and the job.
std::vector<std::string> known_goods(const Catalogue& catalogue, const Job& job) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) {
      names.push_back(name);
    }
  };
  const auto add_item = [&](const auto& item) {
    add(item.id);
    add(item.name);
  };
  add_item(job.mix);
  for (const Additive& additive : job.additives) add_item(additive);
  for (const Stock& stock : job.forms.strip_stock) add_item(stock);
  if (job.forms.bend_stock) add_item(*job.forms.bend_stock);
  for (const Slab& slab : job.slabs) {
    if (slab.panel) add_item(*slab.panel);
    if (slab.reinforcement.kind == ReinforcementKind::bar) add("reinforcing-bar");
    if (slab.reinforcement.kind == ReinforcementKind::mesh) add("reinforcing-mesh");
  }
  if (job.finish.sealer) add_item(*job.finish.sealer);
  for (const auto& entry : catalogue.mixes) add_item(entry.item);
  for (const auto& entry : catalogue.boards) add_item(entry.item);
  for (const auto& entry : catalogue.panels) add_item(entry.item);
  for (const auto& entry : catalogue.additives) add_item(entry.item);
  for (const auto& entry : catalogue.sealers) add_item(entry.item);
  for (const auto& entry : catalogue.supplies) {
    add(entry.item.id);
    add(entry.item.item);
  }
  return names;
}

TextError unknown_goods(const std::string& name, const std::vector<std::string>& known) {
  return {"unknown-item", fmt::format("nothing in this job is called {}", in_quotes(name)),
          did_you_mean(name, known,
                       "use the name of a stock of the job, or an id from: strikeoff "
                       "list mixes, boards, panels, additives, sealers or supplies")};
}

template <class Item>
void set_price(const std::map<std::string, double>& prices, Item& item) {
  const auto by_id = prices.find(item.id), by_name = prices.find(item.name);
  if (by_name != prices.end()) item.price = by_name->second;
  if (by_id != prices.end()) item.price = by_id->second;
}

}  // namespace

void read_prices(Context& c, const Node& node, Job& job) {
  c.reader.assume(weight_prices, "/prices", "the catalogue's",
                  "where the job gives no price: they are invented, put in your shop's");
  if (!node) return;
  if (!node.json->object()) {
    wrong_kind(c.reader, node, "an object", R"(as in {"strip-screws": 9.5}, the price of a pack)");
    return;
  }
  const auto known = known_goods(c.catalogue, job);
  for (const auto& [name, value] : *node.json->object()) {
    if (name.starts_with("x-")) continue;
    const Node entry{&value, pointer_to(node.pointer, name)};
    const auto price = read_number(c.reader, entry, any_price);
    if (std::find(known.begin(), known.end(), name) == known.end()) {
      c.reader.error(entry.pointer, unknown_goods(name, known), Reader::Mark::key);
    } else if (price) {
      job.prices[name] = *price;
    }
  }
  set_price(job.prices, job.mix);
  for (Additive& additive : job.additives) set_price(job.prices, additive);
  for (Stock& stock : job.forms.strip_stock) set_price(job.prices, stock);
  if (job.forms.bend_stock) set_price(job.prices, *job.forms.bend_stock);
  if (job.finish.sealer) set_price(job.prices, *job.finish.sealer);
  for (Slab& slab : job.slabs) {
    if (slab.panel) set_price(job.prices, *slab.panel);
  }
}

void read_on_hand(Context& c, const Node& node, Job& job) {
  const auto entries = read_list(c.reader, node, "goods");
  if (!entries) return;
  const auto known = known_goods(c.catalogue, job);
  for (const Node& entry : *entries) {
    Object o(c.reader, entry, "goods on hand");
    if (!o.is_object()) continue;
    const Node stock = o.find("stock"), item = o.find("item");
    OnHand goods;
    if (bool(stock) == bool(item)) {
      c.reader.error(entry.pointer,
                     {stock ? "two-names" : "missing-key",
                      stock ? "goods on hand have a \"stock\" or an \"item\", not both"
                            : "goods on hand need the key \"stock\" or \"item\"",
                      R"(as in {"stock": "board-13x84", "quantity": 2})"});
    }
    const Node& name = stock ? stock : item;
    if (const auto text = read_text(c.reader, name)) {
      goods.item = *text;
      if (std::find(known.begin(), known.end(), *text) == known.end()) {
        c.reader.error(name.pointer, unknown_goods(*text, known));
      }
    }
    goods.quantity =
        read_number(c.reader, o.need("quantity", "\"quantity\": 2"), any_quantity).value_or(0);
    goods.length = o.quantity("length", offcut_size);
    goods.width = o.quantity("width", offcut_size);
    if (bool(o.find("length")) != bool(o.find("width"))) {
      c.reader.error(entry.pointer, {"missing-key", "an offcut needs its length and its width",
                                     R"(as in "length": "40 in", "width": "8 in")"});
    }
    o.finish();
    job.on_hand.push_back(std::move(goods));
  }
}

}  // namespace strikeoff
