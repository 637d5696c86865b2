// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

namespace strikeoff {

// A plane region between straight cuts across u, each only as long as the cells it bounds: a cut
// is made where the region's edge turns back in u or runs along the cut, and nowhere else.

/// A place in nanometres: u along the region, v across it.
struct MeshPlace {
  double u = 0, v = 0;
};

/// A side of a ring, by its corners in order.
struct RingSide {
  std::size_t from = 0, to = 0;
};

/// Consecutive sides of a ring that rise in u, or that fall and are read backwards.
struct Chain {
  std::vector<std::size_t> corners;  // by rising u
  std::vector<std::size_t> sides;    // side i lies between corners i and i + 1
};

/// What lies between two chains from one cut to another.
struct Cell {
  std::size_t low = 0, high = 0;  // chains
  double start = 0, end = 0;      // u of the cuts
};

struct MeshCells {
  std::vector<MeshPlace> corners;  // as given, but u within 1 nm of another's is the same
  std::vector<RingSide> sides;     // ring by ring
  std::vector<Chain> chains;
  std::vector<Cell> cells;  // by rising start
};

/// The last of the chain's corners at or before u. Precondition: the chain reaches u.
[[nodiscard]] std::size_t corner_before(const MeshCells& cells, const Chain& chain, double u);
/// v of the chain at u, likewise; exact at corners.
[[nodiscard]] double height_at(const MeshCells& cells, const Chain& chain, double u);

/// The region inside an odd number of rings, each by the numbers of its corners.
[[nodiscard]] MeshCells cells_of(std::vector<MeshPlace> corners,
                                 const std::vector<std::vector<std::size_t>>& rings);

}  // namespace strikeoff
