// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle list_word{2.8};
constexpr double line_height = 4.2;
constexpr std::size_t most_lines = 12;

/// A board or sheet with its lower left corner at (0, 0).
struct Layout {
  Units units;
  Paper& paper;
  View view;
  Labels labels;
  std::vector<Callout> beside = {};  // words that found no room in their piece

  [[nodiscard]] PaperBox box(const Rectangle& at) const {
    const PaperPoint corner = view(Point{at.at.x, at.at.y + at.depth});
    return {corner.x, corner.y, view(at.length), view(at.depth)};
  }

  void outline(const Rectangle& at) {
    paper.svg.begin_group("piece");
    paper.svg.box(box(at), Fill::paper, usual_pen);
    paper.svg.end_group();
  }

  /// The longest of these that fits inside.
  [[nodiscard]] bool words(const Rectangle& piece, const std::vector<std::string>& texts) {
    const PaperBox at = box(piece);
    for (const std::string& text : texts) {
      TextStyle style{2.8, Anchor::middle};
      if (text_width(text, style) < at.width - 1 && at.height > 3.6 &&
          labels.put(paper.svg, text, style, {{at.x + at.width / 2, at.y + at.height / 2 + 1}})) {
        return true;
      }
      style.turn = -90;
      if (text_width(text, style) < at.height - 1 && at.width > 3.6 &&
          labels.put(paper.svg, text, style, {{at.x + at.width / 2 + 1, at.y + at.height / 2}})) {
        return true;
      }
    }
    return false;
  }

  [[nodiscard]] std::string size_of(const std::string& name, const Rectangle& at) const {
    return fmt::format("{}: {} x {}", name, show(at.length, units), show(at.depth, units));
  }

  /// The name with both sides, in as many units as there is room for, or alone.
  [[nodiscard]] bool sized(const std::string& name, const Rectangle& at) {
    return words(at, {fmt::format("{}: {} x {}", name, both_units(at.length, units),
                                  both_units(at.depth, units)),
                      size_of(name, at), name});
  }
};

void finish(Paper& sheet, const Scale& scale, const std::string& order) {
  sheet.scale_bar(scale);
  sheet.legend(Fill::paper, usual_pen, "part, with its mark");
  sheet.note("The gap between parts is the saw's cut. " + order);
}

/// Room for the layout, its dimensions left of and below it, `right` mm of words at its right, and
/// `lines` of words under it.
PaperBox inner(const PaperBox& room, double lines, double right) {
  return {room.x + 16, room.y + 4, room.width - 16 - right, room.height - 18 - lines * line_height};
}

void frame_dimensions(Layout& layout, const Rectangle& stock) {
  const PaperPoint low = layout.view(Point{}), right = layout.view(Point{stock.length, Length{}}),
                   top = layout.view(Point{Length{}, stock.depth});
  dimension(layout.paper.svg, layout.labels, low, right, -7,
            both_units(stock.length, layout.units));
  dimension(layout.paper.svg, layout.labels, low, top, 7, both_units(stock.depth, layout.units));
}

/// Strip by strip in words: what to set the fence to, and what to cut from the strip.
void strip_list(Layout& layout, const Board& board) {
  const PaperBox room = layout.paper.room();
  const auto most = std::min(board.strips.size(), most_lines);
  for (std::size_t k = 0; k < most; ++k) {
    const Strip& strip = board.strips[k];
    const auto words = [&](const auto& length_words) {
      std::string text = fmt::format("Strip {}, {} wide:", k + 1, length_words(strip.width));
      for (const Piece& piece : strip.pieces) {
        text += fmt::format(" {} {}{}", piece.mark, length_words(piece.length),
                            &piece == &strip.pieces.back() ? "" : ",");
      }
      return text;
    };
    std::string text = words([&](Length l) { return both_units(l, layout.units); });
    if (text_width(text, list_word) > room.width - 2) {
      text = words([&](Length l) { return show(l, layout.units); });
    }
    const PaperPoint at{room.x + 1,
                        room.bottom() - 1 - line_height * static_cast<double>(most - 1 - k)};
    layout.paper.svg.text(at, fitted(text, room.width - 2, list_word), list_word);
  }
  if (board.strips.size() > most) {
    layout.paper.note(fmt::format("Strips from number {} on: as in the cut list.", most + 1));
  }
}

