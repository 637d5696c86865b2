// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <memory>
#include <vector>

#include "pour/course.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The way every slab can be poured: straight across its long direction.
[[nodiscard]] std::unique_ptr<Course> plain_course(const SlabPlan& shape, const SlabVolume& volume);

/// True when no other course is better than the plain one: an upright rectangle without openings.
[[nodiscard]] bool is_plain(const SlabPlan& shape);

/// At most so many others: straight across the short direction, from one end to another, and from
/// one end to the farthest places. The shortest ends first; a pour the other way round has the
/// same fronts, so each pair is taken once, from the left or the front.
[[nodiscard]] std::vector<std::unique_ptr<Course>> other_courses(const Slab& slab,
                                                                 const SlabPlan& shape,
                                                                 const SlabVolume& volume,
                                                                 std::size_t most);

}  // namespace strikeoff
