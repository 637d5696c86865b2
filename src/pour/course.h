// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "pour/slab_volume.h"
#include "pour/routes.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Zones that touch along less only meet at a corner: no mix need knit there (assumption).
inline constexpr Length least_joint = Length::mm(10);
/// Cells that touch along less, beside those that they join along their whole side, are too near
/// to a corner to be a joint of their own: the neighbours knit, and rodding carries across
/// (assumption).
inline constexpr Length least_side_joint = Length::mm(100);

/// What one batch fills, or a few in one row: a stretch of a passage between two fronts.
struct Stretch {
  double share = 0;       // of the slab
  std::size_t cell = 0;   // the first that fills it, in the order of the pour
  std::size_t cells = 1;  // side by side
};

/// A route across a slab, laid out for cells of some shares: what comes of it before it is cut.
struct Course {
  const Route* route = nullptr;
  Fronts fronts = Fronts::one;
  bool from_left = true;          // cells of a row follow one another from the left side
  std::vector<Stretch> places;      // along the passage, then along the branch
  std::size_t in_passage = 0;     // places
  std::vector<Front> lines;       // between places of the passage, then of the branch
  std::size_t gap = 0;            // cells between two that touch
  Length joints, longest;
  std::vector<Length> advances;   // of each place
  bool runs_across = true;        // no front is longer than 1.6 times what it crosses is wide
};

/// A batch a place, one front from start to end, where the route has no ring and no branch; those are
/// poured at two fronts, in turn or each batch shared by both. Shares are of the slab's volume, in
/// the order of the pour. Nothing where the route cannot be poured so.
[[nodiscard]] std::optional<Course> course_along(const Route& route, const SlabPlan& shape,
                                                 const std::vector<double>& shares, Fronts fronts);

/// The same in rows of cells, each as many as advance the front by `least`. Nothing where one a row
/// is enough. The first and the last stay alone where `alone` says so: a batch shared with another
/// slab.
struct Alone {
  bool first = false, last = false;
};
[[nodiscard]] std::optional<Course> in_rows(const Course& ribbons, const SlabPlan& shape,
                                            const std::vector<double>& shares, Length least,
                                            Alone alone, bool from_left);

/// What one cell fills.
struct CutCell {
  std::vector<Polygon> parts;  // simple, anticlockwise, apart
  Volume volume;
  Length advance;  // of the front with its row, on average
};

/// The cells in the order of the pour, volumes as the shares. Nothing where the course cannot be cut.
[[nodiscard]] std::optional<std::vector<CutCell>> cut(const Course& course, const SlabPlan& shape,
                                                      const SlabVolume& volume,
                                                      const std::vector<double>& shares);

}  // namespace strikeoff
