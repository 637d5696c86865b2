// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Mass> bag_mass{kilograms(0.1), kilograms(2000),
                               "0.1 kg (4 oz) and 2000 kg (4400 lb)"};
constexpr Range<Volume> bag_yield{litres(0.05), litres(2000), "0.05 L and 2000 L (70 ft3)"};
constexpr Range<Volume> bag_water{litres(0.01), litres(1000), "10 mL and 1000 L (264 gal)"};
constexpr Range<Duration> working_time{minutes(1), hours(48), "1 min and 48 h"};
constexpr Range<MolarEnergy> activation{kilojoules_per_mole(1), kilojoules_per_mole(200),
                                        "1 kJ/mol and 200 kJ/mol"};
constexpr Range<Density> mix_density{kilograms_per_m3(200), kilograms_per_m3(6000),
                                     "200 kg/m3 (12 pcf) and 6000 kg/m3 (375 pcf)"};
constexpr Range<Length> aggregate{Length{}, Length::mm(100), "0 mm and 100 mm (4 in)"};
constexpr Range<Percent> binder{{0.01}, {1}, "1 % and 100 %"};
constexpr Range<Pressure> any_strength{kilopascals(1), megapascals(300),
                                       "1 kPa and 300 MPa (43500 psi)"};
constexpr Range<int> pack_count{1, 100000, "1 and 100000"};
constexpr auto inline_example =
    R"({"bag": "48 lb", "yield": "0.44 ft3", "water": {"least": "3.2 qt", "most": "4.2 qt"}})";

void read_water(Object& o, Mix& mix) {
  Reader& reader = o.reader();
  const std::size_t before = reader.errors();
  const Node node = o.need("water", R"("water": {"least": "3.2 qt", "most": "4.2 qt"})");
  if (!node) return;
  if (!node.json->object()) {
    wrong_kind(reader, node, "an object",
               R"(write {"least": "3.2 qt", "most": "4.2 qt"} per bag, or {"use": "3.7 qt"})");
    return;
  }
  Object water(reader, node, "the water of a mix");
  mix.water_least = water.quantity("least", bag_water);
  mix.water_most = water.quantity("most", bag_water);
  mix.water_use = water.quantity("use", bag_water);
  water.finish();
  if (reader.errors() != before) return;
  if (!mix.water_use && !(mix.water_least && mix.water_most)) {
    reader.error(node.pointer,
                 {"missing-key", "the water of a mix needs \"least\" and \"most\", or \"use\"",
                  R"(as on the label: {"least": "3.2 qt", "most": "4.2 qt"}, per bag)"},
                 Reader::Mark::key);
  }
  if (mix.water_least && mix.water_most && *mix.water_least > *mix.water_most) {
    reader.error(water.path("least"),
                 {"least-over-most", "\"least\" is more water than \"most\"", "swap the two"});
  }
}

void read_strength(Object& o, Mix& mix) {
  Reader& reader = o.reader();
  const auto pairs = read_list(reader, o.find("strength"), "[age, strength] pairs");
  if (!pairs) return;
  for (const Node& pair : *pairs) {
    const auto two = read_list(reader, pair, "an age and a strength");
    if (!two) continue;
    if (two->size() != 2) {
      reader.error(pair.pointer, {"not-a-pair", "an age and a strength are needed here",
                                  R"(as in ["28 d", "30 MPa"])"});
      continue;
    }
    const auto age = read_quantity(reader, (*two)[0], long_time);
    const auto strength = read_quantity(reader, (*two)[1], any_strength);
    if (!age || !strength) continue;
    if (!mix.strength.empty() && *age <= mix.strength.back().age) {
      reader.error((*two)[0].pointer,
                   {"not-rising", "the ages of a mix's strengths must rise", ""});
    }
    mix.strength.push_back({*age, *strength});
  }
}

void read_price_breaks(Object& o, Mix& mix) {
  Reader& reader = o.reader();
  const auto breaks = read_list(reader, o.find("price_breaks"), R"({"from", "price"} objects)");
  if (!breaks) return;
  for (const Node& node : *breaks) {
    Object entry(reader, node, "a price break");
    const auto from =
        read_count(reader, entry.need("from", R"({"from": 10, "price": 22})"), pack_count);
    const auto price =
        read_number(reader, entry.need("price", R"({"from": 10, "price": 22})"), any_price);
    entry.finish();
    if (!from || !price) continue;
    if (!mix.price_breaks.empty() && *from <= mix.price_breaks.back().from) {
      reader.error(entry.path("from"),
                   {"not-rising",
                    fmt::format("the \"from\" of price breaks must rise, {} follows {}", *from,
                                mix.price_breaks.back().from),
                    "put the smallest number of bags first"});
    }
    mix.price_breaks.push_back({*from, *price});
  }
}

