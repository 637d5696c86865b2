// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// The right-angled polygon around one whose edges all run within 2 degrees of x or y, as a base
/// measured with a tape does: each edge moved outwards until it runs along its axis, and edges
/// that face the same way brought into line where they are within 25 mm of it (both assumptions).
/// Nothing when an edge runs aslant, or when the result would touch itself, leave out some of the
/// polygon or have a slice of 25 mm or less. Precondition: simple, anticlockwise.
[[nodiscard]] std::optional<Polygon> squared(const Polygon& polygon);

}  // namespace strikeoff
