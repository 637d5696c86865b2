// SPDX-License-Identifier: MIT
#include "strikeoff/draw.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff {
namespace {

/// A kind of drawing and how many of it a plan gets: 400 in all, so that no job, however large,
/// makes more than can be looked at (assumption).
struct Kind {
  std::vector<Drawing> (*draw)(const Plan&);
  std::size_t most;
  std::string_view name;
  std::string_view instead;  // where to look for what is not drawn
};

constexpr Kind kinds[] = {
    {draw::slab_plans, 80, "pages of slabs",
     "the cut list has the parts of all, the job file their shapes"},
    {draw::edge_sections, 60, "edge sections", "the cut list has the strips of all sides"},
    {draw::panel_layouts, 40, "panel layouts", "the cut list has all panels"},
    {draw::cut_layouts, 60, "boards and sheets", "the cut list has all"},
    {draw::templates, draw::most_template_pages, "pages of templates",
     "mark out the other openings with a tape"},
    {draw::pour_zones, 80, "slabs' batches", "the plan's table of batches has all"},
    {draw::timelines, 17, "timelines", "the plan's timetable has all"},
    {draw::curves, 2, "curves", "the plan in words has all"},
};

Drawing left_out_page(const Plan& plan, const std::vector<std::string>& words) {
  const std::string title = "What is not drawn";
  draw::Paper paper("left-out", title, plan.name, plan.units,
                    "Drawings left out because the plan has too many");
  draw::PaperPoint at{paper.room().x + 2, paper.room().y + 8};
  for (const std::string& each : words) {
    paper.svg.text(at, each, draw::TextStyle{4});
    at.y += 7;
  }
  return {"left-out", title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> drawings_of(const Plan& plan) {
  std::vector<Drawing> drawings;
  std::vector<std::string> left_out;
  for (const Kind& kind : kinds) {
    std::vector<Drawing> some = kind.draw(plan);
    if (some.size() > kind.most) {
      left_out.push_back(
          fmt::format("Only the first {} {} are drawn; {}.", kind.most, kind.name, kind.instead));
      some.resize(kind.most);
    }
    drawings.insert(drawings.end(), std::make_move_iterator(some.begin()),
                    std::make_move_iterator(some.end()));
  }
  if (!left_out.empty()) drawings.push_back(left_out_page(plan, left_out));
  return drawings;
}

namespace draw {

bool is_round(const OpeningPlan& opening) {
  return !opening.edge.empty() &&
         std::all_of(opening.edge.begin(), opening.edge.end(),
                     [](const OutlineEdge& edge) { return edge.sweep != 0; }) &&
         std::abs((opening.box.length - opening.box.depth).in_mm()) < 0.1;
}

bool has_shape(const SlabPlan& slab) {
  return slab.outline.size() > 2 && slab.sharp.size() > 2 &&
         slab.sides.size() == slab.sharp.size() && slab.base.size() > 2;
}

std::string title_of(const SlabPlan& slab, const std::string& words) {
  const std::string name = fitted(slab.name, 60, TextStyle{4});
  return name + ": " + words;
}

}  // namespace draw
}  // namespace strikeoff
