// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <set>

#include "core/format.h"
#include "core/outlines.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> slab_overhang{Length{}, Length::m(1), "0 mm and 1 m (39 in)"};
constexpr Range<Length> slab_thickness{Length::mm(5), Length::m(1),
                                       "5 mm (3/16 in) and 1 m (39 in)"};
constexpr Range<Density> slab_density{kilograms_per_m3(200), kilograms_per_m3(6000),
                                      "200 kg/m3 (12 pcf) and 6000 kg/m3 (375 pcf)"};

void read_walls(Context& c, const Node& node, const Base& base, Slab& slab) {
  const auto walls = read_list(c.reader, node, "sides");
  if (!walls) return;
  for (const Node& wall : *walls) {
    const auto k = read_side(c, wall, base);
    if (!k) continue;
    if (slab.sides[*k].wall) {
      c.reader.error(wall.pointer, {"side-given-twice",
                                    fmt::format("the side {} already meets a wall",
                                                in_quotes(slab.sides[*k].name)),
                                    "keep one"});
    }
    slab.sides[*k].wall = true;
  }
}

void check_side_overhang(Context& c, const SideLength& given, const Side& side, const Slab& slab) {
  if (!given.length || *given.length == Length{}) return;
  if (side.wall && given.named) {
    c.reader.error(given.pointer,
                   {"overhang-at-wall",
                    fmt::format("the side {} meets a wall, so the slab cannot run past it",
                                in_quotes(side.name)),
                    "leave its overhang out, or take it out of \"walls\""});
  } else if (slab.support == Support::ground && (given.named || side.number == 1)) {
    c.reader.error(given.pointer,
                   {"overhang-on-ground", "a slab on the ground has no overhang",
                    "give the slab's own size as its base, or \"support\": \"base\""});
  }
}

/// Sets every side's overhang; says which were assumed.
void read_overhang(Context& c, Object& o, const Base& base, Slab& slab) {
  const Node node = o.find("overhang");
  const auto given = read_side_lengths(c, node, base, slab_overhang);
  const std::size_t before = c.reader.errors();
  bool assumed = false;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    Side& side = slab.sides[k];
    check_side_overhang(c, given[k], side, slab);
    if (side.wall) continue;
    side.overhang = given[k].length.value_or(Length{});
    assumed = assumed || (!given[k].length && given[k].pointer.empty());
  }
  if (!assumed || slab.support == Support::ground || c.reader.errors() != before) return;
  c.reader.assume(weight_overhang, node ? o.path("overhang") + "/all" : o.path("overhang"),
                  show(Length{}, c.units),
                  "where no overhang is given the slab ends flush with its base (assumption)");
}

bool outline_is_good(Context& c, const Object& o, const Slab& slab) {
  const Polygon outline = sharp_outline(slab);
  if (const auto edge = swallowed_edge(slab.base, outline)) {
    const bool inner = !is_convex_corner(slab.base, *edge) ||
                       !is_convex_corner(slab.base, (*edge + 1) % slab.base.size());
    c.reader.error(o.path("overhang"),
                   {"overhang-swallows-side",
                    fmt::format("with this overhang nothing is left of the side {}",
                                in_quotes(slab.sides[*edge].name)),
                    inner ? "it lies in an inner corner: give its neighbours less overhang, or "
                            "give the base without the notch"
                          : "its neighbours close in front of it: give it less overhang, or its "
                            "neighbours more"},
                   Reader::Mark::key);
    return false;
  }
  if (const auto contact = self_contact(outline)) {
    c.reader.error(o.path("overhang"),
                   {"outline-touches-itself",
                    fmt::format("with this overhang the side {} runs into the side {}",
                                in_quotes(slab.sides[contact->second].name),
                                in_quotes(slab.sides[contact->first].name)),
                    "give one of them less overhang"},
                   Reader::Mark::key);
    return false;
  }
  return true;
}

Slab read_slab(Context& c, const Node& node, const std::string& default_name) {
  Object o(c.reader, node, "a slab");
  Slab slab;
  if (!o.is_object()) return slab;
  const std::size_t before = c.reader.errors();
  slab.name = o.text("name").value_or(default_name);
  slab.support =
      o.choice<Support>("support", {{"base", Support::base}, {"ground", Support::ground}})
          .value_or(Support::base);
  std::string base_example = R"("base": {"rectangle": {"length": "76 in", "depth": "24 in"}})";
  if (slab.support == Support::ground) {
    base_example += ": a slab on the ground gives its own outline as its base";
  }
  const Base base = read_base(c, o.need("base", base_example));
  slab.base = base.polygon;
  slab.sides = base.sides;
  slab.closing = base.closing;
  slab.diagonal = base.diagonal;
  slab.partitions = base.partitions;
  slab.legs = base.legs;
  if (slab.support == Support::ground && !slab.legs.empty()) {
    c.reader.error(o.path("base") + "/legs",
                   {"legs-on-ground", "a slab on the ground stands on no legs",
                    "leave them out, or \"support\": \"base\""},
                   Reader::Mark::key);
  }
  slab.gaps = base.gaps;
  read_walls(c, o.find("walls"), base, slab);
  read_overhang(c, o, base, slab);
  read_apron(c, o.find("apron"), base, slab);
  const auto thickness = read_quantity(
      c.reader, o.need("thickness", R"("thickness": "1 3/4 in", of the visible edge)"),
      slab_thickness);
  slab.thickness = thickness.value_or(Length{});
  bool good = c.reader.errors() == before && outline_is_good(c, o, slab);
  read_panel(c, o, base, slab, good);
  good = good && c.reader.errors() == before;
  read_corner_cuts(c, o.find("corner_treatment"), base, slab, good);
  good = good && c.reader.errors() == before;
  if (good) check_apron(c, o.path("apron"), slab);
  good = good && c.reader.errors() == before;
  read_openings(c, o.find("openings"), slab, good);
  read_levels(c, o.find("levels"), slab);
  read_fall(c, o.find("fall"), base, slab);
  read_reinforcement(c, o.find("reinforcement"), base, slab);
  read_brackets(c, o.find("brackets"), base, slab);
  slab.density = o.quantity("density", slab_density);
  o.finish();
  return slab;
}

}  // namespace

std::vector<Slab> read_slabs(Context& c, const Node& node) {
  std::vector<Slab> slabs;
  const auto entries = read_list(c.reader, node, "slabs");
  if (!entries) return slabs;
  if (entries->empty()) {
    c.reader.error(node.pointer, {"no-slabs", "a job has at least one slab", "see: strikeoff new"},
                   Reader::Mark::key);
  }
  std::set<std::string> names;
  for (const Node& entry : *entries) {
    const std::string number = fmt::format("slab {}", slabs.size() + 1);
    slabs.push_back(read_slab(c, entry, entries->size() == 1 ? "slab" : number));
    if (!slabs.back().name.empty() && !names.insert(slabs.back().name).second) {
      c.reader.error(
          pointer_to(entry.pointer, "name"),
          {"duplicate-name", fmt::format("two slabs are named {}", in_quotes(slabs.back().name)),
           "give each its own name: parts and batches are sorted by it"});
    }
  }
  return slabs;
}

}  // namespace strikeoff
