// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// The line between two neighbouring panels, somewhere in their gap.
struct Seam {
  bool along_x = false;
  Point from;  // its left or lower end
  Length length;
};

/// With x and y exchanged.
[[nodiscard]] Seam turned(const Seam& seam);

/// A seam's parts that lie in the area.
[[nodiscard]] std::vector<Seam> seams_in(const Polygon& area, const Seam& seam);

/// The length of seams that the boxes of openings cut away.
[[nodiscard]] Length through_openings(const std::vector<Seam>& seams,
                                      const std::vector<Rectangle>& cut_out);

/// The length of seams that the openings leave.
[[nodiscard]] Length seam_length(const std::vector<Seam>& seams,
                                 const std::vector<Rectangle>& cut_out);

/// The length of seams through openings or within 75 mm of them (assumption).
[[nodiscard]] Length badly_placed(const std::vector<Seam>& seams,
                                  const std::vector<Rectangle>& cut_out);

/// The length of seams that lie over no partition: further than 20 mm from each (assumption).
/// Nothing where there are no partitions to lie over.
[[nodiscard]] Length unsupported(const std::vector<Seam>& seams,
                                 const std::vector<Partition>& partitions);

/// Where joints across x (or y) would lie well: over partitions and clear of openings. At most 12,
/// so that a job of many openings stays quick.
[[nodiscard]] std::vector<Length> good_joints(const std::vector<Partition>& partitions,
                                              const std::vector<Rectangle>& cut_out, bool across_x);

}  // namespace strikeoff
