// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff {

/// A box that cuts from side to side part into the pieces of one choice. It is one piece, or two
/// boxes side by side (along x) or one on top of the other.
struct Box {
  std::int64_t length = 0, width = 0;
  int left = 0, right = 0;  // choices of the two boxes; left 0: this is one piece
  int left_box = 0, right_box = 0;
  bool beside = false;
  bool turned = false;  // of one piece
  /// Stages when the first cuts run across x, and when across y.
  int stages_x = 0, stages_y = 0;
};

/// A box in the lower left corner of its sheet, the rest cut off.
struct Seat {
  int stages = 0;
  double rest = 0;  // area of the larger rectangle cut off
};

/// How the box is best cut from a sheet it fits: in at most three stages if it can be, with the
/// largest rest, in the fewest stages.
[[nodiscard]] Seat seat_of(const Box& box, const SheetStock& sheet);

/// For every choice of how many pieces of each size, the boxes to cut it from that no other box is
/// within: built bottom-up by joining the boxes of two smaller choices side by side and on top of
/// each other (Wang, "Two algorithms for constrained two-dimensional cutting stock problems",
/// Operations Research 31, 1983, from memory; here all undominated joins are kept, which makes it
/// exact). A choice is a number: its counts are digits, that of item i worth `worth[i]`.
struct BoxTable {
  std::vector<int> demand;  // of each item
  std::vector<int> worth;
  int all = 0;                          // the choice of every piece
  std::vector<std::vector<Box>> boxes;  // of each choice; empty: no sheet holds it
};

/// Only boxes that some sheet holds, and of at most `most_stages` stages. Takes `steps` off;
/// nothing when they, or the choices allowed, do not suffice.
[[nodiscard]] std::optional<BoxTable> box_table(const GuillotineProblem& problem, int most_stages,
                                                long most_choices, long& steps);

}  // namespace strikeoff
