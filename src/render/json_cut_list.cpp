// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

/// A size found on site is not known here.
Json size(Length length) {
  return length > Length{} ? Json(number(length.in_mm())) : Json();
}

Json part(const Part& part) {
  return {{"mark", part.mark},
          {"slab", part.slab},
          {"role", part.role},
          {"stock", part.stock},
          {"width_mm", size(part.width)},
          {"length_mm", size(part.length)},
          {"quantity", part.quantity},
          {"left_cut_deg", number(part.left_cut_deg)},
          {"right_cut_deg", number(part.right_cut_deg)},
          {"place", part.place}};
}

Json piece(const Piece& piece) {
  Json result = {{"mark", piece.mark}, {"length_mm", number(piece.length.in_mm())}};
  if (piece.width) result["width_mm"] = number(piece.width->in_mm());
  return result;
}

Json strip(const Strip& strip) {
  return {{"width_mm", number(strip.width.in_mm())},
          {"pieces", array(strip.pieces, piece)},
          {"left_over_mm", number(strip.left_over.in_mm())}};
}

Json left_over(const LeftOver& rest) {
  return {{"length_mm", number(rest.length.in_mm())}, {"width_mm", number(rest.width.in_mm())}};
}

Json board(const Board& board) {
  return {{"stock", board.stock},
          {"on_hand", board.on_hand},
          {"length_mm", number(board.length.in_mm())},
          {"width_mm", number(board.width.in_mm())},
          {"strips", array(board.strips, strip)},
          {"left_over_width_mm", number(board.left_over_width.in_mm())},
          {"left_over", array(board.left_over, left_over)}};
}

Json sheet_piece(const SheetPiece& piece) {
  return {{"mark", piece.mark},
          {"x_mm", number(piece.at.at.x.in_mm())},
          {"y_mm", number(piece.at.at.y.in_mm())},
          {"width_mm", number(piece.at.length.in_mm())},
          {"height_mm", number(piece.at.depth.in_mm())}};
}

Json sheet_left_over(const Rectangle& rest) {
  return {{"x_mm", number(rest.at.x.in_mm())},
          {"y_mm", number(rest.at.y.in_mm())},
          {"width_mm", number(rest.length.in_mm())},
          {"height_mm", number(rest.depth.in_mm())}};
}

Json sheet_cut(const SheetCut& cut) {
  return {{"stage", cut.stage}, {"along", cut.along_length ? "length" : "width"},
          {"from", cut.from},   {"fence_mm", number(cut.fence.in_mm())},
          {"off", cut.off},     {"rest", cut.rest}};
}

Json sheet(const Sheet& sheet) {
  return {{"stock", sheet.stock},
          {"on_hand", sheet.on_hand},
          {"pieces", array(sheet.pieces, sheet_piece)},
          {"cuts", array(sheet.cuts, sheet_cut)},
          {"stages", sheet.stages},
          {"length_mm", number(sheet.length.in_mm())},
          {"width_mm", number(sheet.width.in_mm())},
          {"left_over", array(sheet.left_over, sheet_left_over)}};
}

Json total(const StockTotal& total) {
  return {{"stock", total.stock},        {"used", total.used},
          {"on_hand", total.on_hand},    {"buy", total.buy},
          {"bound", total.bound},        {"proven", total.proven},
          {"buy_bound", total.buy_bound}};
}

}  // namespace

Json cut_list(const CutList& list) {
  Json result = {{"parts", array(list.parts, part)},
                 {"boards", array(list.boards, board)},
                 {"sheets", array(list.sheets, sheet)},
                 {"totals", array(list.totals, total)},
                 {"unplaced", list.unplaced},
                 {"end_trim_mm", number(list.end_trim.in_mm())},
                 {"reusable",
                  {{"length_mm", number(list.reusable.length.in_mm())},
                   {"width_mm", number(list.reusable.width.in_mm())}}}};
  if (list.cost) result["cost"] = number(list.cost->si());
  if (list.cost_gap) result["cost_gap"] = number(*list.cost_gap);
  if (list.cost_bound) result["cost_bound"] = number(list.cost_bound->si());
  return result;
}

}  // namespace strikeoff::json
