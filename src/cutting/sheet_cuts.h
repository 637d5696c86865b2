// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff {

/// The sheet with these pieces: the fewest stages that saw them out, and what is left over then.
/// The first cuts run across x or across y, whichever takes at most three stages, leaves the
/// larger rectangle, takes fewer stages, takes fewer settings. The pieces must be such as cuts from
/// side to side part; they may be moved.
[[nodiscard]] CutSheet sawn(std::size_t stock, const SheetStock& size,
                            std::vector<CutPiece> pieces);

/// How many different settings of the fence the sheet takes.
[[nodiscard]] std::size_t settings_of(const CutSheet& sheet);

[[nodiscard]] double area_of(const CutRest& rest);

}  // namespace strikeoff
