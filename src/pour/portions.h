// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

namespace strikeoff {

/// What one batch leaves in one slab.
struct Portion {
  int batch = 1;
  double volume = 0;  // m3
};

/// A slab as the batches are shared out, all in m3.
struct SlabShare {
  double volume = 0;
  double narrow = 0;  // less than this is too narrow a ribbon across its front
};

struct Portions {
  std::vector<std::vector<Portion>> of;  // of each slab, in the order of the pour
  int narrow = 0;                        // ribbons that stay too narrow
};

/// Batches of these volumes, one after the other into the slabs. What a batch leaves over at the
/// end of a slab goes to the next.
[[nodiscard]] Portions portions_of(const std::vector<SlabShare>& slabs,
                                   const std::vector<double>& batches);

/// The same for `count` equal batches, which may differ a little so that no ribbon is too narrow:
/// a slab ends with a batch where what is left over is less than the batch has to spare, or less
/// than a ribbon on either side. Each may hold as much more than its share of the whole as `room`
/// says, or, where that is not enough, as `more_room`; both are parts of that share.
[[nodiscard]] Portions equal_portions(const std::vector<SlabShare>& slabs, int count, double room,
                                      double more_room);

}  // namespace strikeoff
