// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<double> dose_count{0, 1000, "0 and 1000"};
constexpr Range<double> dose_step{0.01, 100, "0.01 and 100"};
constexpr Range<double> time_factor{1, 100, "1 and 100"};
constexpr Range<Percent> of_binder{{0}, {0.2}, "0 % and 20 %"};
constexpr Range<Mass> dose_mass{kilograms(0.0001), kilograms(100), "0.1 g and 100 kg (220 lb)"};
constexpr Range<Volume> dose_volume{litres(0.0001), litres(100), "0.1 mL and 100 L (26 gal)"};
constexpr double usual_most_doses = 4;  // of a retarder; common practice, no source

/// A mass or a volume: what is neither is reported as no mass.
void read_dose_size(Object& o, Additive& additive) {
  const Node node = o.find("dose_size");
  if (!node) return;
  const bool volume =
      node.text() && std::holds_alternative<Volume>(parse_quantity<Volume>(*node.text()));
  if (volume) {
    if (const auto size = read_quantity(o.reader(), node, dose_volume)) additive.dose_size = *size;
  } else if (const auto size = read_quantity(o.reader(), node, dose_mass)) {
    additive.dose_size = *size;
  }
}

void read_factors(Object& o, Additive& additive) {
  Reader& reader = o.reader();
  const auto pairs = read_list(reader, o.find("factors"), "[doses, factor] pairs");
  if (!pairs) return;
  additive.factors.clear();
  for (const Node& pair : *pairs) {
    const auto two = read_list(reader, pair, "a number of doses and a factor");
    if (!two) continue;
    if (two->size() != 2) {
      reader.error(pair.pointer, {"not-a-pair", "a number of doses and a factor are needed here",
                                  "as in [1, 1.5]: one dose makes the working time half longer"});
      continue;
    }
    const auto doses = read_number(reader, (*two)[0], dose_count);
    const auto factor = read_number(reader, (*two)[1], time_factor);
    if (!doses || !factor) continue;
    if (!additive.factors.empty() &&
        (*doses <= additive.factors.back().doses || *factor < additive.factors.back().factor)) {
      reader.error(pair.pointer,
                   {"not-rising", "the doses of \"factors\" must rise, and the factors not fall",
                    "put the smallest number of doses first"});
    }
    additive.factors.push_back({*doses, *factor});
  }
}

void read_per_bag(Object& o, Additive& additive) {
  const Node node = o.find("per_bag");
  if (!node) return;
  if (!node.text()) {
    additive.per_bag = read_number(o.reader(), node, dose_count);
    return;
  }
  const std::string& text = *node.text();
  if (text == "auto") {
    if (additive.kind != AdditiveKind::retarder) {
      o.reader().error(node.pointer, {"auto-not-possible", "only a retarder's dose can be \"auto\"",
                                      "write the number of doses a bag"});
    }
    return;
  }
  if (additive.kind != AdditiveKind::fiber && additive.kind != AdditiveKind::pigment) {
    o.reader().error(node.pointer,
                     {"not-a-number", fmt::format("{} is not a number of doses", in_quotes(text)),
                      additive.kind == AdditiveKind::retarder ? "write a number, or \"auto\""
                                                              : "write a plain number"});
    return;
  }
  if (const auto share = read_quantity(o.reader(), node, of_binder)) {
    additive.binder_percent = share->fraction;
  }
}

void read_taper(Object& o, Additive& additive) {
  additive.taper = o.flag("taper").value_or(false);
  if (!additive.taper) return;
  const bool is_searched = additive.kind == AdditiveKind::retarder && !additive.per_bag;
  if (is_searched) return;
  o.reader().error(o.path("taper"),
                   {"taper-not-possible", "only a retarder whose dose is \"auto\" can be tapered",
                    R"(write "per_bag": "auto", or leave "taper" out)"},
                   Reader::Mark::key);
}

void check_dose(Object& o, const Additive& additive, const Mix& mix) {
  Reader& reader = o.reader();
  if (additive.per_bag) {
    const double steps = *additive.per_bag / additive.step;
    if (std::abs(steps - std::round(steps)) > 1e-6) {
      reader.error(o.path("per_bag"),
                   {"not-a-step",
                    fmt::format("{} doses cannot be measured in steps of {}",
                                show_number(*additive.per_bag, 6), show_number(additive.step, 6)),
                    "change the dose, or give the \"step\" you can measure"});
    }
  }
  if (additive.binder_percent && !mix.binder) {
    reader.error(o.path("per_bag"),
                 {"missing-binder", "a percent of binder needs the mix's \"binder\"",
                  R"(give the mix "binder": "25 %", or the number of doses a bag)"});
  }
  if (additive.binder_percent && std::holds_alternative<std::monostate>(additive.dose_size) &&
      additive.price) {
    reader.error(o.pointer(), {"missing-key", "a price per dose needs the \"dose_size\"",
                               R"(as in "dose_size": "100 g")"});
  }
}

void assume_auto(Context& c, const std::string& pointer) {
  c.reader.assume(weight_dose, pointer_to(pointer, "per_bag"), "auto",
                  "the least dose that keeps every edge workable (assumption)");
}

void assume_catalogue(Context& c, const std::string& pointer, const Additive& basis) {
  c.reader.assume(weight_mix, pointer, basis.name,
                  "what the job does not give is the catalogue's and invented; the label wins");
}

