// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <limits>
#include <vector>

#include "cutting/bars.h"

namespace strikeoff {

struct BarSolution {
  std::vector<BarPattern> patterns;  // empty when the bars that can be had do not hold the pieces
  std::int64_t cost = 0;
  std::int64_t bound = 0;  // no plan costs less; proven in integers
  bool proven = false;     // cost meets the bound
  long work = 0;           // effort spent
};

/// How much is searched, in steps of `ColumnGeneration::work`, so that results repeat on any
/// machine. A step takes at most 0.5 ns, and so a hopeless job about 2 s, optimised.
struct BarEffort {
  long a_mix = 2'000'000'000;
  long in_all = 4'000'000'000;
};

/// Cuts the pieces from the cheapest bars. Mixes of bars are tried by rising cost; a mix the
/// continuous solution cannot pack gives a cut that holds for every mix (`dual_cut`) and rules out
/// many more; one it can pack is packed in whole pieces (`pack_bars`). The first that packs is the
/// optimum. When the effort is used up the continuous solution is rounded down and the rest cut
/// exactly, which proves nothing; the bound still holds. Bars that cost nothing are always offered.
/// More than 400 kinds of pieces are not searched: there are no patterns, and the bound is by area.
/// Several stock lengths by cost: the mixes of Alves and Valerio de Carvalho, Computers &
/// Operations Research 35, 2008 (from memory), cut by the Benders cuts of the packing problem. A
/// plan that costs `below` is known: dearer ones are not looked for, and without a cheaper one
/// there are no patterns.
[[nodiscard]] BarSolution cut_bars(const BarProblem& problem, const BarEffort& effort = {},
                                   std::int64_t below = std::numeric_limits<std::int64_t>::max());

}  // namespace strikeoff
