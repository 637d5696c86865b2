// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle word{2.8, Anchor::middle, false, 0, true};
constexpr Pen cut_pen{0.25, "1.5 1"};

PaperBox on_paper(const View& view, const Rectangle& at) {
  const PaperPoint corner = view(Point{at.at.x, at.at.y + at.depth});
  return {corner.x, corner.y, view(at.length), view(at.depth)};
}

void pieces(const SlabPlan& slab, Paper& paper, const View& view) {
  for (const PanelPiece& piece : slab.panels) {
    paper.svg.begin_group("panel " + piece.mark);
    if (piece.outline.empty()) {
      paper.svg.box(on_paper(view, piece.at), Fill::panel, usual_pen);
    } else {
      paper.svg.polygon(view(piece.outline), Fill::panel, usual_pen);
    }
    paper.svg.end_group();
    for (const Rectangle& cut : piece.cuts) {
      const Rectangle at{
          {piece.at.at.x + cut.at.x, piece.at.at.y + cut.at.y}, cut.length, cut.depth};
      paper.svg.begin_group("cut-out");
      paper.svg.box(on_paper(view, at), Fill::paper, cut_pen);
      paper.svg.end_group();
    }
  }
}

/// Mark and size in the piece; beside the drawing where there is no room.
void names(const SlabPlan& slab, Units units, Paper& paper, const View& view, Labels& labels) {
  std::vector<Callout> beside;
  for (const PanelPiece& piece : slab.panels) {
    const PaperBox at = on_paper(view, piece.at);
    const auto size = [&](const auto& length_words) {
      return fmt::format("{}: {} x {}", piece.mark, length_words(piece.at.length),
                         length_words(piece.at.depth));
    };
    const std::string both = size([&](Length l) { return both_units(l, units); }),
                      one = size([&](Length l) { return show(l, units); });
    std::vector<PaperPoint> places;
    for (const double y : {0.5, 0.25, 0.75, 0.1, 0.9}) {
      for (const double x : {0.5, 0.35, 0.65}) {
        places.push_back({at.x + at.width * x, at.y + at.height * y + 1});
      }
    }
    const auto put = [&](const std::string& words) {
      return text_width(words, word) < at.width * 0.68 && at.height > 5 &&
             labels.put(paper.svg, words, word, places);
    };
    if (!put(both) && !put(one)) {
      beside.push_back({{at.x + at.width / 2, at.y + at.height * 0.15}, one});
    }
  }
  const PaperBox room = paper.room();
  for (const std::string& words :
       callouts(paper.svg, labels, room.right() - 50, room, std::move(beside))) {
    paper.note("No room in the drawing: " + words);
    break;
  }
}

Drawing layout_of(const Plan& plan, const SlabPlan& slab, std::size_t number) {
  const std::string name = fmt::format("slab-{}-panels", number);
  const std::string title = title_of(slab, "panels on the base");
  Paper paper(name, title, plan.name, plan.units,
              "The panels in their places with marks, sizes and cut-outs, to scale");
  const PaperBox room = paper.room();
  const Rectangle box = bounding_box(slab.sharp);
  const View view =
      view_of(box, {room.x + 18, room.y + 6, room.width - 78, room.height - 22}, plan.units);
  Labels labels(room);
  pieces(slab, paper, view);
  paper.svg.polygon(view(slab.base), Fill::none, hidden_pen);
  paper.svg.polygon(view(slab.outline), Fill::none, outline_pen);
  for (const PanelPiece& piece : slab.panels) {
    for (const Rectangle& cut : piece.cuts) {
      const PaperBox hole = on_paper(
          view, {{piece.at.at.x + cut.at.x, piece.at.at.y + cut.at.y}, cut.length, cut.depth});
      labels.keep_clear({hole.x - 1, hole.y - 1, hole.width + 2, hole.height + 2});
    }
  }
  const Point right{box.at.x + box.length, box.at.y}, back{box.at.x, box.at.y + box.depth};
  dimension(paper.svg, labels, view(box.at), view(right), -7, both_units(box.length, plan.units));
  dimension(paper.svg, labels, view(box.at), view(back), 7, both_units(box.depth, plan.units));
  names(slab, plan.units, paper, view, labels);
  paper.scale_bar(view.scale);
  paper.legend(Fill::panel, usual_pen, "panel");
  paper.legend(Fill::paper, cut_pen, "cut out of it");
  paper.legend(Fill::none, hidden_pen, "base below");
  paper.legend(Fill::none, outline_pen, "edge of the slab");
  paper.note("Sizes as sawn from the sheet; leave the gaps between the panels.");
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> panel_layouts(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (std::size_t i = 0; i < plan.slabs.size(); ++i) {
    if (has_shape(plan.slabs[i]) && !plan.slabs[i].panels.empty()) {
      drawings.push_back(layout_of(plan, plan.slabs[i], i + 1));
    }
  }
  return drawings;
}

}  // namespace strikeoff::draw
