// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff::test {

/// True when one cut from side to side after the other parts the pieces: tried cut by cut.
inline bool is_guillotine(const std::vector<CutPiece>& pieces) {
  if (pieces.size() <= 1) return true;
  for (const bool across_x : {true, false}) {
    const auto low = [&](const CutPiece& p) { return across_x ? p.x : p.y; };
    const auto high = [&](const CutPiece& p) { return across_x ? p.x + p.length : p.y + p.width; };
    for (const CutPiece& piece : pieces) {
      const std::int64_t cut = high(piece);
      std::vector<CutPiece> before, after;
      bool through = true;
      for (const CutPiece& p : pieces) {
        if (high(p) <= cut) {
          before.push_back(p);
        } else if (low(p) >= cut) {
          after.push_back(p);
        } else {
          through = false;
        }
      }
      if (through && !after.empty()) return is_guillotine(before) && is_guillotine(after);
    }
  }
  return false;
}

/// True when every piece is placed as often as it should be, of its size, turned only where it
/// may be, on a sheet that can be had, and can be sawn out; when the left-overs can be sawn out
/// beside them; when the numbers add up.
inline bool is_sound(const GuillotinePlan& plan, const GuillotineProblem& problem) {
  std::vector<int> placed(problem.items.size()), used(problem.stocks.size());
  std::int64_t cost = 0;
  for (const CutSheet& sheet : plan.sheets) {
    const SheetStock& stock = problem.stocks[sheet.stock];
    ++used[sheet.stock];
    cost += stock.cost;
    std::vector<CutPiece> all = sheet.pieces;
    double area = 0;
    for (const CutPiece& p : sheet.pieces) {
      const RectangleItem& item = problem.items[p.item];
      ++placed[p.item];
      const bool as_is = p.length == item.length && p.width == item.width && !p.turned;
      const bool turned =
          p.length == item.width && p.width == item.length && p.turned && item.may_turn;
      if (!as_is && !turned) return false;
    }
    for (const CutRest& r : sheet.rests) all.push_back({0, r.x, r.y, r.length, r.width, false});
    for (const CutPiece& p : all) {
      if (p.x < 0 || p.y < 0 || p.length < 1 || p.width < 1) return false;
      if (p.x + p.length > stock.length || p.y + p.width > stock.width) return false;
      area += static_cast<double>(p.length) * static_cast<double>(p.width);
    }
    // Pieces and left-overs together are the whole sheet.
    if (area != static_cast<double>(stock.length) * static_cast<double>(stock.width)) return false;
    if (sheet.pieces.empty() || sheet.stages > 3 || !is_guillotine(all)) return false;
  }
  for (std::size_t i = 0; i < placed.size(); ++i) {
    if (placed[i] + plan.unplaced[i] != problem.items[i].demand) return false;
  }
  for (std::size_t s = 0; s < used.size(); ++s) {
    if (used[s] > problem.stocks[s].available) return false;
  }
  return cost == plan.cost && plan.cost_bound <= plan.cost &&
         plan.sheet_bound <= static_cast<int>(plan.sheets.size());
}

inline int unplaced_of(const GuillotinePlan& plan) {
  int sum = 0;
  for (const int n : plan.unplaced) sum += n;
  return sum;
}

}  // namespace strikeoff::test
