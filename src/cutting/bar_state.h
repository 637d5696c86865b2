// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "cutting/bars.h"

namespace strikeoff {

/// Pieces and bars not yet used, and the patterns chosen so far.
struct BarState {
  std::vector<int> demand;
  BarMix bars;
  std::vector<BarPattern> chosen;

  [[nodiscard]] bool is_done() const;
  /// Takes no more pieces than are wanted; what a pattern has over is left out.
  void use(BarPattern pattern, int times);
  /// As often as there are bars and pieces for it, at most `times`.
  [[nodiscard]] int room_for(const BarPattern& pattern, int times) const;
};

/// The length that may be wasted in all; negative when the bars are too short together.
[[nodiscard]] std::int64_t waste_allowed(const BarProblem& problem, const BarState& state);

/// Fills board after board as full as can be found. `for_length` counts long pieces for more than
/// their area, since they are the hardest to place later. True when all pieces went in; adds the
/// steps taken to `work`.
bool fill_each_board(const BarProblem& problem, bool longest_first, bool for_length,
                     BarState& state, long& work);

/// Fills bar after bar as full as can be, each with the longest piece left that fits it (minimal
/// bin slack: Gupta and Ho, Production Planning & Control 10, 1999; from memory). True when all
/// pieces went in.
bool fill_each_bar(const BarProblem& problem, bool longest_first, BarState& state, long& work);

}  // namespace strikeoff
