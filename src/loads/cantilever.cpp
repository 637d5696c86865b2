// SPDX-License-Identifier: MIT
#include "loads/cantilever.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/outlines.h"

namespace strikeoff {
namespace {

constexpr Force person_leans = Force::from_si(1000);  // assumption
constexpr Length leans_on = Length::mm(300);          // assumption

/// 6 m/h2 of a moment m per length, N m/m: the section modulus of a metre is h2/6.
Pressure bending_stress(double moment, Length depth) {
  return Pressure::from_si(6 * moment / (depth.in_m() * depth.in_m()));
}

bool hangs_free(const Side& side) {
  return !side.wall && !side.bracket && side.overhang > Length{};
}

}  // namespace

Length root_depth(const Slab& slab, const Side& side) {
  const bool panel_passes = slab.panel && side.panel_overhang > Length{};
  return panel_passes ? slab.thickness - slab.panel->thickness : slab.thickness;
}

Pressure own_weight_stress(Density density, Length thickness, Length reach, Length depth) {
  const double load = density.si() * standard_gravity * thickness.in_m();  // N/m2
  return bending_stress(load * reach.in_m() * reach.in_m() / 2, depth);
}

Pressure apron_stress(Density density, Length wide, Length deep, Length reach, Length depth) {
  const double load = density.si() * standard_gravity * wide.in_m() * deep.in_m();  // N/m
  return bending_stress(load * (reach - wide / 2).in_m(), depth);
}

Length leaning_width(Length reach, Length edge) {
  return std::min(leans_on + reach * 2, edge);
}

Pressure leaning_stress(Length reach, Length depth, Length width) {
  return bending_stress(person_leans.si() * reach.in_m() / width.in_m(), depth);
}

Pressure tensile_strength(Pressure compressive) {
  return megapascals(0.30 * std::pow(in_megapascals(compressive), 2.0 / 3));
}

Pressure compressive_for(Pressure tensile) {
  return megapascals(std::pow(in_megapascals(tensile) / 0.30, 1.5));
}

std::optional<Pressure> label_strength(const Mix& mix) {
  std::optional<Pressure> strength;
  for (const StrengthAt& point : mix.strength) {
    if (!strength || point.age <= days(28)) strength = point.strength;
  }
  return strength;
}

std::optional<Cantilever> worst_cantilever(const Slab& slab, const SlabPlan& plan, const Mix& mix,
                                           Length strip) {
  const Density density = plan.mass / plan.concrete;
  const Polygon outline = sharp_outline(slab);
  const std::size_t n = slab.sides.size();
  std::optional<Cantilever> worst;
  for (std::size_t k = 0; k < n; ++k) {
    const Side& side = slab.sides[k];
    if (!hangs_free(side)) continue;
    Cantilever one;
    one.side = side.name;
    one.reach = side.overhang;
    one.depth = root_depth(slab, side);
    one.length = edge_length(outline, k);
    one.width = leaning_width(one.reach, one.length);
    one.corner = hangs_free(slab.sides[(k + 1) % n]) || hangs_free(slab.sides[(k + n - 1) % n]);
    one.own = own_weight_stress(density, slab.thickness, one.reach, one.depth);
    if (side.apron) {
      one.apron = apron_stress(density, one.reach - strip, slab.apron_depth, one.reach, one.depth);
    }
    one.leaning = leaning_stress(one.reach, one.depth, one.width);
    if (const auto label = label_strength(mix)) one.strength = tensile_strength(*label);
    if (!worst || one.stress() > worst->stress()) worst = one;
  }
  return worst;
}

}  // namespace strikeoff
