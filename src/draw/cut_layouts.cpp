// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle word{2.8, Anchor::middle, false, 0, true};

/// A board or sheet with its lower left corner at (0, 0).
struct Layout {
  Units units;
  Paper& paper;
  View view;
  Labels labels;

  [[nodiscard]] Box box(const Rectangle& at) const {
    const Spot corner = view(Point{at.at.x, at.at.y + at.depth});
    return {corner.x, corner.y, view(at.length), view(at.depth)};
  }

  /// A piece with its mark and size, which stand beside it where it is small.
  void piece(const Rectangle& at, const std::string& mark) {
    const Box on_paper = box(at);
    paper.svg.begin_group("piece");
    paper.svg.box(on_paper, Fill::paper, outline_pen);
    paper.svg.end_group();
    const std::string size =
        fmt::format("{}  {} x {}", mark, show(at.length, units), show(at.depth, units));
    words(on_paper, size, mark);
  }

  /// The longest of these that fits; the mark alone, in any case, somewhere near.
  void words(const Box& at, const std::string& all, const std::string& few) {
    const Spot centre{at.x + at.width / 2, at.y + at.height / 2 + 1};
    TextStyle style = word;
    for (const std::string& text : {all, few}) {
      style.turn = 0;
      if (text_width(text, style) < at.width - 1 && at.height > 3.4 &&
          labels.put(paper.svg, text, style, {centre})) {
        return;
      }
      style.turn = -90;
      if (text_width(text, style) < at.height - 1 && at.width > 3.4 &&
          labels.put(paper.svg, text, style, {{at.x + at.width / 2 + 1, centre.y - 1}})) {
        return;
      }
    }
    // A thin strip: small, somewhere along it where no neighbour's mark is.
    style.turn = 0;
    style.size = 2.2;
    std::vector<Spot> places;
    for (const double share : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}) {
      places.push_back({at.x + at.width * share, centre.y - 0.2});
    }
    (void)labels.put(paper.svg, few, style, places);
  }
};

void finish(Paper& sheet, const Scale& scale) {
  sheet.scale_bar(scale);
  sheet.legend(Fill::paper, outline_pen, "part, with its mark");
  sheet.legend(Fill::keep, thin_pen, "left over");
  sheet.note(
      "The gap between parts is the saw's cut. Rip full length first, then crosscut; sheets "
      "in the order of the cut list.");
}

/// Room for the layout, its dimensions left of and below it.
Box inner(const Box& room) {
  return {room.x + 16, room.y + 6, room.width - 30, room.height - 22};
}

void frame_dimensions(Layout& layout, const Rectangle& stock) {
  const Spot low = layout.view(Point{}), right = layout.view(Point{stock.length, Length{}}),
             top = layout.view(Point{Length{}, stock.depth});
  dimension(layout.paper.svg, layout.labels, low, right, -7,
            both_units(stock.length, layout.units));
  dimension(layout.paper.svg, layout.labels, low, top, 7, both_units(stock.depth, layout.units));
}

Drawing board_drawing(const Plan& plan, const Board& board, std::size_t number) {
  const std::string name = fmt::format("board-{}", number);
  const std::string title =
      fmt::format("Board {}: {}{}", number, board.stock, board.on_hand ? " (on hand)" : "");
  Paper paper(name, title, plan.name, plan.units, "Rips and crosscuts of one board, to scale");
  const Rectangle stock{{}, board.length, board.width};
  const View view = view_of(stock, inner(paper.room()), plan.units);
  Layout layout{plan.units, paper, view, Labels(paper.room())};
  paper.svg.begin_group("stock");
  paper.svg.box(layout.box(stock), Fill::keep, usual_pen);
  paper.svg.end_group();
  // The first strip lies at the top, where the fence is.
  Length top = board.width;
  for (const Strip& strip : board.strips) {
    Length x = plan.cut_list.end_trim;
    for (const Piece& piece : strip.pieces) {
      const Length width = piece.width.value_or(strip.width);
      layout.piece({{x, top - width}, piece.length, width}, piece.mark);
      x += piece.length + plan.cut_list.kerf;
    }
    top -= strip.width + plan.cut_list.kerf;
  }
  frame_dimensions(layout, stock);
  finish(paper, view.scale);
  return {name, title, paper.svg.str()};
}

Drawing sheet_drawing(const Plan& plan, const Sheet& cut, std::size_t number) {
  const std::string name = fmt::format("sheet-{}", number);
  const std::string title =
      fmt::format("Sheet {}: {}{}", number, cut.stock, cut.on_hand ? " (on hand)" : "");
  Paper paper(name, title, plan.name, plan.units, "Cuts of one sheet, to scale");
  const Rectangle stock{{}, cut.length, cut.width};
  const View view = view_of(stock, inner(paper.room()), plan.units);
  Layout layout{plan.units, paper, view, Labels(paper.room())};
  paper.svg.begin_group("stock");
  paper.svg.box(layout.box(stock), Fill::waste, usual_pen);
  paper.svg.end_group();
  for (const Rectangle& rest : cut.left_over) paper.svg.box(layout.box(rest), Fill::keep, thin_pen);
  for (const SheetPiece& piece : cut.pieces) layout.piece(piece.at, piece.mark);
  frame_dimensions(layout, stock);
  finish(paper, view.scale);
  return {name, title, paper.svg.str()};
}

}  // namespace

std::vector<Drawing> cut_layouts(const Plan& plan) {
  std::vector<Drawing> drawings;
  std::size_t number = 0;
  for (const Board& board : plan.cut_list.boards) {
    drawings.push_back(board_drawing(plan, board, ++number));
  }
  number = 0;
  for (const Sheet& sheet : plan.cut_list.sheets) {
    drawings.push_back(sheet_drawing(plan, sheet, ++number));
  }
  return drawings;
}

}  // namespace strikeoff::draw
