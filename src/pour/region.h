// SPDX-License-Identifier: MIT
#pragma once

#include <utility>
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

/// The region cut straight across u into parts whose areas are proportional to `shares` (all
/// positive), in order of u. Neighbouring parts meet at exactly the same u. A cut within a
/// thousandth of a nanometre of a corner goes through it. A part thinner than that may be empty.
/// Precondition: the region has area.
[[nodiscard]] std::vector<Region> cut_by_area(const Region& region,
                                              const std::vector<double>& shares);

/// The part of the region between two cuts across it.
[[nodiscard]] Region between(const Region& region, double a, double b);

/// The region cut straight across at each of these u, rising; parts outside it are empty.
[[nodiscard]] std::vector<Region> cut_at(const Region& region, const std::vector<double>& at);

/// Where the line across u meets the region, as stretches of v from low to high; at a step of the
/// edge only what the region has on both sides of it. Touching stretches are one.
[[nodiscard]] std::vector<std::pair<double, double>> across(const Region& region, double u);

/// The width of the region across u, just after u.
[[nodiscard]] double width_after(const Region& region, double u);

}  // namespace strikeoff
