// SPDX-License-Identifier: MIT
#include "loads/steel.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "slab/line_cut.h"

namespace strikeoff {
namespace {

constexpr double lap_share = 0.15;                  // of a mesh, assumption
constexpr double anchor_diameters = 40;             // from memory
constexpr Length unknown_anchor = Length::mm(300);  // assumption
constexpr Length shortest_bar = Length::mm(100);    // assumption
constexpr Length cut_to = Length::mm(1);            // of bars, downwards

/// Bars along x through these outlines' inside, by length.
std::map<Length, int> bars_along_x(const Polygon& outline, const std::vector<Polygon>& openings,
                                   Length cover, Length spacing) {
  std::map<Length, int> lengths;
  const Rectangle box = bounding_box(outline);
  const Length room = box.depth - cover * 2;
  if (room <= Length{}) return lengths;
  const int spaces = std::max(1, static_cast<int>(std::ceil(room / spacing - 1e-9)));
  for (int i = 0; i <= spaces; ++i) {
    const Length y = box.at.y + cover + room * (static_cast<double>(i) / spaces);
    LineSpans spans = inside(outline, y);
    for (const Polygon& opening : openings) spans = less(spans, inside(opening, y));
    for (const LineSpan& span : spans) {
      const Length length = cut_to * std::floor((span.to - span.from - cover * 2) / cut_to + 1e-6);
      if (length >= shortest_bar) ++lengths[length];
    }
  }
  return lengths;
}

void add_bars(const std::map<Length, int>& lengths, const char* place, std::vector<BarCut>& bars) {
  for (auto it = lengths.rbegin(); it != lengths.rend(); ++it) {
    bars.push_back({place, it->first, it->second});
  }
}

void add_both_ways(const Slab& slab, const SlabPlan& plan, SteelPlan& steel) {
  std::vector<Polygon> openings, across;
  for (const OpeningPlan& opening : plan.openings) {
    openings.push_back(chords(opening.edge, drawn_within));
    across.push_back(turned(openings.back()));
  }
  const Length spacing = slab.reinforcement.spacing.value_or(usual_bar_spacing);
  add_bars(bars_along_x(plan.outline, openings, steel.cover, spacing), "from left to right",
           steel.bars);
  add_bars(bars_along_x(turned(plan.outline), across, steel.cover, spacing), "from front to back",
           steel.bars);
}

}  // namespace

Length good_cover(const Mix& mix) {
  return std::max(least_cover, mix.aggregate.value_or(Length{}));
}

Length anchorage(const Reinforcement& given) {
  return given.diameter ? *given.diameter * anchor_diameters : unknown_anchor;
}

bool has_sharp_corners(const Opening& opening) {
  const Length half = std::min(opening.at.length, opening.at.depth) / 2;
  return opening.corner_radius < std::min(round_enough, half);
}

std::vector<BarCut> opening_bars(const Opening& opening, const Reinforcement& given) {
  const Length anchor = anchorage(given);
  const Length side = std::max(opening.at.length, opening.at.depth);
  std::vector<BarCut> bars{{"beside " + opening.name, side + anchor * 2, 2}};
  if (has_sharp_corners(opening)) {
    bars.push_back({"across the corners of " + opening.name, anchor * 2, 4});
  }
  return bars;
}

SteelPlan plan_steel(const Slab& slab, const SlabPlan& plan, const Mix& mix) {
  SteelPlan steel;
  const Reinforcement& given = slab.reinforcement;
  steel.cover = given.cover.value_or(good_cover(mix));
  if (given.kind == ReinforcementKind::mesh) steel.mesh = plan.top_area * (1 + lap_share);
  if (given.kind == ReinforcementKind::bar) {
    add_both_ways(slab, plan, steel);
    for (const Opening& opening : slab.openings) {
      for (BarCut& bar : opening_bars(opening, given)) steel.bars.push_back(std::move(bar));
    }
    for (const BarCut& bar : steel.bars) steel.bar_length += bar.length * bar.number;
  }
  return steel;
}

}  // namespace strikeoff
