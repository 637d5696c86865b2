// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/quantity.h"

namespace strikeoff {

/// How a length too long for one board or sheet is made up of pieces laid end to end.
struct PieceRule {
  Length full;         // the longest piece there is
  Length gap;          // left open between neighbours
  Length least;        // shortest piece wanted where a full neighbour can give way
  bool share = false;  // that neighbour shares equally, instead of giving only what is wanted
};

/// The fewest pieces that make up `whole`, beginning with one of `first` (at most `full`), then
/// full ones; the last, where it is shorter than `least`, takes from the one before it. One
/// piece when `whole` is no longer than `first`.
[[nodiscard]] std::vector<Length> split(Length whole, Length first, const PieceRule& rule);

/// Where the joints between these pieces lie, from a first piece that begins at `start`.
[[nodiscard]] std::vector<Length> joints(const std::vector<Length>& pieces, Length start,
                                         Length gap);

/// A run whose joints must keep `apart` from the joints beside it (rising), all measured along
/// the same line.
struct Stagger {
  Length start;
  Length apart;
  std::vector<Length> beside;
};

/// As `split`, but staggered: from the other end, from the same end, and each again with the
/// first piece shortened by 2, 4, ... times `apart`; the fewest pieces, then the least
/// shortening. Plain from the other end when nothing keeps apart.
[[nodiscard]] std::vector<Length> split_apart(Length whole, const PieceRule& rule,
                                              const Stagger& stagger);

}  // namespace strikeoff
