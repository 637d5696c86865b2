// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr Pen cut_pen{0.25, "1.5 1"};

void pieces(const SlabPlan& slab, Paper& paper, const View& view) {
  for (const PanelPiece& piece : slab.panels) {
    paper.svg.begin_group("panel " + piece.mark);
    if (piece.outline.empty()) {
      paper.svg.box(view(piece.at), Fill::panel, usual_pen);
    } else {
      paper.svg.polygon(view(piece.outline), Fill::panel, usual_pen);
    }
    paper.svg.end_group();
    for (const Rectangle& cut : piece.cuts) {
      const Rectangle at{
          {piece.at.at.x + cut.at.x, piece.at.at.y + cut.at.y}, cut.length, cut.depth};
      paper.svg.begin_group("cut-out");
      paper.svg.box(view(at), Fill::paper, cut_pen);
      paper.svg.end_group();
    }
  }
}

/// Mark and size in the piece; beside the drawing where there is no room. What has none there
/// either comes back. Like pieces share their words.
std::vector<std::string> names(const SlabPlan& slab, Units units, Paper& paper, const View& view,
                               Labels& labels) {
  struct Beside {
    Callout callout;
    int pieces = 0;
  };
  std::vector<Beside> beside;
  std::vector<std::pair<std::string, std::vector<PaperPoint>>> marks;  // put last, off the leaders
  for (const PanelPiece& piece : slab.panels) {
    const PaperBox at = view(piece.at);
    const auto size = [&](const auto& length_words) {
      return fmt::format("{}: {} x {}", piece.mark, length_words(piece.at.length),
                         length_words(piece.at.depth));
    };
    const std::string both = size([&](Length l) { return both_units(l, units); }),
                      one = size([&](Length l) { return show(l, units); });
    const std::vector<PaperPoint> inside =
        spots_in(piece, view, {0.5, 0.35, 0.65}, {0.5, 0.25, 0.75, 0.1, 0.9});
    std::vector<PaperPoint> places = inside;
    for (PaperPoint& place : places) place.y += 1;  // the words' middle
    const auto fits = [&](const std::string& words) {
      return text_width(words, spot_word) < at.width * 0.68 && at.height > 5;
    };
    const auto put = [&](const std::string& words) {
      return fits(words) && labels.put(paper.svg, words, spot_word, places);
    };
    if (!put(both) && !put(one)) {
      if (fits(piece.mark)) marks.emplace_back(piece.mark, places);
      const auto highest = std::min_element(inside.begin(), inside.end(),
                                            [](const auto& a, const auto& b) { return a.y < b.y; });
      const PaperPoint tip =
          highest == inside.end() ? PaperPoint{at.x + at.width / 2, at.y} : *highest;
      const auto like = std::find_if(beside.begin(), beside.end(),
                                     [&](const Beside& each) { return each.callout.words == one; });
      Beside& its = like == beside.end() ? beside.emplace_back(Beside{{tip, one}}) : *like;
      ++its.pieces;
      // Of several the one nearest to the words.
      if (tip.x > its.callout.tip.x) its.callout.tip = tip;
    }
  }
  const PaperBox room = paper.room();
  std::vector<Callout> words;
  for (const Beside& each : beside) {
    words.push_back(each.callout);
    if (each.pieces > 1) {
      words.back().words = fmt::format("{} of {}", each.pieces, each.callout.words);
    }
  }
  std::vector<std::string> without =
      callouts(paper.svg, labels, room.right() - 50, room, std::move(words));
  for (const auto& [mark, places] : marks) {
    (void)labels.put(paper.svg, mark, spot_word, places);
  }
  return without;
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
      const PaperBox hole = view(
          Rectangle{{piece.at.at.x + cut.at.x, piece.at.at.y + cut.at.y}, cut.length, cut.depth});
      labels.keep_clear({hole.x - 1, hole.y - 1, hole.width + 2, hole.height + 2});
    }
  }
  const Point right{box.at.x + box.length, box.at.y}, back{box.at.x, box.at.y + box.depth};
  // Nothing lies on the paper yet that they could meet.
  (void)dimension(paper.svg, labels, view(box.at), view(right), -7, box.length, plan.units);
  (void)dimension(paper.svg, labels, view(box.at), view(back), 7, box.depth, plan.units);
  std::vector<std::string> notes{
      "Sizes as sawn from the sheet; leave the gaps between the panels."};
  std::vector<std::string> without = names(slab, plan.units, paper, view, labels);
  const std::size_t told = 8;
  if (without.size() > told) {
    notes.push_back(
        fmt::format("{} kinds of panels have no room for their sizes here: the cut list has them.",
                    without.size()));
  } else if (!without.empty()) {
    notes.push_back(fmt::format("No room in the drawing: {}.", joined(without, "; ")));
  }
  paper.scale_bar(view.scale);
  paper.legend(Fill::panel, usual_pen, "panel");
  paper.legend(Fill::paper, cut_pen, "cut out of it");
  paper.legend(Fill::none, hidden_pen, "base below");
  paper.legend(Fill::none, outline_pen, "edge of the slab");
  paper.notes(notes);
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<PaperPoint> spots_in(const PanelPiece& piece, const View& view,
                                 const std::vector<double>& across,
                                 const std::vector<double>& down) {
  const Polygon outline = piece.outline.empty() ? corners_of(piece.at) : piece.outline;
  std::vector<PaperPoint> spots;
  for (const double y : down) {
    for (const double x : across) {
      const Point spot{piece.at.at.x + piece.at.length * x,
                       piece.at.at.y + piece.at.depth * (1 - y)};
      if (contains(outline, spot)) spots.push_back(view(spot));
    }
  }
  return spots;
}

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
