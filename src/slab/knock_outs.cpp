// SPDX-License-Identifier: MIT
#include <algorithm>

#include "slab/splice.h"
#include "slab/strip_pieces.h"

namespace strikeoff {
namespace {

/// T, less the panel where the knock-out stands on it, and the least of low and rise together
/// round the opening. A knock-out through the base stands level with the base's top there.
Length height_of(const Slab& slab, const Opening& opening, const Outline& edge,
                 const Heights& heights) {
  const bool on_panel = slab.panel && !opening.through;
  const Length plain = on_panel ? slab.thickness - slab.panel->thickness : slab.thickness;
  if (heights.are_none()) return plain;
  const Polygon drawn = chords(edge, drawn_within);
  Length least = heights.both.turns(drawn[0], drawn[1]).front().height;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    for (const HeightAt& turn : heights.both.turns(drawn[i], drawn[(i + 1) % drawn.size()])) {
      least = std::min(least, turn.height);
    }
  }
  return plain + least;
}

Part block(const Opening& opening, Length height) {
  Part part;
  part.role = "knock-out block";  // stacked sheet, made on site: no stock
  part.length = std::max(opening.at.length, opening.at.depth);
  part.width = std::min(opening.at.length, opening.at.depth);
  part.height = height;
  part.place = opening.name;
  if (opening.corner_radius * 2 >= part.length) {
    part.place += " (cut round)";
  } else if (opening.corner_radius > Length{}) {
    part.place += " (corners rounded)";
  }
  return part;
}

}  // namespace

std::optional<Length> longest_piece(const Forms& forms, Length width) {
  std::optional<Length> longest;
  for (const Stock& board : forms.strip_stock) {
    const Length usable = board.length - forms.end_trim * 2;
    if (board.width >= width && usable > Length{} && (!longest || usable > *longest)) {
      longest = usable;
    }
  }
  return longest;
}

std::vector<Length> pieces_of(const Forms& forms, Length width, Length length, Length least) {
  const auto longest = longest_piece(forms, width);
  if (!longest) return {length};
  return split(length, *longest, {*longest, {}, least});
}

KnockOuts knock_outs(const Slab& slab, const SlabPlan& shape, const Forms& forms,
                     const Heights& heights) {
  KnockOuts result;
  const Length s = forms.strip_stock.front().thickness;
  for (std::size_t i = 0; i < slab.openings.size(); ++i) {
    const Opening& opening = slab.openings[i];
    const Length longer = std::max(opening.at.length, opening.at.depth);
    const Length shorter = std::min(opening.at.length, opening.at.depth);
    const Length height = height_of(slab, opening, shape.openings[i].edge, heights);
    // A through knock-out has nothing under it but a batten along each long side.
    if (opening.through && slab.support == Support::base) {
      result.ledgers.insert(result.ledgers.end(), 2, longer);
    }
    if (opening.corner_radius > Length{} || shorter <= s * 2) {
      result.blocks.push_back(block(opening, height));
      continue;
    }
    for (const Length length : {longer, longer, shorter - s * 2, shorter - s * 2}) {
      StripRun& run = result.strips.emplace_back();
      run.role = "knock-out strip";
      run.letter = 'K';
      run.width = height;
      run.pieces = pieces_of(forms, height, length, least_splice);
      run.place = opening.name;
    }
  }
  return result;
}

}  // namespace strikeoff
