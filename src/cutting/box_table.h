// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <unordered_map>
#include <vector>

#include "cutting/choice_code.h"
#include "cutting/guillotine.h"

namespace strikeoff {

/// A rectangle that cuts from side to side part into the pieces of one choice: a part cut off, and
/// the rest beside it.
struct Box {
  std::array<std::int64_t, 2> size = {};  // along x, along y
  int part = -1, part_box = 0;            // a choice, and which of its boxes
  int rest = -1, rest_box = 0;            // -1: the part is all
};

/// The boxes of one choice by how they are cut: `fronts[n - 1][d]` in n stages, the first across x
/// (d = 0) or y (d = 1). Of one stage are pieces of one width end to end; of two such bars, of
/// three what two make, each next to the other. No box of a front holds another; along it lengths
/// rise and widths fall.
struct ChoiceBoxes {
  Choice counts = 0;
  std::array<std::array<std::vector<Box>, 2>, 3> fronts;
};

/// Every choice of pieces that some sheet holds in at most three stages, with its boxes, fewer
/// pieces first. Built bottom-up by joining the boxes of two smaller choices (Wang, "Two algorithms
/// for constrained two-dimensional cutting stock problems", Operations Research 31, 1983, from
/// memory; here all undominated joins are kept, which makes it exact). A larger rectangle serves as
/// well where two stages or three are left, for the trim takes no stage of its own.
struct BoxTable {
  ChoiceCode code;
  std::vector<ChoiceBoxes> choices;
  std::unordered_map<Choice, int> index;
};

/// Takes `steps` off; nothing when they, or the choices allowed, do not suffice.
[[nodiscard]] std::optional<BoxTable> box_table(const GuillotineProblem& problem,
                                                std::size_t most_choices, long& steps);

/// The pieces of a box of three stages, from the lower left corner.
[[nodiscard]] std::vector<CutPiece> pieces_of(const BoxTable& table,
                                              const GuillotineProblem& problem, int choice,
                                              std::size_t first, int box);

}  // namespace strikeoff