/// A misplaced point in bag, yield or water shows in the density they imply, at the water in use
/// and at the least, which a plasticizer brings it down to.
void check_density(Object& o, const Mix& mix) {
  const bool range = mix.water_least && mix.water_most;
  const Volume middle = range ? (*mix.water_least + *mix.water_most) * 0.5 : *mix.water_use;
  const Volume holds_at = mix.yield_water.value_or(middle);
  for (const Volume water :
       {mix.water_use.value_or(middle), mix.water_use.value_or(mix.water_least.value_or(middle))}) {
    const Volume made = mix.yield + (water - holds_at);
    const bool nothing = made <= Volume{};
    const Density implied = nothing ? Density{} : (mix.bag + kilograms(in_litres(water))) / made;
    if (implied >= mix_density.least && implied <= mix_density.most) continue;
    o.reader().error(
        o.path("yield"),
        {"implausible-yield",
         nothing ? "with this yield and this water a bag would make no concrete"
                 : fmt::format("a bag of this mass and this yield would make concrete of {} kg/m3",
                               show_number(implied.si(), 0)),
         "the yield is what one bag makes, as on the label: \"0.44 ft3\" or \"12.5 L\""});
    return;
  }
}

void assume_inline_facts(Context& c, Object& o, Mix& mix, bool at_given) {
  if (!mix.yield_water && mix.water_least && mix.water_most) {
    c.reader.assume(weight_yield_water, o.path("yield_water"),
                    show_water((*mix.water_least + *mix.water_most) * 0.5, c.units),
                    "the label gives no water for its yield: the middle of least and most "
                    "(assumption)");
  }
  if (!at_given) {
    c.reader.assume(weight_mix_temperature, o.path("at"), show(mix.at, c.units),
                    "the label gives no temperature for its times (assumption)");
  }
}

}  // namespace

Mix read_mix_facts(Object& o) {
  Reader& reader = o.reader();
  const std::size_t before = reader.errors();
  Mix mix;
  mix.name = o.text("name").value_or("my mix");
  mix.id = mix.name;
  mix.bag = read_quantity(reader, o.need("bag", inline_example), bag_mass).value_or(Mass{});
  mix.yield = read_quantity(reader, o.need("yield", inline_example), bag_yield).value_or(Volume{});
  mix.yield_water = o.quantity("yield_water", bag_water);
  read_water(o, mix);
  mix.working_time = o.quantity("working_time", working_time);
  mix.at = o.quantity("at", any_temperature).value_or(Temperature::celsius(20));
  mix.activation_energy = o.quantity("activation_energy", activation);
  mix.final_set = o.quantity("final_set", long_time);
  mix.strip_after = o.quantity("strip_after", long_time);
  mix.sand_after = o.quantity("sand_after", long_time);
  mix.seal_after = o.quantity("seal_after", long_time);
  mix.full_service = o.quantity("full_service", long_time);
  read_strength(o, mix);
  mix.density = o.quantity("density", mix_density);
  mix.aggregate = o.quantity("aggregate", aggregate);
  mix.least_thickness = o.quantity("least_thickness", any_length);
  if (const auto share = o.quantity("binder", binder)) mix.binder = share->fraction;
  mix.price = o.number("price", any_price);
  read_price_breaks(o, mix);
  if (o.is_object() && reader.errors() == before) check_density(o, mix);
  return mix;
}

Mix read_mix(Context& c, const Node& node) {
  if (!node) return {};
  Mix mix;
  std::string energy_path = node.pointer + "/activation_energy";
  if (node.text()) {
    const Mix* found = find_in_catalogue(c.reader, node, c.catalogue.mixes, "mix", "mixes");
    if (found == nullptr) return {};
    mix = *found;
    c.reader.assume(weight_mix, node.pointer, mix.name,
                    "every number of a catalogue mix is invented: where the bag's label differs, "
                    "the label wins; give the mix inline");
  } else {
    Object o(c.reader, node, "the mix");
    mix = read_mix_facts(o);
    const bool at_given = static_cast<bool>(o.find("at"));
    o.finish();
    if (o.is_object()) assume_inline_facts(c, o, mix, at_given);
  }
  if (!mix.activation_energy && (mix.working_time || mix.strip_after || mix.full_service)) {
    c.reader.assume(
        weight_activation_energy, energy_path,
        "50 kJ/mol warmer, 30 kJ/mol cooler; 40 kJ/mol for hardening",
        "how strongly a warmer or cooler mix than the label's changes its times; cautious each "
        "way, and for hardening the middle of the 30 to 55 that are found (assumption)");
  }
  return mix;
}

void assume_water(Context& c, const Mix& mix, const std::vector<Additive>& additives) {
  if (mix.water_use || !mix.water_least || !mix.water_most) return;
  const bool plasticizer = std::any_of(additives.begin(), additives.end(), [](const Additive& a) {
    return a.kind == AdditiveKind::plasticizer && a.per_bag.value_or(0) > 0;
  });
  const Volume use = plasticizer ? *mix.water_least : (*mix.water_least + *mix.water_most) * 0.5;
  c.reader.assume(weight_water, "/mix/water/use", show_water(use, c.units),
                  plasticizer ? "per bag: the least on the label, as a plasticizer makes it flow "
                                "(assumption)"
                              : "per bag: the middle of the label's least and most (assumption)");
}

}  // namespace strikeoff
