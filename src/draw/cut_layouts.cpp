// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
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
  std::vector<std::string> notes = {"The gap between parts is the saw's cut."};

  void outline(const Rectangle& at) {
    paper.svg.begin_group("piece");
    paper.svg.box(view(at), Fill::paper, usual_pen);
    paper.svg.end_group();
  }

  /// The longest of these that fits inside.
  [[nodiscard]] bool words(const Rectangle& piece, const std::vector<std::string>& texts) {
    const PaperBox at = view(piece);
    for (const std::string& text : texts) {
      TextStyle style = spot_word;
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

  /// The stock as waste, which parts and left-overs are then laid on.
  void stock(const Rectangle& at) {
    paper.svg.begin_group("stock");
    paper.svg.box(view(at), Fill::waste, usual_pen);
    paper.svg.end_group();
  }

  void keep(const Rectangle& rest) {
    const PaperBox at = view(rest);
    paper.svg.box(at, Fill::paper, Pen{0});
    paper.svg.begin_group("keep");
    paper.svg.box(at, Fill::keep, thin_pen);
    paper.svg.end_group();
  }
};

void finish(Layout& layout, bool keeps) {
  Paper& sheet = layout.paper;
  sheet.scale_bar(layout.view.scale);
  sheet.legend(Fill::paper, usual_pen, "part, with its mark");
  if (keeps) sheet.legend(Fill::keep, thin_pen, "left over, worth keeping");
  sheet.legend(Fill::waste, thin_pen, "waste");
  sheet.notes(layout.notes);
}

/// Room for the layout, its dimensions left of and below it, `right` mm of words at its right, and
/// `lines` of words under it.
PaperBox inner(const PaperBox& room, double lines, double right) {
  return {room.x + 16, room.y + 4, room.width - 16 - right, room.height - 18 - lines * line_height};
}

void frame_dimensions(Layout& layout, const Rectangle& stock) {
  const PaperPoint low = layout.view(Point{}), right = layout.view(Point{stock.length, Length{}}),
                   top = layout.view(Point{Length{}, stock.depth});
  const auto side = [&](const char* what, const PaperPoint& end, double away, Length length) {
    if (!dimension(layout.paper.svg, layout.labels, low, end, away, length, layout.units)) {
      layout.notes.push_back(fmt::format("{}: {}.", what, both_units(length, layout.units)));
    }
  };
  side("Length", right, -7, stock.length);
  side("Width", top, 7, stock.depth);
}

/// Where the pieces of a strip lie: from its left end, along its upper edge.
std::vector<Rectangle> places_of(const CutList& cuts, const Strip& strip, Length top) {
  std::vector<Rectangle> places;
  Length x = cuts.end_trim;
  for (const Piece& piece : strip.pieces) {
    const Length width = piece.width.value_or(strip.width);
    places.push_back({{x, top - width}, piece.length, width});
    x += piece.length + cuts.kerf;
  }
  return places;
}

/// The left-overs that the cut list keeps: the board's, full length, below its last strip, and what
/// is right of a strip's last piece.
std::vector<Rectangle> kept(const CutList& cuts, const Board& board) {
  const auto is_kept = [&](Length length, Length width) {
    return std::any_of(board.left_over.begin(), board.left_over.end(), [&](const LeftOver& rest) {
      return std::abs((rest.length - length).in_mm()) < 1e-6 &&
             std::abs((rest.width - width).in_mm()) < 1e-6;
    });
  };
  std::vector<Rectangle> rests;
  Length top = board.width;
  for (const Strip& strip : board.strips) {
    if (is_kept(strip.left_over, strip.width)) {
      Length x = cuts.end_trim;
      for (const Piece& piece : strip.pieces) x += piece.length + cuts.kerf;
      rests.push_back({{x, top - strip.width}, strip.left_over, strip.width});
    }
    top -= strip.width + cuts.kerf;
  }
  if (is_kept(board.length, board.left_over_width)) {
    rests.push_back({{}, board.length, board.left_over_width});
  }
  return rests;
}

/// Strip by strip in words: what to set the fence to, and what to cut from the strip.
void strip_list(Layout& layout, const Board& board) {
  const PaperBox room = layout.paper.room();
  const auto most = std::min(board.strips.size(), most_lines);
  bool cut_off = false;
  for (std::size_t k = 0; k < most; ++k) {
    const Strip& strip = board.strips[k];
    const auto words = [&](const auto& length_words) {
      std::string text = fmt::format("Strip {}, {} wide:", k + 1, length_words(strip.width));
      for (const Piece& piece : strip.pieces) {
        text += fmt::format(" {} {}", piece.mark, length_words(piece.length));
        if (piece.width) text += " x " + length_words(*piece.width);
        if (&piece != &strip.pieces.back()) text += ",";
      }
      return text;
    };
    std::string text = words([&](Length l) { return both_units(l, layout.units); });
    if (text_width(text, list_word) > room.width - 2) {
      text = words([&](Length l) { return show(l, layout.units); });
    }
    cut_off = cut_off || text_width(text, list_word) > room.width - 2;
    const PaperPoint at{room.x + 1,
                        room.bottom() - 1 - line_height * static_cast<double>(most - 1 - k)};
    layout.paper.svg.text(at, fitted(text, room.width - 2, list_word), list_word);
  }
  if (board.strips.size() > most) {
    layout.notes.push_back(fmt::format("Strips from number {} on: as in the cut list.", most + 1));
  }
  if (cut_off) layout.notes.push_back("Longer strips, with \u2026: as in the cut list.");
}

/// "2440 x 89 mm, 2 of 600 x 89 mm".
std::string sizes_of(const std::vector<LeftOver>& rests, Units units) {
  std::vector<std::string> sizes;
  for (auto first = rests.begin(); first != rests.end();) {
    const auto last =
        std::find_if(first, rests.end(), [&](const LeftOver& each) { return each != *first; });
    sizes.push_back(fmt::format("{}{} x {}",
                                last - first == 1 ? "" : fmt::format("{} of ", last - first),
                                show(first->length, units), show(first->width, units)));
    first = last;
  }
  return joined(sizes, ", ");
}

Drawing board_drawing(const Plan& plan, const Board& board, std::size_t number) {
  const std::string name = fmt::format("board-{}", number);
  const std::string title =
      fmt::format("Board {}: {}{}", number, board.stock, board.on_hand ? " (on hand)" : "");
  Paper paper(name, title, plan.name, plan.units, "Rips and crosscuts of one board, to scale");
  const Rectangle stock{{}, board.length, board.width};
  const auto lines = static_cast<double>(std::min(board.strips.size(), most_lines));
  const View view = view_of(stock, inner(paper.room(), lines, 34), plan.units);
  Layout layout{plan.units, paper, view, Labels(paper.room())};
  layout.notes.push_back("Rip full length first, then crosscut.");
  layout.stock(stock);
  const std::vector<Rectangle> rests = kept(plan.cut_list, board);
  for (const Rectangle& rest : rests) layout.keep(rest);
  // The first strip lies at the top, where the fence is.
  Length top = board.width;
  bool marked = true;
  for (std::size_t k = 0; k < board.strips.size(); ++k) {
    const Strip& strip = board.strips[k];
    const std::vector<Rectangle> places = places_of(plan.cut_list, strip, top);
    for (std::size_t i = 0; i < places.size(); ++i) {
      layout.outline(places[i]);
      marked = layout.sized(strip.pieces[i].mark, places[i]) && marked;
    }
    // At the board's end: further in the line would strike out words.
    layout.beside.push_back(
        {view(Point{board.length, top - strip.width / 2}), fmt::format("strip {}", k + 1)});
    top -= strip.width + plan.cut_list.kerf;
  }
  if (!marked) {
    layout.notes.push_back("Parts without a mark: from the left as in the list of strips.");
  }
  bool all_named = true;
  for (const Rectangle& rest : rests) all_named = layout.sized("keep", rest) && all_named;
  if (rests.size() != board.left_over.size() || !all_named) {
    layout.notes.push_back("Keep: " + sizes_of(board.left_over, plan.units) + ".");
  }
  frame_dimensions(layout, stock);
  strip_list(layout, board);
  const PaperBox room = paper.room();
  const std::vector<std::string> without =
      callouts(paper.svg, layout.labels, view(Point{stock.length, Length{}}).x + 10,
               {room.x, room.y + 2, room.width, room.height - 4 - lines * line_height},
               std::move(layout.beside));
  if (!without.empty()) layout.notes.push_back("Strips are numbered from the top.");
  finish(layout, !rests.empty());
  return {name, title, paper.svg.str()};
}

Drawing sheet_drawing(const Plan& plan, const Sheet& cut, std::size_t number) {
  const std::string name = fmt::format("sheet-{}", number);
  const std::string title =
      fmt::format("Sheet {}: {}{}", number, cut.stock, cut.on_hand ? " (on hand)" : "");
  Paper paper(name, title, plan.name, plan.units, "Cuts of one sheet, to scale");
  const Rectangle stock{{}, cut.length, cut.width};
  const View view = view_of(stock, inner(paper.room(), 0, 54), plan.units);
  Layout layout{plan.units, paper, view, Labels(paper.room())};
  layout.notes.push_back("Saw in the order of the cut list.");
  layout.stock(stock);
  for (const Rectangle& rest : cut.left_over) layout.keep(rest);
  for (const SheetPiece& piece : cut.pieces) {
    layout.outline(piece.at);
    if (!layout.sized(piece.mark, piece.at)) {
      const PaperBox at = view(piece.at);
      layout.beside.push_back(
          {{at.x + at.width * 0.8, at.y + at.height / 2}, layout.size_of(piece.mark, piece.at)});
    }
  }
  bool all_named = true;
  for (const Rectangle& rest : cut.left_over) all_named = layout.sized("keep", rest) && all_named;
  if (!all_named) layout.notes.push_back("Sizes of all left-overs: in the cut list.");
  frame_dimensions(layout, stock);
  const PaperBox room = paper.room();
  const std::vector<std::string> without =
      callouts(paper.svg, layout.labels, view(Point{stock.length, Length{}}).x + 10,
               {room.x, room.y + 2, room.width, room.height - 4}, std::move(layout.beside));
  if (!without.empty()) layout.notes.push_back("Parts without a mark: see the cut list.");
  finish(layout, !cut.left_over.empty());
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