/// "auto" needs to know what a dose does and where to stop.
void complete_auto_dose(Context& c, Object& o, Additive& additive, bool per_bag_given) {
  if (additive.per_bag || additive.binder_percent) return;
  if (additive.kind != AdditiveKind::retarder) {
    c.reader.error(o.pointer(), {"missing-key", "an additive needs the key \"per_bag\"",
                                 "as in \"per_bag\": 1, the doses for one bag"});
    return;
  }
  if (!additive.extends && additive.factors.empty()) {
    c.reader.error(
        o.pointer(),
        {"missing-key", "an \"auto\" dose needs \"extends\" or \"factors\"",
         R"(as in "extends": "9 min", how much longer one dose keeps the mix workable)"});
    return;
  }
  if (!per_bag_given) assume_auto(c, o.pointer());
  if (additive.most) return;
  additive.most = additive.factors.empty() ? usual_most_doses : additive.factors.back().doses;
  c.reader.assume(weight_dose, o.path("most"), show_number(*additive.most, 2),
                  additive.factors.empty()
                      ? "doses a bag: common practice, no source; the label of the retarder wins"
                      : "doses a bag: as far as \"factors\" go");
}

const Additive* of_catalogue(const Context& c, const Node& name) {
  for (const auto& entry : c.catalogue.additives) {
    if (name.is(entry.item.id)) return &entry.item;
  }
  return nullptr;
}

Additive read_additive(Context& c, const Node& node, const Mix& mix) {
  if (node.text()) {
    const Additive* found =
        find_in_catalogue(c.reader, node, c.catalogue.additives, "additive", "additives");
    if (found == nullptr) return {};
    if (found->kind == AdditiveKind::retarder) {
      assume_catalogue(c, node.pointer, *found);
      assume_auto(c, node.pointer);
    } else {
      c.reader.error(node.pointer,
                     {"missing-key", "an additive needs the key \"per_bag\"",
                      fmt::format(R"(as in {{"name": "{}", "per_bag": 1}})", found->id)});
    }
    return *found;
  }
  Object o(c.reader, node, "an additive");
  if (!o.is_object()) return {};
  const std::size_t before = c.reader.errors();
  const Additive* basis = of_catalogue(c, o.find("name"));
  Additive additive = read_additive_facts(o, basis == nullptr ? Additive{} : *basis);
  read_per_bag(o, additive);
  read_taper(o, additive);
  const bool step_given = static_cast<bool>(o.find("step"));
  const bool per_bag_given = static_cast<bool>(o.find("per_bag"));
  o.finish();
  if (c.reader.errors() != before) return additive;
  check_dose(o, additive, mix);
  complete_auto_dose(c, o, additive, per_bag_given);
  if (basis != nullptr) {
    assume_catalogue(c, o.pointer(), *basis);
  } else if (!step_given && !additive.binder_percent) {
    c.reader.assume(weight_dose, o.path("step"), show_number(additive.step, 2),
                    "half a dose can still be measured (assumption)");
  }
  return additive;
}

}  // namespace

Additive read_additive_facts(Object& o, const Additive& basis) {
  Additive additive = basis;
  Reader& reader = o.reader();
  const auto name =
      read_text(reader, o.need("name", R"({"name": "retarder", "kind": "retarder"})"));
  if (name && basis.id.empty()) additive.id = additive.name = *name;
  const Node kind =
      basis.id.empty()
          ? o.need("kind", R"("kind": "retarder", "plasticizer", "fiber" or "pigment")")
          : o.find("kind");
  additive.kind = read_choice<AdditiveKind>(reader, kind,
                                            {{"retarder", AdditiveKind::retarder},
                                             {"plasticizer", AdditiveKind::plasticizer},
                                             {"fiber", AdditiveKind::fiber},
                                             {"pigment", AdditiveKind::pigment}})
                      .value_or(basis.kind);
  read_dose_size(o, additive);
  additive.step = o.number("step", dose_step).value_or(basis.step);
  if (const auto most = o.number("most", dose_count)) additive.most = most;
  if (const auto extends = o.quantity("extends", short_time)) additive.extends = extends;
  read_factors(o, additive);
  if (const auto price = o.number("price", any_price)) additive.price = price;
  return additive;
}

std::vector<Additive> read_additives(Context& c, const Node& node, const Mix& mix) {
  std::vector<Additive> additives;
  const auto entries = read_list(c.reader, node, "additives");
  if (!entries) return additives;
  std::set<std::string> names;
  for (const Node& entry : *entries) {
    additives.push_back(read_additive(c, entry, mix));
    const std::string& name = additives.back().name;
    if (name.empty() || names.insert(name).second) continue;
    c.reader.error(entry.pointer,
                   {"duplicate-name", fmt::format("two additives are named {}", in_quotes(name)),
                    "give each its own name: doses are measured and bought by it"});
  }
  const auto retarders = std::count_if(additives.begin(), additives.end(), [](const Additive& a) {
    return !a.id.empty() && a.kind == AdditiveKind::retarder;
  });
  if (retarders > 1) {
    c.reader.error(node.pointer,
                   {"two-retarders", "a mix takes one retarder at most",
                    "how two of them add up is not known"},
                   Reader::Mark::key);
  }
  return additives;
}

}  // namespace strikeoff
