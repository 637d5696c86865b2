// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/box_table.h"

namespace strikeoff {

/// The pieces of a box of the table, laid in the lower left corner.
[[nodiscard]] std::vector<CutPiece> pieces_of(const BoxTable& table, int choice, int box);

/// The sheet with these pieces: the fewest stages that saw them out, and what is left over then.
/// The first cuts run across x or across y, whichever takes at most three stages, leaves the
/// larger rectangle, takes fewer stages. The pieces must be such as cuts from side to side part.
[[nodiscard]] CutSheet sawn(std::size_t stock, const SheetStock& size,
                            std::vector<CutPiece> pieces);

[[nodiscard]] double area_of(const CutRest& rest);

}  // namespace strikeoff