Drawing board_drawing(const Plan& plan, const Board& board, std::size_t number) {
  const std::string name = fmt::format("board-{}", number);
  const std::string title =
      fmt::format("Board {}: {}{}", number, board.stock, board.on_hand ? " (on hand)" : "");
  Paper paper(name, title, plan.name, plan.units, "Rips and crosscuts of one board, to scale");
  const Rectangle stock{{}, board.length, board.width};
  const auto lines = static_cast<double>(std::min(board.strips.size(), most_lines));
  const View view = view_of(stock, inner(paper.room(), lines, 34), plan.units);
  finish(paper, view.scale, "Rip full length first, then crosscut.");
  paper.legend(Fill::keep, thin_pen, "left over");
  Layout layout{plan.units, paper, view, Labels(paper.room())};
  paper.svg.begin_group("stock");
  paper.svg.box(layout.box(stock), Fill::keep, usual_pen);
  paper.svg.end_group();
  // The first strip lies at the top, where the fence is.
  Length top = board.width;
  for (std::size_t k = 0; k < board.strips.size(); ++k) {
    const Strip& strip = board.strips[k];
    Length x = plan.cut_list.end_trim;
    for (const Piece& piece : strip.pieces) {
      const Length width = piece.width.value_or(strip.width);
      const Rectangle at{{x, top - width}, piece.length, width};
      layout.outline(at);
      (void)layout.sized(piece.mark, at);
      x += piece.length + plan.cut_list.kerf;
    }
    if (!strip.pieces.empty()) {
      layout.beside.push_back({view(Point{x - plan.cut_list.kerf - strip.pieces.back().length / 20,
                                          top - strip.width / 2}),
                               fmt::format("strip {}", k + 1)});
    }
    top -= strip.width + plan.cut_list.kerf;
  }
  frame_dimensions(layout, stock);
  strip_list(layout, board);
  const PaperBox room = paper.room();
  (void)callouts(paper.svg, layout.labels, view(Point{stock.length, Length{}}).x + 10,
                 {room.x, room.y + 2, room.width, room.height - 4 - lines * line_height},
                 std::move(layout.beside));
  return {name, title, paper.svg.str()};
}

Drawing sheet_drawing(const Plan& plan, const Sheet& cut, std::size_t number) {
  const std::string name = fmt::format("sheet-{}", number);
  const std::string title =
      fmt::format("Sheet {}: {}{}", number, cut.stock, cut.on_hand ? " (on hand)" : "");
  Paper paper(name, title, plan.name, plan.units, "Cuts of one sheet, to scale");
  const Rectangle stock{{}, cut.length, cut.width};
  const View view = view_of(stock, inner(paper.room(), 0, 54), plan.units);
  finish(paper, view.scale, "Saw in the order of the cut list.");
  Layout layout{plan.units, paper, view, Labels(paper.room())};
  paper.svg.begin_group("stock");
  paper.svg.box(layout.box(stock), Fill::waste, usual_pen);
  paper.svg.end_group();
  for (const Rectangle& rest : cut.left_over) {
    const PaperBox at = layout.box(rest);
    paper.svg.box(at, Fill::paper, Pen{0});
    paper.svg.box(at, Fill::keep, thin_pen);
  }
  for (const SheetPiece& piece : cut.pieces) {
    layout.outline(piece.at);
    if (!layout.sized(piece.mark, piece.at)) {
      const PaperBox at = layout.box(piece.at);
      layout.beside.push_back(
          {{at.x + at.width * 0.8, at.y + at.height / 2}, layout.size_of(piece.mark, piece.at)});
    }
  }
  for (const Rectangle& rest : cut.left_over) {
    (void)layout.sized("keep", rest);
  }
  frame_dimensions(layout, stock);
  const PaperBox room = paper.room();
  const std::vector<std::string> without =
      callouts(paper.svg, layout.labels, view(Point{stock.length, Length{}}).x + 10,
               {room.x, room.y + 2, room.width, room.height - 4}, std::move(layout.beside));
  if (!without.empty()) paper.note("Parts without a mark: see the cut list.");
  if (!cut.left_over.empty()) paper.legend(Fill::keep, thin_pen, "left over, worth keeping");
  paper.legend(Fill::waste, thin_pen, "waste");
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
