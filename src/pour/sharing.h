// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "pour/work_graph.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// The ways to share the work of a crew: one for a crew that takes turns; for others at most
/// `most`, those whose busiest person or mixer has least to do first, in which each role goes round
/// among people next to each other when those with the fewest roles stand first. At least one.
[[nodiscard]] std::vector<Sharing> sharings(const Crew& crew, std::size_t most);

/// True when people share more than one role: for a few batches another sharing than whole batches
/// in turn may wait a little less.
[[nodiscard]] bool share_several_roles(const Crew& crew);

/// Every role to hands of its own, as many as have it: no crew of these people is faster.
[[nodiscard]] Sharing hands_apart(const Crew& crew);

/// True for one who mixes and places while one other carries: only the order of the first one's
/// work is open.
[[nodiscard]] bool only_order_is_open(const Crew& crew);

}  // namespace strikeoff
