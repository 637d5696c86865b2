// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "core/outlines.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> panel_overhang{Length::m(-1), Length::m(1),
                                       "-1 m (-39 in) and 1 m (39 in)"};
// A slot of 12 mm lets a fine mix down to the rim; 20 mm is what a thin sheet carries. Assumption.
constexpr Length least_slot = Length::mm(12);
constexpr Length most_default_overhang = Length::mm(20);
constexpr Length default_gap = Length::mm(3);  // assumption

std::string show_sides(const std::vector<Side>& sides, Units units) {
  const Length first = sides.front().panel_overhang;
  if (std::all_of(sides.begin(), sides.end(),
                  [&](const Side& side) { return side.panel_overhang == first; })) {
    return show(first, units);
  }
  std::string text;
  for (const Side& side : sides) {
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", side.name,
                        show(side.panel_overhang, units));
  }
  return text;
}

std::optional<Stock> read_panel_stock(Context& c, const Node& node) {
  if (node.text()) {
    const Stock* found = find_in_catalogue(c.reader, node, c.catalogue.panels, "panel", "panels");
    if (found == nullptr) return std::nullopt;
    return *found;
  }
  Object o(c.reader, node, "a panel's stock");
  Stock stock = read_stock_facts(o);
  o.finish();
  return stock;
}

/// Sets every side's panel overhang; reports one that passes the slab's edge.
void set_overhangs(Context& c, const Node& node, const std::string& assumed_at, const Base& base,
                   Slab& slab) {
  const auto given = read_side_lengths(c, node, base, panel_overhang);
  bool assumed = false, has_apron = false;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    Side& side = slab.sides[k];
    const SideLength& own = given[k];
    if (side.wall && !own.named) continue;  // 0 at a wall
    const Length most = most_panel_overhang(c, side).value_or(side.overhang);
    side.panel_overhang =
        own.length.value_or(std::min({side.overhang - least_slot, most_default_overhang, most}));
    assumed = assumed || (!own.length && own.pointer.empty());
    has_apron = has_apron || side.apron;
    if (own.length && side.panel_overhang > side.overhang) {
      c.reader.error(
          own.pointer,
          {"panel-past-edge",
           fmt::format("the panel runs {} past the base, but the slab only {} ({})",
                       show(side.panel_overhang, c.units), show(side.overhang, c.units), side.name),
           "the panel must end inside the slab's edge"});
      return;
    }
    if (own.length && side.panel_overhang > most) {
      c.reader.error(
          own.pointer,
          {"panel-over-apron",
           fmt::format("the panel runs {} past the base, over the apron of the side {}",
                       show(side.panel_overhang, c.units), in_quotes(side.name)),
           fmt::format("there it ends over the form's inner strip, at most {} past the base",
                       show(most, c.units))});
      return;
    }
  }
  if (!assumed || slab.sides.empty()) return;
  c.reader.assume(
      weight_panel_overhang, assumed_at, show_sides(slab.sides, c.units),
      fmt::format("past the base: the slab's overhang less 12 mm (1/2 in), at most 20 mm "
                  "(3/4 in), {}0 at a wall; negative is set back (assumption)",
                  has_apron ? "no farther than an apron's inner strip, " : ""));
}

void check_panel(Context& c, const std::string& at, const Slab& slab) {
  const Stock& panel = *slab.panel;
  if (panel.thickness >= slab.thickness) {
    c.reader.error(at, {"panel-too-thick",
                        fmt::format("the panel is {} thick and the slab's edge {}: no concrete "
                                    "would lie on it",
                                    show(panel.thickness, c.units), show(slab.thickness, c.units)),
                        "choose a thinner panel, a thicker slab, or \"panel\": \"none\""});
  }
  const Polygon outline = panel_outline(slab);
  if (swallowed_edge(slab.base, outline) || self_contact(outline)) {
    c.reader.error(at, {"panel-swallowed", "set back this far, the panel closes up on itself",
                        "give a smaller set-back, or \"panel\": \"none\""});
  }
}

}  // namespace

void read_panel(Context& c, Object& o, const Base& base, Slab& slab, bool shape_is_good) {
  const Node node = o.find("panel");
  const std::string path = o.path("panel");
  const std::size_t before = c.reader.errors();
  Node overhang;
  std::string gap_path = path + "/stock/gap";
  if (!node) {
    if (slab.support == Support::ground) {
      c.reader.assume(weight_panel, path, "none",
                      "a slab on the ground lies on its bed (assumption)");
      return;
    }
    slab.panel = default_stock(c.catalogue.panels, c.units);
    c.reader.assume(weight_panel, path, slab.panel->name,
                    default_stock_reason("sheet", c.units) +
                        ", its price invented; it takes its own thickness from the concrete: "
                        "\"none\" when the mix lies on the base (assumption)");
  } else if (node.is("none")) {
    return;
  } else if (slab.support == Support::ground) {
    c.reader.error(path,
                   {"panel-on-ground", "a slab on the ground has no panel",
                    "leave \"panel\" out, or \"support\": \"base\""},
                   Reader::Mark::key);
    return;
  } else if (node.json->object()) {
    Object panel(c.reader, node, "a panel");
    const Node stock = panel.need("stock", R"({"stock": "backer-34x52", "overhang": "1/4 in"})");
    if (stock) slab.panel = read_panel_stock(c, stock);
    overhang = panel.find("overhang");
    panel.finish();
  } else {
    slab.panel = read_panel_stock(c, node);
  }
  set_overhangs(c, overhang, path + "/overhang", base, slab);
  if (c.reader.errors() != before || !slab.panel) return;
  slab.panel_gap = slab.panel->gap.value_or(default_gap);
  if (!slab.panel->gap) {
    c.reader.assume(weight_panel_gap, gap_path, show(slab.panel_gap, c.units),
                    "between panels; the maker's data sheet wins (assumption)");
  }
  if (slab.panel_gap >= std::min(slab.panel->length, slab.panel->width)) {
    c.reader.error(gap_path, {"gap-over-panel",
                              fmt::format("a gap of {} is as wide as the panel itself",
                                          show(slab.panel_gap, c.units)),
                              "the gap is what stays open between neighbouring panels"});
    return;
  }
  if (shape_is_good) check_panel(c, node ? path : o.path("thickness"), slab);
}

}  // namespace strikeoff
