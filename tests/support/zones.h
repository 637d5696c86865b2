// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "pour/zones.h"
#include "support/slabs.h"

namespace strikeoff::test {

/// The slabs in this many equal batches for which no wait is too long, none with anything to spare.
inline ZonePlan cut_zones(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
                          int batches, Length strip = {}, const Reach& reach = {}) {
  ZoneWish wish;
  wish.shares.assign(static_cast<std::size_t>(batches), 1.0);
  wish.room = wish.more_room = 0;
  wish.reach = reach;
  return ZoneCutter(slabs, shapes, strip, {{}, mm(40)}).cut(wish);
}

}  // namespace strikeoff::test
