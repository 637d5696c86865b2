// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff {

// Plans for jobs too large for an exact one.

/// The pieces on shelves (`pack_on_shelves`), free sheets first, then the cheapest by area. None
/// when a piece may not turn.
[[nodiscard]] std::vector<CutSheet> fill_on_shelves(const GuillotineProblem& problem);

/// Sheets filled one after the other, each with the largest area that the boxes (`box_table.h`) of
/// a few of the largest pieces left can make.
[[nodiscard]] std::vector<CutSheet> fill_one_by_one(GuillotineProblem problem, long steps);

/// Cuts a few of the emptiest sheets anew by the boxes, as long as that saves cost or sheets.
[[nodiscard]] std::vector<CutSheet> refill(std::vector<CutSheet> sheets,
                                           const GuillotineProblem& problem, long steps);

}  // namespace strikeoff
