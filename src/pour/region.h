// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

// A plane region as trapezoids between cuts across one direction, so that it can be cut into parts
// of given area. Coordinates are nanometres in doubles: u along the sweep, v across it.

/// Between u0 and u1, from the line lo0-lo1 up to the line hi0-hi1.
struct Trapezoid {
  double u0 = 0, u1 = 0;
  double lo0 = 0, lo1 = 0;
  double hi0 = 0, hi1 = 0;
};

struct Corner {
  double u = 0, v = 0;
};
using Ring = std::vector<Corner>;

using Region = std::vector<Trapezoid>;  // by rising u0, then rising lo; no overlaps

[[nodiscard]] double area(const Region& region);

/// The region inside an odd number of the rings (outline and holes, or rings side by side), cut
/// across at every corner; corners keep their exact coordinates.
[[nodiscard]] Region region_of(const std::vector<Ring>& rings);

/// The region with u and v exchanged. Precondition: upright rectangles only.
[[nodiscard]] Region exchanged(const Region& region);

/// The region cut straight across u into parts whose areas are proportional to `shares` (all
/// positive), in order of u. Neighbouring parts meet at exactly the same u. A cut within a
/// thousandth of a nanometre of a corner goes through it. A part thinner than that may be empty.
/// Precondition: the region has area.
[[nodiscard]] std::vector<Region> cut_by_area(const Region& region,
                                              const std::vector<double>& shares);

/// A stretch of a region's edge across u, and whose it is.
struct Stretch {
  double lo = 0, hi = 0;
  int owner = 0;
};

enum class Facing { onward, back };

/// Adds the edges of this region that lie across the sweep at u and face on along it, or back.
void add_stretches(const Region& region, double u, Facing facing, int owner,
                   std::vector<Stretch>& stretches);

/// Where two owners meet, and over what length.
struct BatchContact {
  int first = 0, second = 0;  // first < second
  double length = 0;
};

/// Adds the contacts between two facing sets of stretches; linear after sorting. Less than 1 um
/// is a corner, not a contact.
void add_contacts(std::vector<Stretch> ends, std::vector<Stretch> starts,
                  std::vector<BatchContact>& contacts);

}  // namespace strikeoff
