// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "pour/course.h"
#include "pour/slab_volume.h"

namespace strikeoff {

// Where the front is so long that a batch would advance it by a ribbon, rows of the slab are filled
// cell by cell, every row the same way round: so a cell meets its neighbour in the next row as soon
// as can be, while rows there and back again would keep the first cells waiting twice as long.

/// Where two cells meet, along a line.
struct CellMeeting {
  std::size_t first = 0, second = 0;  // cells, in the order they are filled
  Polygon line;
};

struct SlabCells {
  std::vector<std::vector<Polygon>> parts;  // of each cell
  std::vector<CellMeeting> meetings;
  std::vector<Length> advances;  // of the front with each cell's row, on average
};

/// How many cells each row has: the fewest that advance the front by `least`; the last row has what
/// is left. `shares` are the cells' of the slab's volume.
[[nodiscard]] std::vector<std::size_t> cells_in_rows(const FrontTable& fronts,
                                                     const std::vector<double>& shares, Area slab,
                                                     Length least);

/// What a course would come to, without cutting it.
struct Estimate {
  std::size_t gap = 0;  // cells between two that meet
  Length joints, longest;
};
[[nodiscard]] Estimate estimate(const FrontTable& fronts, const std::vector<double>& shares,
                                const std::vector<std::size_t>& rows, Area slab);

/// Nothing where the course cannot be cut so.
[[nodiscard]] std::optional<SlabCells> cut_cells(const Course& course,
                                                 const std::vector<double>& shares,
                                                 const std::vector<std::size_t>& rows,
                                                 const SlabVolume& volume);

}  // namespace strikeoff
