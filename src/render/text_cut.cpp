// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <utility>

#include "core/format.h"
#include "render/text.h"
#include "render/text_sections.h"
#include "render/text_words.h"

namespace strikeoff::text {
namespace {

/// The strips of a board in the order of the saw: the widest first, so that the board that is
/// left stays wide as long as it can (common practice, no source).
std::vector<Strip> saw_order(std::vector<Strip> strips) {
  std::stable_sort(strips.begin(), strips.end(),
                   [](const Strip& a, const Strip& b) { return a.width > b.width; });
  return strips;
}

/// "2 1/2 in (3 strips), 1 in (1 strip)". Widths that read the same are one setting of the fence.
std::string rip_settings(const std::vector<Strip>& strips, Units units) {
  std::vector<std::string> settings;
  for (auto first = strips.begin(); first != strips.end();) {
    const std::string width = show(first->width, units);
    const auto last = std::find_if(
        first, strips.end(), [&](const Strip& strip) { return show(strip.width, units) != width; });
    settings.push_back(
        fmt::format("{} ({})", width, count(static_cast<int>(last - first), "strip", "strips")));
    first = last;
  }
  return joined(settings, ", then ");
}

/// "96 x 5 1/4 in, 2 of 39 3/4 x 2 1/4 in".
std::string left_overs(const std::vector<LeftOver>& rests, Units units) {
  std::vector<std::string> sizes;
  for (auto first = rests.begin(); first != rests.end();) {
    const std::string text = size(first->length, first->width, units);
    const auto last = std::find_if(first, rests.end(), [&](const LeftOver& rest) {
      return size(rest.length, rest.width, units) != text;
    });
    sizes.push_back(last - first == 1 ? text : fmt::format("{} of {}", last - first, text));
    first = last;
  }
  return joined(sizes, ", ");
}

Text board_body(const Board& board, Length end_trim, Units units) {
  const std::vector<Strip> strips = saw_order(board.strips);
  Text result;
  if (end_trim > Length{}) {
    result += paragraph("    ", "Square both ends first: " + show(end_trim, units) + " off each.");
  }
  result += paragraph("    ", "Rip the full length, fence at " + rip_settings(strips, units) + ".");
  Table table({{"Strip", Align::right}, {"Width"}, {"Crosscut, in this order"}});
  int number = 0;
  for (const Strip& strip : strips) {
    std::vector<std::string> cuts;
    for (const Piece& piece : strip.pieces) {
      cuts.push_back(piece.mark + " " + show(piece.length, units));
      if (piece.width) cuts.back() += ", then rip to " + show(*piece.width, units);
    }
    table.add({std::to_string(++number), show(strip.width, units), joined(cuts, " | ")});
  }
  result += placed(table, 4);
  if (!board.left_over.empty()) {
    result += paragraph("    ", "Keep: " + left_overs(board.left_over, units) + ".");
  }
  return result;
}

/// "Rip the sheet along its 60 in side, fence at", "Crosscut strip 1 at", "Rip B2 at".
std::string saw_move(const Sheet& sheet, const SheetCut& cut, Units units) {
  if (cut.from.empty()) {
    const Length side = cut.along_length ? sheet.length : sheet.width;
    return fmt::format("Cut the sheet along its {} side, fence at", show(side, units));
  }
  return fmt::format("{} {} at", cut.stage % 2 == 0 ? "Crosscut" : "Rip", cut.from);
}

/// The passes of the saw, one numbered line for each part that is cut.
Text saw_steps(const Sheet& sheet, Units units) {
  Text result;
  int number = 0;
  for (auto first = sheet.cuts.begin(); first != sheet.cuts.end();) {
    std::vector<std::string> settings;
    Length fence;
    auto cut = first;
    // A part of one piece is cut once in each direction, and its namesakes have lines of their own.
    for (; cut != sheet.cuts.end() && cut->from == first->from && cut->stage == first->stage &&
           (cut == first || std::prev(cut)->off != cut->from);
         ++cut) {
      if (settings.empty() || cut->fence != fence) {
        settings.push_back(show(cut->fence, units) + ": " + cut->off);
      } else {
        settings.back() += ", " + cut->off;
      }
      fence = cut->fence;
    }
    std::string line = fmt::format("{}. {} {}.", ++number, saw_move(sheet, *first, units),
                                   joined(settings, "; then at "));
    if (first->off == first->from) {
      line = fmt::format("{}. {} {}.", number, saw_move(sheet, *first, units),
                         show(first->fence, units));
    }
    const std::string& rest = std::prev(cut)->rest;
    if (!rest.empty()) line += fmt::format(" What remains is {}.", rest);
    result += paragraph("    ", line);
    first = cut;
  }
  return result;
}

Text sheet_body(const Sheet& sheet, Units units) {
  Text result = sheet.cuts.empty() ? paragraph("    ", "No cut.") : saw_steps(sheet, units);
  Table table({{"Piece"}, {"Size"}, {"From the left edge"}, {"From the bottom edge"}});
  for (const SheetPiece& piece : sheet.pieces) {
    table.add({piece.mark, size(piece.at.length, piece.at.depth, units), show(piece.at.at.x, units),
               show(piece.at.at.y, units)});
  }
  result += placed(table, 4);
  if (!sheet.left_over.empty()) {
    std::vector<std::string> sizes;
    for (const Rectangle& rest : sheet.left_over) {
      sizes.push_back(size(rest.length, rest.depth, units));
    }
    result += paragraph("    ", "What is left to keep: " + joined(sizes, ", ") + ".");
  }
  return result;
}

bool has_arcs(const OpeningPlan& opening) {
  return std::any_of(opening.edge.begin(), opening.edge.end(),
                     [](const OutlineEdge& edge) { return edge.sweep != 0; });
}

/// The openings to cut out of the panels, by mark, as the panels lie on the base.
Text panel_cuts(const Plan& plan) {
  Text result;
  for (const SlabPlan& slab : plan.slabs) {
    for (const PanelPiece& piece : slab.panels) {
      for (const Rectangle& cut : piece.cuts) {
        result += paragraph(
            "  ", fmt::format("{}: cut out {}, {} from its left and {} from its front edge.",
                              piece.mark, size(cut.length, cut.depth, plan.units),
                              show(cut.at.x, plan.units), show(cut.at.y, plan.units)));
      }
    }
  }
  if (result.empty()) return "";
  const bool round = std::any_of(plan.slabs.begin(), plan.slabs.end(), [](const SlabPlan& slab) {
    return std::any_of(slab.openings.begin(), slab.openings.end(), has_arcs);
  });
  if (round) {
    result +=
        paragraph("  ",
                  "Where an opening is round or has rounded corners, these are the rectangles "
                  "it fits in: draw its line in them and cut to that.");
  }
  return "\n" +
         paragraph("  ",
                   "Openings in the panels, measured on the panel as it lies on the base, from "
                   "above:") +
         result;
}

/// The panels to cut to the base's line: their corners, a person marks them and joins the marks.
Text panel_lines(const Plan& plan) {
  Text result;
  for (const SlabPlan& slab : plan.slabs) {
    for (const PanelPiece& piece : slab.panels) {
      if (piece.outline.empty()) continue;
      std::vector<std::string> corners;
      for (const Point& p : piece.outline) {
        corners.push_back(fmt::format("{} / {}", show(p.x - piece.at.at.x, plan.units),
                                      show(p.y - piece.at.at.y, plan.units)));
      }
      result += paragraph("  ", piece.mark + ": " + joined(corners, ", ") + ".");
    }
  }
  if (result.empty()) return "";
  return "\n" +
         paragraph("  ",
                   "Panels to cut to the line: mark these corners, from the left / from the front "
                   "edge of the panel as it lies on the base, and cut from mark to mark:") +
         result;
}

struct Layout {
  std::string what;  // stock, size, on hand or to buy
  Text body;
  bool operator==(const Layout&) const = default;
};

/// Layouts one after another, neighbours that are the same only once: "Boards 2 to 5, all alike".
Text layouts(const std::string& one, const std::string& many, const std::vector<Layout>& all) {
  Text result;
  for (std::size_t first = 0; first < all.size();) {
    std::size_t last = first;
    while (last + 1 < all.size() && all[last + 1] == all[first]) ++last;
    const std::string name = first == last
                                 ? fmt::format("{} {}", one, first + 1)
                                 : fmt::format("{} {} to {}, all alike", many, first + 1, last + 1);
    result += "\n" + paragraph("  ", name + ": " + all[first].what) + all[first].body;
    first = last + 1;
  }
  return result;
}

std::string cut_angle(double degrees) {
  return degrees == 0 ? "square" : show_number(degrees, 1) + " deg";
}

std::string end_cuts(const Part& part) {
  if (part.left_cut_deg == 0 && part.right_cut_deg == 0) return "square";
  return cut_angle(part.left_cut_deg) + " / " + cut_angle(part.right_cut_deg);
}

std::string size_of(const Part& part, Units units) {
  if (part.length <= Length{}) return "cut on site";
  const std::string flat = size(part.width, part.length, units);
  return part.height ? flat + ", " + show(*part.height, units) + " high" : flat;
}

std::string source(const Part& part) {
  if (!part.stock.empty()) return part.stock;
  if (part.role == "prop") return "the shop list";
  return part.role == "isolation strip" ? "the roll" : "made on site";
}

Table part_table(const Plan& plan) {
  const bool several = plan.slabs.size() > 1;
  Table table({{"Mark"},
               {"What"},
               {"Where"},
               {"Width x length", Align::right},
               {"Pieces", Align::right},
               {"End cuts"},
               {"From"}});
  for (const Part& part : plan.cut_list.parts) {
    table.add({part.mark, part.role, several ? part.slab + ": " + part.place : part.place,
               size_of(part, plan.units), std::to_string(part.quantity), end_cuts(part),
               source(part)});
  }
  return table;
}

/// What the words of the parts table mean, for those that stand in it.
Text glossary(const std::vector<Part>& parts) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 8> words = {{
      {"edge strip", "stands upright outside the slab; its inner face shapes the visible edge"},
      {"soffit strip", "lies flat under the overhang, against the base"},
      {"soffit panel", "lies flat under a wide overhang, against the base, on props"},
      {"prop", "a post from the floor to under a soffit panel's outer edge, on wedges"},
      {"knock-out strip", "stands around an opening and keeps the concrete out"},
      {"knock-out block", "made of stacked sheet; keeps the concrete out where strips cannot"},
      {"backer panel", "lies on the base, under the concrete, and stays"},
      {"isolation strip", "soft strip between slab and wall, stays"},
  }};
  Text result;
  for (const auto& word : words) {  // clang 14 captures no structured binding
    const std::string_view role = word.first;
    const bool used = std::any_of(parts.begin(), parts.end(),
                                  [&](const Part& part) { return part.role == role; });
    if (used) result += paragraph("  ", fmt::format("{}: {}.", role, word.second));
  }
  return result;
}

bool is_sheet(const CutList& cut_list, const std::string& stock) {
  return std::any_of(cut_list.sheets.begin(), cut_list.sheets.end(),
                     [&](const Sheet& sheet) { return sheet.stock == stock; });
}

std::string total_line(const CutList& cut_list, const StockTotal& total) {
  const bool sheet = is_sheet(cut_list, total.stock);
  const std::string used =
      sheet ? count(total.used, "sheet", "sheets") : count(total.used, "board", "boards");
  std::string text = fmt::format("{} of {}", used, total.stock);
  if (total.on_hand > 0) {
    text += total.buy == 0 ? std::string(", on hand")
                           : fmt::format(" ({} on hand, {} to buy)", total.on_hand, total.buy);
  }
  if (total.proven) return text + "; no plan can use fewer.";
  if (!cut_list.unplaced.empty()) return text + ", for the parts that fit.";
  if (total.buy == 0) return text + ".";
  if (total.buy == total.buy_bound) return text + "; no plan can buy fewer.";
  // What is not proven of boards may be so of money.
  if (cut_list.cost || total.buy_bound == 0) return text + ".";
  return text + fmt::format("; at least {} must be bought, so this may be {} too many.",
                            total.buy_bound, total.buy - total.buy_bound);
}

/// What is proven of the money that boards and sheets cost.
std::string cost_line(const Plan& plan) {
  const CutList& list = plan.cut_list;
  if (!list.cost_gap || !list.unplaced.empty() || *list.cost <= Money{}) return "";
  const std::string cost = show_money(*list.cost, plan.currency);
  if (*list.cost_gap <= 0) return cost + " for boards and sheets; no plan is cheaper.";
  const std::string over = show_percent(std::max(*list.cost_gap, 0.001));  // never "0 %"
  return fmt::format(
      "No plan costs less than {} for boards and sheets; this one costs {}, at most about {} over.",
      show_money(*list.cost_bound, plan.currency), cost, over);
}

/// Among which plans the bounds hold, where they are told: a cleverer way to cut may do with fewer.
Text meaning_of_no_plan(const Plan& plan) {
  const CutList& list = plan.cut_list;
  const bool is_told =
      !cost_line(plan).empty() ||
      std::any_of(list.totals.begin(), list.totals.end(), [](const StockTotal& total) {
        return total.proven || (total.buy > 0 && total.buy == total.buy_bound);
      });
  if (!is_told) return "";
  std::vector<std::string> among;
  if (!list.boards.empty()) {
    among.push_back(
        "boards ripped from end to end, the strips crosscut, one part from each length");
  }
  if (!list.sheets.empty()) {
    among.push_back("sheets cut straight through, each part in three steps at most");
  }
  return paragraph("  ",
                   "\"No plan\" counts plans cut like this one: " + joined(among, "; ") + ".");
}

std::string what(const std::string& stock, Length length, Length width, bool on_hand, Units units) {
  return fmt::format("{}, {}{}", stock, size(length, width, units), on_hand ? ", on hand" : "");
}

}  // namespace

