// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "slab/marks.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

struct PanelLayout {
  std::vector<PanelPiece> pieces;  // each in its place, base frame
  std::vector<Part> parts;         // grouped by size; a piece cut out or to the line is its own
  Length seams;                    // total length between neighbouring panels
  Length unsupported;              // of seams over no partition, where partitions are given
  Length in_openings;              // of seams that through openings cut away
};

/// Backer panels over the panel area: a right-angled one cut into rectangles, each tiled in rows.
/// Any other is laid as the right-angled one it was meant to be (see `squared`), or else as the
/// rectangle around it, and then cut to the line. Among the layouts tried, the one that needs
/// fewest sheets, then has least seam through a through opening or within 75 mm of it (assumption),
/// then the shortest seams. Rows are staggered so that no four corners meet (by 100 mm or more,
/// assumption) and no piece is a sliver under 75 mm (assumption) where a full neighbour can give
/// way; the two then share equally unless that takes more sheets or seams. An empty layout when the
/// slab has no panel.
[[nodiscard]] PanelLayout lay_panels(const Slab& slab, const SlabPlan& shape, Length kerf,
                                     MarkCounter& marks);

}  // namespace strikeoff
