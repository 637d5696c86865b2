// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <string>

#include "job/read_parts.h"

namespace strikeoff {

// The ways a job gives the outline of a base. Each sets polygon and sides, or leaves them empty
// after reporting why.

/// Less is not measured but the rounding of arithmetic.
inline constexpr Length arithmetic = Length::nm(1);

inline constexpr std::array<const char*, 4> rectangle_sides{"front", "right", "back", "left"};

/// What reports call the entries an outline was read from: corners or runs.
struct OutlineWords {
  const char* edge;           // "edge": what runs from entry k to the next corner
  const char* in_order;       // help: how the entries have to follow each other
  const char* straight_mend;  // help: what to do at a corner that is none
};

void read_corners(Reader& reader, const Node& node, Base& base);
void read_runs(Context& context, const Node& node, Base& base);
/// `beside` are the diagonals given in the base and not in the rectangle.
void read_rectangle(Context& context, const Node& node, const Node& beside, Base& base);

/// An outline of more corners is a drawing, not a base. Assumption.
inline constexpr std::size_t most_corners = 500;
/// Reports the first thing that makes these corners no outline of a base, at the entry of `node`
/// it comes from.
[[nodiscard]] bool is_outline(Reader& reader, const Node& node, const Polygon& corners,
                              const OutlineWords& words);
/// Anticlockwise from corner 1; edges and corners keep the numbers as written.
void set_outline(Base& base, Polygon corners);

/// Why a corner cannot be formed: its edges go straight on, or meet in too sharp a point. Nothing
/// for a good corner.
[[nodiscard]] std::optional<TextError> corner_problem(const Polygon& polygon, std::size_t corner,
                                                      const char* straight_mend);

}  // namespace strikeoff
