// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/plan.h"

namespace strikeoff {

/// One drawing of a plan.
struct Drawing {
  std::string name;   // of its file, without the ending: "slab-1-plan", unique in the plan
  std::string title;  // "bench top: plan"
  std::string svg;    // a whole SVG 1.1 file; its unit is a millimetre of paper
};

/// Every drawing the plan has something for, in the order of the work: of each slab its plan, edge
/// sections and panels; boards and sheets; templates of its openings; zones; the timeline; strength
/// and evaporation. A4 paper in metric plans, US Letter in others. The same plan gives the same
/// bytes.
[[nodiscard]] std::vector<Drawing> drawings_of(const Plan& plan);

}  // namespace strikeoff
