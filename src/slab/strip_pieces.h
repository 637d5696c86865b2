// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "slab/heights.h"
#include "slab/part_list.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// The longest strip of this width that can be cut, or nothing when no board is wide enough.
[[nodiscard]] std::optional<Length> longest_piece(const Forms& forms, Length width);

/// What a strip of this length is spliced from: one piece where a board is long enough.
/// `least` is the shortest piece wanted.
[[nodiscard]] std::vector<Length> pieces_of(const Forms& forms, Length width, Length length,
                                            Length least);

/// Shortest piece of a spliced strip, and how far its joints keep from corners and from the joints
/// beside them. Assumptions, from common practice, no source.
inline constexpr Length least_splice = Length::mm(300);
inline constexpr Length splices_apart = Length::mm(150);

/// What keeps the concrete out of the openings, and what carries it.
struct KnockOuts {
  std::vector<StripRun> strips;
  std::vector<Part> blocks;
  std::vector<Length> ledgers;  // two under each opening cut through to nothing
};

/// Strips round a rectangle, their outer faces on the opening, so that the short pair goes between
/// the long pair; a block of stacked sheet for a rounded opening and for one too narrow for strips.
/// As high as the slab is at the thinnest place of the opening's edge, so that the straightedge
/// passes over them everywhere.
[[nodiscard]] KnockOuts knock_outs(const Slab& slab, const SlabPlan& shape, const Forms& forms,
                                   const Heights& heights);

}  // namespace strikeoff
