// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr Length shown_inside = Length::mm(110);  // of base and slab
constexpr Length shown_base = Length::mm(55);     // below its top
constexpr Length isolation = Length::mm(5);

/// Sides that look alike in section.
struct Kind {
  const SidePlan* side;  // the first of them
  std::vector<std::string> names, edge_marks, soffit_marks;
};

/// The same but for the rounding of sums.
bool same_height(Length a, Length b) {
  return std::abs(a.in_mm() - b.in_mm()) < 1e-6;
}

bool alike(const SidePlan& a, const SidePlan& b) {
  return a.wall == b.wall && a.apron == b.apron && a.bracket == b.bracket &&
         a.overhang == b.overhang && a.panel_overhang == b.panel_overhang &&
         a.edge_strip == b.edge_strip && a.edge_drop == b.edge_drop &&
         a.soffit_strip == b.soffit_strip && same_height(a.thickness, b.thickness);
}

/// Each mark once, in the order in which it is first met.
void add_marks(std::vector<std::string>& marks, const std::string& more) {
  constexpr std::string_view between = ", ";
  for (std::size_t at = 0; at < more.size();) {
    const std::size_t end = std::min(more.find(between, at), more.size());
    const std::string mark = more.substr(at, end - at);
    if (std::find(marks.begin(), marks.end(), mark) == marks.end()) marks.push_back(mark);
    at = end + between.size();
  }
}

std::vector<Kind> kinds(const SlabPlan& slab) {
  std::vector<Kind> found;
  for (const SidePlan& side : slab.sides) {
    auto kind = std::find_if(found.begin(), found.end(),
                             [&](const Kind& each) { return alike(*each.side, side); });
    if (kind == found.end()) kind = found.insert(found.end(), {&side, {}, {}, {}});
    kind->names.push_back(side.name);
    add_marks(kind->edge_marks, side.edge_marks);
    add_marks(kind->soffit_marks, side.soffit_marks);
  }
  return found;
}

/// x runs out from the base's face, z up from its top.
struct Section {
  const SlabPlan& slab;
  const Kind& kind;
  const SidePlan& side;
  Units units;
  Paper& sheet;
  View view;
  Labels labels;
  std::vector<Callout> named = {};      // words at the right of the drawing
  std::vector<std::string> notes = {};  // and below it

  /// Where the words at the right begin.
  [[nodiscard]] double column() const;
  void part(const char* what, Length x, Length z, Length right, Length top, Fill fill) {
    if (right <= x || top <= z) return;
    sheet.svg.begin_group(what);
    sheet.svg.box(view(Rectangle{{x, z}, right - x, top - z}), fill, usual_pen);
    sheet.svg.end_group();
  }
  void measure(const char* what, const Point& from, const Point& to, double away) {
    const Length length = distance(from, Polygon{to});
    if (length <= Length{}) return;
    if (!dimension(sheet.svg, labels, view(from), view(to), away, length, units)) {
      notes.push_back(fmt::format("Not drawn: {}, {}.", what, both_units(length, units)));
    }
  }
  void name(const std::string& words, Length x, Length z) {
    named.push_back({view(Point{x, z}), words});
  }
};

Rectangle extent(const SlabPlan& slab, const SidePlan& side) {
  const Length down = std::max({shown_base, side.edge_drop + Length::mm(10)});
  return {{-shown_inside, -down},
          shown_inside + side.overhang + slab.strip_thickness + Length::mm(12),
          down + side.thickness + Length::mm(8)};
}

double Section::column() const {
  const Rectangle all = extent(slab, side);
  return std::min(view(Point{all.at.x + all.length, Length{}}).x + 32, sheet.room().right() - 72);
}

/// "E1, E2" or, where these are too many, where they stand.
std::string marks_of(Section& section, const char* strips, const std::vector<std::string>& marks,
                     Length size) {
  const std::string after = ", " + both_units(size, section.units);
  std::string words = fmt::format("{} {}{}", strips, joined(marks, ", "), after);
  if (text_width(words, TextStyle{2.8}) <= section.sheet.room().right() - section.column()) {
    return words;
  }
  section.notes.push_back(capital(fmt::format("{}s: {}.", strips, joined(marks, ", "))));
  return fmt::format("{}s{}: see below", strips, after);
}

