// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<int> any_grit{24, 3000, "24 and 3000"};
constexpr Range<int> any_coats{1, 10, "1 and 10"};
constexpr Range<Area> any_cover{Area::from_si(0.1), Area::from_si(1000),
                                "0.1 m2 (1 ft2) and 1000 m2 (10 764 ft2)"};
constexpr Range<Volume> any_can{litres(0.01), litres(1000), "10 mL and 1000 L (264 gal)"};
constexpr std::size_t most_grits = 10;
constexpr const char* sealer_example =
    R"({"name": "my sealer", "covers": "100 ft2", "pack": "1 qt"})";

/// Three grits: common practice, no source.
std::vector<int> usual_grits(Context& c, const std::string& path) {
  c.reader.assume(weight_sanding, path, "100, 200, 400",
                  "each once over top and visible edges (common practice, no source)");
  return {100, 200, 400};
}

std::vector<int> read_grits(Context& c, const Node& node, const std::string& path) {
  if (!node) return usual_grits(c, path);
  if (node.is("none")) return {};
  std::vector<int> grits;
  if (!node.json->list()) {
    wrong_kind(c.reader, node, "a list of grits", R"(as in [100, 200, 400], or "none")");
    return grits;
  }
  const auto entries = read_list(c.reader, node, "grits");
  if (!entries) return grits;
  if (entries->size() > most_grits) {
    c.reader.error(node.pointer, {"too-many", "a slab is sanded with 10 grits at most",
                                  R"(as in [100, 200, 400], or "none")"});
  }
  for (const Node& entry : *entries) {
    const auto grit = read_count(c.reader, entry, any_grit);
    if (!grit) continue;
    if (!grits.empty() && *grit <= grits.back()) {
      c.reader.error(entry.pointer,
                     {"not-rising", fmt::format("grit {} comes after grit {}", *grit, grits.back()),
                      "put the coarsest, which has the smallest number, first"});
    }
    grits.push_back(*grit);
  }
  return grits;
}

/// What was there before: a penetrating sealer on what people use, nothing on the ground.
std::optional<Sealer> usual_sealer(Context& c, const std::string& path,
                                   const std::vector<Slab>& slabs) {
  const bool on_base = std::any_of(slabs.begin(), slabs.end(),
                                   [](const Slab& slab) { return slab.support == Support::base; });
  if (!on_base || c.catalogue.sealers.empty()) {
    c.reader.assume(weight_sealer, path, "none", "a slab on the ground may stay bare (assumption)");
    return std::nullopt;
  }
  const Sealer& usual = c.catalogue.sealers.front().item;
  c.reader.assume(weight_sealer, path,
                  fmt::format("{}, {}", usual.name, count(usual.coats, "coat", "coats")),
                  "the catalogue's first, its numbers invented: the label wins (assumption)");
  return usual;
}

void assume_of_label(Context& c, Object& o, const Sealer& sealer, bool coats_given) {
  if (coats_given) return;
  c.reader.assume(weight_sealer, o.path("coats"), show_number(sealer.coats, 0),
                  "the job does not say (common practice, no source)");
}

std::optional<Sealer> read_sealer(Context& c, const Node& node) {
  if (node.is("none")) return std::nullopt;
  if (node.text()) {
    const Sealer* found =
        find_in_catalogue(c.reader, node, c.catalogue.sealers, "sealer", "sealers");
    if (found == nullptr) return std::nullopt;
    c.reader.assume(weight_sealer, node.pointer, found->name,
                    "every number of a catalogue sealer is invented: the label wins");
    return *found;
  }
  Object o(c.reader, node, "a sealer");
  if (!o.is_object()) return std::nullopt;
  Sealer sealer = read_sealer_facts(o);
  sealer.id = "sealer";
  assume_of_label(c, o, sealer, static_cast<bool>(o.find("coats")));
  o.finish();
  return sealer;
}

}  // namespace

Sealer read_sealer_facts(Object& o) {
  Sealer sealer;
  sealer.name = read_text(o.reader(), o.need("name", sealer_example)).value_or("");
  sealer.coats = o.count("coats", any_coats).value_or(sealer.coats);
  sealer.covers =
      read_quantity(o.reader(), o.need("covers", sealer_example), any_cover).value_or(Area{});
  sealer.pack =
      read_quantity(o.reader(), o.need("pack", sealer_example), any_can).value_or(Volume{});
  sealer.recoat = o.quantity("recoat", long_time);
  sealer.price = o.number("price", any_price);
  return sealer;
}

Finish read_finish(Context& c, const Node& node, const std::vector<Slab>& slabs) {
  Object o(c.reader, node, "the finish");
  Finish finish;
  finish.grits = read_grits(c, o.find("grits"), "/finish/grits");
  const Node pits = o.find("fill_pits");
  finish.fill_pits = read_flag(c.reader, pits).value_or(!finish.grits.empty());
  if (!pits && finish.fill_pits) {
    c.reader.assume(weight_sanding, "/finish/fill_pits", "yes",
                    "small holes of air show once the top is sanded (common practice, no source)");
  }
  const Node sealer = o.find("sealer");
  finish.sealer = sealer ? read_sealer(c, sealer) : usual_sealer(c, "/finish/sealer", slabs);
  o.finish();
  return finish;
}

}  // namespace strikeoff
