// SPDX-License-Identifier: MIT
#include <cmath>

#include "core/format.h"
#include "core/shelves.h"
#include "cutting/bound.h"
#include "cutting/cut_list.h"
#include "slab/measure.h"
#include "slab/strips.h"
#include "strikeoff/catalogue.h"
#include "support/published.h"
#include "support/slabs.h"

namespace strikeoff::test {
namespace {

/// One board of this length and all the pieces that can be cut from it, both a strip wide.
CutList cut_one_board(Length board_length, Length piece, int asked, Length kerf) {
  Part part;
  part.mark = "A";
  part.role = "edge strip";
  part.stock = "board";
  part.width = Length::inches(5.5);
  part.length = piece;
  part.quantity = asked;
  Stock stock = board(board_length.in_in(), 5.5);
  stock.quantity = 1;
  return cut_parts({part}, {stock}, {}, {}, {kerf, {}});
}

std::size_t pieces_on(const CutList& list) {
  std::size_t pieces = 0;
  for (const Board& one : list.boards) {
    for (const Strip& strip : one.strips) pieces += strip.pieces.size();
  }
  return pieces;
}

/// As many pieces as one board gives, though 80 are asked for.
Answers pieces_of_board(const PublishedCase& one) {
  const CutList list =
      cut_one_board(one.get<Length>("L"), one.get<Length>("piece"), 80, one.get<Length>("kerf"));
  return {{"n", double(pieces_on(list))}};
}

Answers left_over(const PublishedCase& one) {
  const CutList list = cut_one_board(one.get<Length>("L"), one.get<Length>("piece"),
                                     static_cast<int>(one.number("n")), one.get<Length>("kerf"));
  return {{"offcut", list.boards.at(0).strips.at(0).left_over}};
}

Answers strips_round(const PublishedCase& one) {
  const Slab slab = slab_on(corners_of({{}, one.get<Length>("L"), one.get<Length>("W")}), {},
                            Length::inches(1.5));
  const Stock stock = board(84, 13.5, one.get<Length>("t").in_in());
  MarkCounter marks;
  const FormWork work =
      form_work(slab, measure_slab(slab), forms_with({stock}, {}), kilograms_per_m3(2300), marks);
  Length total;
  for (const Part& part : work.parts) {
    if (part.role == "edge strip") total += part.length * part.quantity;
  }
  return {{"total", total}};
}

Answers panel_gap(const PublishedCase&) {
  return {{"gap", shipped_catalogue().panels.front().item.gap.value()}};
}

Answers plywood(const PublishedCase&) {
  for (const CatalogueEntry<Stock>& entry : shipped_catalogue().boards) {
    if (entry.item.id != "form-ply-48x96") continue;
    return {{"plywood",
             inch_fraction(entry.item.width, 16) + " x " + inch_fraction(entry.item.length, 16)}};
  }
  return {};
}

/// The deck as two pieces, 48 and 48 by 25 1/2 in.
Answers sheets_of_deck(const PublishedCase& one) {
  const std::vector<double> deck = one.numbers("deck"), sheet = one.numbers("sheet");
  const Length half = Length::inches(deck.at(0) / 2), depth = Length::inches(deck.at(1));
  const Length length = Length::inches(sheet.at(1)), width = Length::inches(sheet.at(0));
  const SheetPacking packing = pack_on_shelves({{half, depth, 2}}, {{length, width, {}}}, {});
  return {{"lower_bound", double(boards_bound({{half, depth, 2, true}}, length, width, {}))},
          {"real_no_rotation_needed", double(packing.sheets.size())}};
}

}  // namespace

Asks cutting_asks() {
  Asks asks = {{"CL-08", left_over},
               {"CL-09", strips_round},
               {"PN-R1", plywood},
               {"PN-R3", panel_gap},
               {"PN-01", sheets_of_deck}};
  for (const char* id : {"CL-01", "CL-02", "CL-03", "CL-04", "CL-05", "CL-06", "CL-07"}) {
    asks.emplace(id, pieces_of_board);
  }
  return asks;
}

}  // namespace strikeoff::test