/// The concrete's face: over the panel, down the slot beside it, and down the apron.
std::vector<PaperPoint> concrete(const Section& section) {
  const SlabPlan& slab = section.slab;
  const SidePlan& side = section.side;
  const Length t = side.thickness, p = slab.panel_thickness, o = side.overhang;
  const Length rim = p > Length{} ? side.panel_overhang : -shown_inside;
  Polygon corners{{-shown_inside, t}, {-shown_inside, p}};
  if (p > Length{}) corners.insert(corners.end(), {{rim, p}, {rim, Length{}}});
  if (side.apron) {
    const Length inner = slab.strip_thickness;
    corners.insert(corners.end(),
                   {{inner, Length{}}, {inner, -slab.apron_depth}, {o, -slab.apron_depth}});
  } else {
    corners.push_back({o, Length{}});
  }
  corners.push_back({o, t});
  return section.view(corners);
}

void bodies(Section& section) {
  const SlabPlan& slab = section.slab;
  const SidePlan& side = section.side;
  const Length o = side.overhang, s = slab.strip_thickness, t = side.thickness;
  const Rectangle all = extent(slab, side);
  const Length ground_end = side.wall ? o + isolation : o + s + Length::mm(12);
  section.part("base", -shown_inside, all.at.y, slab.on_ground ? ground_end : Length{}, Length{},
               slab.on_ground ? Fill::ground : Fill::pale);
  section.part("panel", -shown_inside, Length{}, side.panel_overhang, slab.panel_thickness,
               Fill::panel);
  section.sheet.svg.begin_group("concrete");
  section.sheet.svg.polygon(concrete(section), Fill::concrete, outline_pen);
  section.sheet.svg.end_group();
  if (side.wall) {
    section.part("isolation", o, Length{}, o + isolation, t, Fill::foam);
    section.part("wall", o + isolation, all.at.y, o + isolation + Length::mm(14), t + Length::mm(8),
                 Fill::ground);
    return;
  }
  const Length soffit_top = side.apron ? -slab.apron_depth : Length{};
  if (side.apron) section.part("foam", Length{}, -slab.apron_depth, s, Length{}, Fill::foam);
  if (side.soffit_strip > Length{}) {
    section.part("soffit", Length{}, soffit_top - s, o, soffit_top, Fill::wood);
  }
  section.part("edge-strip", o, -side.edge_drop, o + s, side.edge_strip - side.edge_drop,
               Fill::wood);
}

void draw_names(Section& section) {
  const SlabPlan& slab = section.slab;
  const SidePlan& side = section.side;
  const Length o = side.overhang, s = slab.strip_thickness, t = side.thickness,
               p = slab.panel_thickness;
  const bool varies = std::any_of(slab.sides.begin(), slab.sides.end(), [&](const SidePlan& each) {
    return !same_height(each.thickness, slab.edge_thickness);
  });
  // As far to the right as each reaches, so that the lines do not cross.
  section.name("concrete, " + both_units(t, section.units) +
                   (varies ? " at its thickest here" : " at the edge"),
               side.panel_overhang * 0.5 - Length::mm(8), p + (t - p) * 0.65);
  if (p > Length{}) {
    section.name("panel " + both_units(p, section.units), side.panel_overhang - Length::mm(12),
                 p / 2);
  }
  if (side.wall) {
    section.name("isolation strip", o + isolation / 2, t * 0.8);
    section.name("wall", o + isolation + Length::mm(8), t * 0.4);
  } else {
    section.name(marks_of(section, "edge strip", section.kind.edge_marks, side.edge_strip),
                 o + s / 2, side.edge_strip - side.edge_drop - Length::mm(6));
    if (side.soffit_strip > Length{}) {
      const Length z = side.apron ? -slab.apron_depth : Length{};
      section.name(marks_of(section, "soffit strip", section.kind.soffit_marks, side.soffit_strip),
                   o / 2, z - s / 2);
    }
    if (side.apron) section.name("foam board", s / 2, -slab.apron_depth / 2);
  }
  section.name(slab.on_ground ? "ground" : "base", -Length::mm(15), -shown_base * 0.75);
  if (side.bracket) section.name("brackets carry this side", Length::mm(2), -s - Length::mm(4));
  const PaperBox room = section.sheet.room();
  (void)callouts(section.sheet.svg, section.labels, section.column(),
                 {room.x, room.y + 4, room.width, room.height - 8}, section.named);
}

