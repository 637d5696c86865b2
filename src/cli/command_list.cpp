// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <functional>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/page.h"
#include "core/format.h"
#include "render/text.h"
#include "strikeoff/catalogue.h"

namespace strikeoff::cli {
namespace {

using text::Align;
using text::Table;
using text::Text;

/// The values of one entry, each with what its mark says about its source.
class Values {
 public:
  explicit Values(const Marks& marks) : marks_(marks) {}

  void add(const std::string& key, const std::string& us, const std::string& metric) {
    const auto own = marks_.find(key);
    const auto all = marks_.find("");
    const std::string mark = own != marks_.end()   ? own->second
                             : all != marks_.end() ? all->second
                                                   : "";
    table_.add({key, us, us == metric ? "" : metric, mark});
  }
  void add(const std::string& key, const std::string& value) { add(key, value, value); }

  template <class T>
  void add(const std::string& key, const std::optional<T>& value) {
    if (value) add(key, shown(*value, Units::us), shown(*value, Units::metric));
  }
  void add_water(const std::string& key, const std::optional<Volume>& value) {
    if (value) add(key, show_water(*value, Units::us), show_water(*value, Units::metric));
  }
  void add_price(const std::optional<double>& price, const std::string& per) {
    if (price) add("price", fmt::format("{} a {}", show_number(*price, 2), per));
  }

  [[nodiscard]] Text text() const { return text::placed(table_, 4); }

 private:
  static std::string shown(Length value, Units units) { return show(value, units); }
  static std::string shown(Mass value, Units units) { return show(value, units); }
  static std::string shown(Temperature value, Units units) { return show(value, units); }
  static std::string shown(Volume value, Units units) { return show_concrete(value, units); }
  static std::string shown(Duration value, Units) { return show(value); }

  const Marks& marks_;
  Table table_{{{"value"}, {"US"}, {"metric"}, {"where it comes from"}}};
};

Text entry(const std::string& id, const std::string& name, const Values& values) {
  return "\n" + text::paragraph("  ", id + ": " + name) + values.text();
}

Text mix_entry(const CatalogueEntry<Mix>& mix) {
  const Mix& item = mix.item;
  Values values(mix.marks);
  values.add("bag", std::optional(item.bag));
  values.add("yield", std::optional(item.yield));
  values.add_water("yield_water", item.yield_water);
  values.add_water("water least", item.water_least);
  values.add_water("water most", item.water_most);
  values.add_water("water use", item.water_use);
  values.add("working_time", item.working_time);
  values.add("at", std::optional(item.at));
  values.add("final_set", item.final_set);
  values.add("strip_after", item.strip_after);
  values.add("sand_after", item.sand_after);
  values.add("seal_after", item.seal_after);
  values.add("full_service", item.full_service);
  values.add("aggregate", item.aggregate);
  values.add("least_thickness", item.least_thickness);
  if (item.binder) values.add("binder", show_percent(*item.binder) + " of the bag");
  values.add_price(item.price, "bag");
  return entry(item.id, item.name, values);
}

Text stock_entry(const CatalogueEntry<Stock>& stock) {
  const Stock& item = stock.item;
  Values values(stock.marks);
  values.add("length", std::optional(item.length));
  values.add("width", std::optional(item.width));
  values.add("thickness", std::optional(item.thickness));
  values.add("bends_to", item.bends_to);
  values.add_price(item.price, "piece");
  return entry(item.id, item.name, values);
}

Text additive_entry(const CatalogueEntry<Additive>& additive) {
  const Additive& item = additive.item;
  Values values(additive.marks);
  if (const Mass* mass = std::get_if<Mass>(&item.dose_size)) {
    values.add("dose_size", std::optional(*mass));
  }
  if (const Volume* volume = std::get_if<Volume>(&item.dose_size)) {
    values.add_water("dose_size", *volume);
  }
  values.add("step", show_number(item.step, 3) + " dose");
  if (item.most) values.add("most", show_number(*item.most, 2) + " doses a bag");
  if (item.extends) values.add("extends", show(*item.extends) + " a dose");
  values.add_price(item.price, "dose");
  return entry(item.id, item.name, values);
}

Text sealer_entry(const CatalogueEntry<Sealer>& sealer) {
  const Sealer& item = sealer.item;
  Values values(sealer.marks);
  values.add("coats", show_number(item.coats, 0));
  values.add("covers", show(item.covers, Units::us), show(item.covers, Units::metric));
  values.add_water("pack", item.pack);
  values.add("recoat", item.recoat);
  values.add_price(item.price, "pack");
  return entry(item.id, item.name, values);
}

Text supply_entry(const CatalogueEntry<Supply>& supply) {
  const Supply& item = supply.item;
  Values values(supply.marks);
  values.add("use", item.use);
  values.add("pack", item.pack_name);
  values.add("rate", item.rate_per == "each"
                         ? "counted one by one"
                         : fmt::format("{} {} for 1 {}", show_number(item.rate, 3), item.unit,
                                       item.rate_per));
  values.add_price(item.price, "pack");
  return entry(item.id, item.item, values);
}

template <class Item>
Text entries(const std::vector<CatalogueEntry<Item>>& all,
             const std::function<Text(const CatalogueEntry<Item>&)>& one) {
  Text result;
  for (const auto& item : all) result += one(item);
  return result;
}

Text listing(std::string_view what) {
  const Catalogue& catalogue = shipped_catalogue();
  if (what == "mixes") return entries<Mix>(catalogue.mixes, mix_entry);
  if (what == "boards") return entries<Stock>(catalogue.boards, stock_entry);
  if (what == "panels") return entries<Stock>(catalogue.panels, stock_entry);
  if (what == "additives") return entries<Additive>(catalogue.additives, additive_entry);
  if (what == "sealers") return entries<Sealer>(catalogue.sealers, sealer_entry);
  return entries<Supply>(catalogue.supplies, supply_entry);
}

}  // namespace

const std::vector<std::string>& list_names() {
  static const std::vector<std::string> names = {"mixes",     "boards",  "panels",
                                                 "additives", "sealers", "supplies"};
  return names;
}

ExitCode command_list(const ListArguments& arguments, const Streams& streams) {
  const Text all = text::paragraph("",
                                   "The goods shipped with strikeoff are invented: no shop sells "
                                   "them. Copy one into the job file and write what your label "
                                   "says. Prices are in the job's currency.") +
                   listing(arguments.what);
  print(streams.out, all.str(page_for(arguments.look, streams)));
  return planned;
}

}  // namespace strikeoff::cli