Text cut(const Plan& plan) {
  const CutList& list = plan.cut_list;
  if (list.parts.empty()) return "";
  Text result = heading("CUT");
  if (!list.unplaced.empty()) {
    result +=
        paragraph("  !!! ", "These parts fit no board or sheet, or have no room where they go: " +
                                joined(list.unplaced, ", ") + ".");
  }
  result += "  Parts. Write the mark on each piece as it is cut.\n" + placed(part_table(plan)) +
            glossary(list.parts);
  const bool angled = std::any_of(list.parts.begin(), list.parts.end(), [](const Part& part) {
    return part.left_cut_deg != 0 || part.right_cut_deg != 0;
  });
  if (angled) {
    result += paragraph("  ",
                        "End cuts: left / right as seen from outside the slab; the saw's reading "
                        "from square; a positive angle leaves the outer face longer, and the "
                        "length is the longer one.");
  }
  std::vector<Layout> boards;
  for (const Board& board : list.boards) {
    boards.push_back({what(board.stock, board.length, board.width, board.on_hand, plan.units),
                      board_body(board, list.end_trim, plan.units)});
  }
  std::vector<Layout> sheets;
  for (const Sheet& sheet : list.sheets) {
    sheets.push_back({what(sheet.stock, sheet.length, sheet.width, sheet.on_hand, plan.units),
                      sheet_body(sheet, plan.units)});
  }
  result += layouts("Board", "Boards", boards) + layouts("Sheet", "Sheets", sheets) +
            panel_lines(plan) + panel_cuts(plan) + "\n";
  for (const StockTotal& total : list.totals) result += paragraph("  ", total_line(list, total));
  if (const std::string line = cost_line(plan); !line.empty()) result += paragraph("  ", line);
  result += meaning_of_no_plan(plan);
  const auto left_over = [](const auto& from) { return !from.left_over.empty(); };
  if (std::any_of(list.boards.begin(), list.boards.end(), left_over) ||
      std::any_of(list.sheets.begin(), list.sheets.end(), left_over)) {
    result += paragraph("  ", "What the next job can use is named; under " +
                                  size(list.reusable.length, list.reusable.width, plan.units) +
                                  " it is waste.");
  }
  return result;
}

}  // namespace strikeoff::text