void dimensions(Section& section) {
  const SlabPlan& slab = section.slab;
  const SidePlan& side = section.side;
  const Length o = side.overhang, s = slab.strip_thickness, t = side.thickness,
               p = slab.panel_thickness, left = -shown_inside;
  const Length bottom = extent(slab, side).at.y;
  section.measure("thickness", {left, Length{}}, {left, t}, 16);
  if (p > Length{}) {
    section.measure("over the panel", {left, p}, {left, t}, 6);
    section.measure("beside the panel", {side.panel_overhang, t}, {o, t}, 12);
    section.measure("panel past the base", {Length{}, t}, {side.panel_overhang, t}, 6);
  }
  section.measure("overhang", {Length{}, bottom}, {o, bottom}, -5);
  if (!side.wall) {
    section.measure("edge strip", {o + s, -side.edge_drop},
                    {o + s, side.edge_strip - side.edge_drop}, -6);
  }
}

Drawing section_of(const Plan& plan, const SlabPlan& slab, const Kind& kind,
                   const std::string& name) {
  const std::string names = joined(kind.names, ", ");
  const bool few = kind.names.size() <= 4, all = kind.names.size() == slab.sides.size();
  const std::string title =
      title_of(slab, "edge section, " + (few   ? names
                                         : all ? std::string("all sides")
                                               : fmt::format("{} sides", kind.names.size())));
  Paper sheet(name, title, plan.name, plan.units,
              "Base, panel, concrete and form strips of one edge, cut through, to scale");
  const PaperBox room = sheet.room();
  const View view =
      view_of(extent(slab, *kind.side),
              {room.x + 42, room.y + 22, room.width - 144, room.height - 36}, plan.units);
  Section section{slab, kind, *kind.side, plan.units, sheet, view, Labels(room)};
  if (!kind.side->wall) {
    section.notes.push_back("The edge strip's top is set level; the straightedge runs over it.");
  }
  if (!few && !all) section.notes.push_back("Sides: " + names + ".");
  bodies(section);
  draw_names(section);
  dimensions(section);
  sheet.scale_bar(view.scale);
  sheet.legend(Fill::concrete, usual_pen, "concrete");
  if (slab.panel_thickness > Length{}) sheet.legend(Fill::panel, usual_pen, "panel, stays");
  if (!kind.side->wall) {
    sheet.legend(Fill::wood, usual_pen, "form strip, comes off");
  }
  if (kind.side->wall || kind.side->apron) {
    sheet.legend(Fill::foam, usual_pen, kind.side->wall ? "isolation strip" : "foam, comes off");
  }
  if (kind.side->wall || slab.on_ground) {
    sheet.legend(Fill::ground, usual_pen,
                 !kind.side->wall ? "ground"
                 : slab.on_ground ? "wall, ground"
                                  : "wall");
  }
  if (!slab.on_ground) sheet.legend(Fill::pale, usual_pen, "base");
  sheet.notes(section.notes);
  return {name, title, sheet.svg.str()};
}

}  // namespace

std::vector<Drawing> edge_sections(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    int number = 0;
    for (const Kind& kind : kinds(plan.slabs[i])) {
      drawings.push_back(
          section_of(plan, plan.slabs[i], kind, fmt::format("slab-{}-edge-{}", i + 1, ++number)));
    }
  }
  return drawings;
}

}  // namespace strikeoff::draw
