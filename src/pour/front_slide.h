// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "pour/front_lines.h"

namespace strikeoff {

/// A straight front line with its ends moved along the edge, each by so much in the direction that
/// puts more behind it; nothing where an end would go round a re-entrant corner or the line leave the region.
[[nodiscard]] std::optional<FrontLine> slid(const WalkedMesh& mesh, const FrontLine& line,
                                            Length up_by, Length down_by);

}  // namespace strikeoff
