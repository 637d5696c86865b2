// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "core/outlines.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> apron_depth{Length::mm(5), Length::m(1), "5 mm (3/16 in) and 1 m (39 in)"};

/// What concrete needs beside the inner strip of an apron to be placed, and not to break off.
/// Assumption.
Length least_leg(const Context& c) {
  constexpr Length plain = Length::mm(30);
  return std::max(plain, 3 * c.aggregate.value_or(Length{}));
}

/// As the plan shows it, never less: advice that is rounded down does not help.
std::string show_at_least(Length length, Units units) {
  const Length step = units == Units::us ? Length::inches(1.0 / 16) : Length::mm(1);
  return show(step * std::ceil(length / step - 1e-9), units);
}

/// Reports the side that cannot have an apron.
bool can_have_apron(Context& c, const ListedSide& listed, const Side& side) {
  if (const auto error =
          without_overhang(side, "apron-without-overhang", "an apron hangs from an overhang")) {
    c.reader.error(listed.pointer, *error);
    return false;
  }
  if (!c.strip_thickness) return true;  // the forms are already rejected
  const Length leg = side.overhang - *c.strip_thickness, needed = least_leg(c);
  if (leg >= needed) return true;
  c.reader.error(
      listed.pointer,
      {"apron-too-thin",
       fmt::format("the apron of the side {} needs an overhang of {}, it has {}",
                   in_quotes(side.name), show_at_least(needed + *c.strip_thickness, c.units),
                   show(side.overhang, c.units)),
       fmt::format("the form's inner strip takes {} of it, and the concrete at least {}",
                   show(*c.strip_thickness, c.units), show_at_least(needed, c.units))});
  return false;
}

/// The sides named; without names every side that has an overhang.
std::vector<ListedSide> apron_sides(Context& c, const Node& node, const std::string& apron,
                                    const Base& base, const Slab& slab) {
  if (node) {
    auto sides = read_side_list(c, node, base);
    if (node.json->list() && node.json->list()->empty()) {
      c.reader.error(node.pointer, {"no-sides", "an apron needs at least one side",
                                    "leave the key out for all sides with an overhang"});
    }
    return sides;
  }
  std::vector<ListedSide> sides;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    if (slab.sides[k].overhang > Length{}) sides.push_back({k, apron});
  }
  if (sides.empty() && !slab.sides.empty()) {
    c.reader.error(
        apron,
        {"apron-without-overhang", "no side has an overhang, and an apron hangs from one",
         "give the slab its \"overhang\", or leave the apron out"},
        Reader::Mark::key);
  }
  return sides;
}

/// What a cut corner leaves of the concrete beside the apron's inner strips there. Where only one
/// side has an apron, it ends at the corner: a longer cut would open its end.
Length left_at_corner(const Slab& slab, Length strip, const CornerCut& cut) {
  const std::size_t n = slab.sides.size(), k = cut.corner;
  const Side &before = slab.sides[(k + n - 1) % n], &after = slab.sides[k];
  if (before.apron != after.apron) {
    const Length leg = (before.apron ? before : after).overhang - strip;
    return leg - set_back(sharp_outline(slab), cut);
  }
  const Polygon edge = chords(slab_edge(slab), drawn_within);
  const Point inner = inside_aprons(slab, strip)[k];
  return contains(edge, inner) ? distance(inner, edge) : Length{};
}

void check_cut(Context& c, const std::string& at, const Slab& slab, const CornerCut& cut) {
  const Side& after = slab.sides[cut.corner];
  const Side& before = slab.sides[(cut.corner + slab.sides.size() - 1) % slab.sides.size()];
  if (!before.apron && !after.apron) return;
  const bool ends_here = before.apron != after.apron;
  const Length needed = ends_here ? Length{} : least_leg(c);
  if (left_at_corner(slab, *c.strip_thickness, cut) >= needed - Length::mm(1e-3)) return;
  c.reader.error(
      at,
      {"corner-cut-past-apron",
       ends_here ? fmt::format("corner {} is cut back farther than the apron ending there is wide",
                               after.corner)
                 : fmt::format("corner {} is cut so far that less than {} of its apron is left",
                               after.corner, show_at_least(needed, c.units)),
       "cut the corner less, or give its sides more \"overhang\""},
      Reader::Mark::key);
}

}  // namespace

void read_apron(Context& c, const Node& node, const Base& base, Slab& slab) {
  if (!node) return;
  Object o(c.reader, node, "an apron");
  constexpr auto example = R"({"depth": "3 in", "sides": ["front"]})";
  const auto depth = read_quantity(c.reader, o.need("depth", example), apron_depth);
  const Node sides_node = o.find("sides");
  o.finish();
  if (!o.is_object()) return;
  if (slab.support == Support::ground) {
    c.reader.error(node.pointer,
                   {"apron-on-ground", "a slab on the ground has no apron",
                    "leave it out, or \"support\": \"base\""},
                   Reader::Mark::key);
    return;
  }
  slab.apron_depth = depth.value_or(Length{});
  for (const ListedSide& listed : apron_sides(c, sides_node, node.pointer, base, slab)) {
    Side& side = slab.sides[listed.index];
    side.apron = can_have_apron(c, listed, side);
    if (!side.apron && !sides_node) return;  // one place in the file, one message
  }
}

void check_apron(Context& c, const std::string& at, const Slab& slab) {
  if (!has_apron(slab) || !c.strip_thickness) return;
  const Polygon inner = inside_aprons(slab, *c.strip_thickness);
  if (swallowed_edge(slab.base, inner) || self_contact(inner)) {
    c.reader.error(at,
                   {"apron-swallows-side",
                    "between its aprons and its other sides the slab has a step that is too short",
                    "give the sides beside the step an apron too, or none"},
                   Reader::Mark::key);
    return;
  }
  for (const CornerCut& cut : slab.corner_cuts) check_cut(c, at, slab, cut);
}

std::optional<Length> most_panel_overhang(const Context& c, const Side& side) {
  return side.apron ? c.strip_thickness : std::nullopt;
}

}  // namespace strikeoff
