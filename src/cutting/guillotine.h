// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

namespace strikeoff {

// Sheets cut by saw cuts from side to side, in whole numbers of any unit. As for bars, sizes hold
// the kerf already, those of pieces and those of sheets: neighbours then need no room between them.

struct RectangleItem {
  std::int64_t length = 1, width = 1;
  int demand = 0;
  bool may_turn = true;  // false: the grain runs along the sheet's length
};

struct SheetStock {
  std::int64_t length = 1, width = 1;
  std::int64_t cost = 0;
  int available = std::numeric_limits<int>::max();
};

struct GuillotineProblem {
  std::vector<RectangleItem> items;
  std::vector<SheetStock> stocks;
};

struct CutPiece {
  std::size_t item = 0;
  std::int64_t x = 0, y = 0;           // from the sheet's lower left corner
  std::int64_t length = 1, width = 1;  // as placed, along x and along y
  bool turned = false;
};

/// A rectangle the cuts leave over.
struct CutRest {
  std::int64_t x = 0, y = 0, length = 0, width = 0;
};

/// What cuts leave to be used: one of the sheet's pieces, though it may still be too large, or
/// else a strip of several pieces. Neither: the whole sheet, or nothing.
struct SawnPart {
  std::optional<std::size_t> piece;
  int strip = 0;  // numbered from 1 on each sheet
};

/// One pass of the saw, from side to side of a part: `size` of it is cut off along the fence. What
/// remains is cut by the next pass on the same part, or is `rest` if that is used as it is.
struct SawPass {
  int stage = 1;
  bool across_x = false;  // the blade runs along y
  SawnPart from;
  std::int64_t size = 0;
  SawnPart off, rest;
};

struct CutSheet {
  std::size_t stock = 0;
  std::vector<CutPiece> pieces;
  std::vector<CutRest> rests;  // largest first
  std::vector<SawPass> passes;
  /// How often the direction of the cuts changes, and one: 1 is strips as they are, 2 strips and
  /// crosscuts, 3 that and pieces trimmed; 0 the whole sheet.
  int stages = 0;
};

struct GuillotinePlan {
  std::vector<CutSheet> sheets;  // by stock, then by the first item on each
  std::vector<int> unplaced;     // how many of each item
  std::int64_t cost = 0;
  std::int64_t cost_bound = 0;  // no plan of the placed pieces costs less
  int sheet_bound = 0;          // nor uses fewer sheets
  bool proven = false;          // the cost meets its bound, and no piece is unplaced in vain
};

/// How much is searched, in steps of a few instructions, so that results repeat on any machine.
struct GuillotineEffort {
  std::size_t choices = 20000;  // of pieces that one sheet can hold
  long steps = 3'000'000;
};

/// Cuts the pieces in at most three stages: from the fewest that stay unplaced on, at the least
/// cost, from the fewest sheets. Among such plans one with the largest rectangle beside the pieces
/// of a sheet is preferred, then one of few stages and settings of the saw. Exact by all that one
/// sheet can hold (`exact_sheets.h`), unless the effort does not suffice: then the best of shelves
/// and of sheets filled one by one, a few of them at a time cut anew, with a bound by area and dual
/// feasible functions (`bound.h`). Sizes are at least 1 and at most 2^31. The same items and
/// stocks in the same order give the same plan.
[[nodiscard]] GuillotinePlan cut_guillotine(const GuillotineProblem& problem,
                                            const GuillotineEffort& effort = {});

}  // namespace strikeoff
