// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/format.h"
#include "render/csv.h"
#include "render/text_words.h"
#include "strikeoff/render.h"

namespace strikeoff {
namespace {

using csv::cell;
using csv::CsvSheet;

/// A size found on site is not known here.
std::string size_cell(Length length) {
  return length > Length{} ? cell(length.in_mm()) : "";
}

std::string minutes_cell(const std::optional<Duration>& time) {
  return time ? cell(in_minutes(*time)) : "";
}

std::string money_cell(const std::optional<Money>& money) {
  return money ? cell(money->si()) : "";
}

CsvSheet parts(const Plan& plan) {
  CsvSheet sheet({"mark", "slab", "role", "place", "stock", "width_mm", "length_mm", "height_mm",
                  "quantity", "left_cut_deg", "right_cut_deg"});
  for (const Part& part : plan.cut_list.parts) {
    sheet.add({cell(part.mark), cell(part.slab), cell(part.role), cell(part.place),
               cell(part.stock), size_cell(part.width), size_cell(part.length),
               part.height ? cell(part.height->in_mm()) : "", cell(part.quantity),
               cell(part.left_cut_deg), cell(part.right_cut_deg)});
  }
  return sheet;
}

void add_board(const Board& board, int number, CsvSheet& sheet) {
  int strip_number = 0;
  for (const Strip& strip : board.strips) {
    ++strip_number;
    int order = 0;
    for (const Piece& piece : strip.pieces) {
      sheet.add({"board", cell(number), cell(board.stock), board.on_hand ? "yes" : "no",
                 cell(board.length.in_mm()), cell(board.width.in_mm()), cell(strip_number),
                 cell(strip.width.in_mm()), cell(++order), cell(piece.mark),
                 cell(piece.length.in_mm()), cell(piece.width.value_or(strip.width).in_mm()), "",
                 ""});
    }
  }
}

void add_sheet(const Sheet& from, int number, CsvSheet& sheet) {
  int order = 0;
  for (const SheetPiece& piece : from.pieces) {
    sheet.add({"sheet", cell(number), cell(from.stock), from.on_hand ? "yes" : "no",
               cell(from.length.in_mm()), cell(from.width.in_mm()), "", "", cell(++order),
               cell(piece.mark), cell(piece.at.length.in_mm()), cell(piece.at.depth.in_mm()),
               cell(piece.at.at.x.in_mm()), cell(piece.at.at.y.in_mm())});
  }
}

/// One row a piece.
CsvSheet boards(const Plan& plan) {
  CsvSheet sheet({"kind", "number", "stock", "on_hand", "stock_length_mm", "stock_width_mm",
                  "strip", "strip_width_mm", "order", "mark", "length_mm", "width_mm", "x_mm",
                  "y_mm"});
  int number = 0;
  for (const Board& board : plan.cut_list.boards) add_board(board, ++number, sheet);
  number = 0;
  for (const Sheet& one : plan.cut_list.sheets) add_sheet(one, ++number, sheet);
  return sheet;
}

CsvSheet materials(const Plan& plan) {
  CsvSheet sheet({"item", "stock", "needed", "unit", "on_hand", "packs", "pack", "price", "cost",
                  "currency", "basis", "note"});
  for (const Material& one : plan.materials) {
    sheet.add({cell(one.item), cell(one.stock), cell(one.needed), cell(one.unit), cell(one.on_hand),
               cell(one.packs), cell(one.pack), money_cell(one.price), money_cell(one.cost),
               cell(plan.cost.currency), cell(one.basis), cell(one.note)});
  }
  return sheet;
}

/// "set retarder: 0.5; fiber: 1": of one batch, in doses.
std::string dose_cell(const Batch& batch) {
  std::vector<std::string> doses;
  for (const BatchDose& dose : batch.doses) {
    doses.push_back(fmt::format("{}: {}", dose.name, csv::cell(dose.doses)));
  }
  return cell(joined(doses, "; "));
}

CsvSheet batches(const Plan& plan) {
  CsvSheet sheet({"number", "bags", "dry_kg", "water_l", "water_kg", "ice_kg", "bucket_mark_mm",
                  "bucket_fills", "doses", "volume_l", "zone_l", "mixer", "contact_min",
                  "place_start_min", "place_end_min", "neighbours", "edge_wait_min",
                  "meet_by_min"});
  for (const Batch& batch : plan.batches) {
    std::vector<std::string> neighbours;
    for (const int one : batch.neighbours) neighbours.push_back(std::to_string(one));
    sheet.add({cell(batch.number), cell(batch.bags), cell(batch.dry.si()),
               cell(in_litres(batch.water)), cell(batch.water_mass.si()), cell(batch.ice.si()),
               batch.bucket_mark ? cell(batch.bucket_mark->in_mm()) : "",
               batch.bucket_mark ? cell(batch.bucket_fills) : "", dose_cell(batch),
               cell(in_litres(batch.volume)), cell(in_litres(batch.zone)), cell(batch.mixer),
               minutes_cell(batch.contact), minutes_cell(batch.place_start),
               minutes_cell(batch.place_end), joined(neighbours, " "),
               minutes_cell(batch.edge_wait), minutes_cell(batch.meet_by)});
  }
  return sheet;
}

CsvSheet schedule(const Plan& plan) {
  CsvSheet sheet({"phase", "task", "who", "start_min", "end_min", "start", "end", "after"});
  for (const Task& task : plan.schedule) {
    sheet.add({cell(task.phase), cell(task.task), cell(task.who), minutes_cell(task.start),
               minutes_cell(task.end), task.start_local.value_or(""), task.end_local.value_or(""),
               cell(joined(task.after, " | "))});
  }
  return sheet;
}

}  // namespace

std::string render_csv(const Plan& plan, CsvTable table) {
  switch (table) {
    case CsvTable::parts:
      return parts(plan).str();
    case CsvTable::boards:
      return boards(plan).str();
    case CsvTable::materials:
      return materials(plan).str();
    case CsvTable::batches:
      return batches(plan).str();
    case CsvTable::schedule:
      return schedule(plan).str();
  }
  throw std::logic_error("no such table");
}

}  // namespace strikeoff
