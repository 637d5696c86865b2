// SPDX-License-Identifier: MIT
#include "slab/stiffness.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/outlines.h"

namespace strikeoff {
namespace {

// Particleboard type P2 of EN 312, from memory; an assumption for any other board.
constexpr double board_stiffness = 1.8e9;  // Pa
constexpr Pressure wet_board_bends_to = megapascals(3);
constexpr Density board_density = kilograms_per_m3(700);  // particleboard (assumption)
constexpr Pressure people_and_tools = kilopascals(2.4);   // 50 psf, ACI 347, from memory

// How close is still work for people with a tape (assumptions).
constexpr Length stakes_usual = Length::mm(600), props_usual = Length::mm(600);

/// w, in N/m3.
double weight(Density fresh) {
  return fresh.si() * standard_gravity;
}

/// E I of a board this wide and thick, bent over its thickness; in N m2.
double bending_stiffness(Length width, Length thickness) {
  return board_stiffness * width.in_m() * std::pow(thickness.in_m(), 3) / 12;
}

/// The span whose middle moves by `most_bow` under a load per metre: a4 = 384 E I y/(5 q).
Length span_of_most_bow(double stiffness, double load) {
  return Length::m(std::pow(384 * stiffness * most_bow.in_m() / (5 * load), 0.25));
}

/// The pull of a metre's worth of screws.
Force pull_per_metre(const LoadedStrip& strip, Density fresh) {
  const double arm = strip.head.in_m() / 3 + strip.grip.in_m();
  return side_push(fresh, strip.head) * arm / (strip.grip.in_m() / 2);
}

Length widest_screws(const LoadedStrip& strip, Density fresh) {
  const Length by_bow = span_of_most_bow(bending_stiffness(strip.height, strip.thickness),
                                         side_push(fresh, strip.head).si());
  if (strip.staked) return by_bow;
  return std::min(by_bow, Length::m(screw_holds / pull_per_metre(strip, fresh)));
}

/// The usual spacing, or a closer one in whole steps.
Length closer(Length usual, Length needed, Length step, Length least) {
  if (needed >= usual) return usual;
  return std::max(least, step * std::floor(needed / step + 1e-9));
}

/// Depth of fresh mix at a side's rim at most, down an apron too.
Length rim_depth(const Slab& slab, const Polygon& outline, std::size_t k, const Heights& heights) {
  const Point &a = outline[k], &b = outline[(k + 1) % outline.size()];
  const Length apron = slab.sides[k].apron ? slab.apron_depth : Length{};
  return slab.thickness + std::max(heights.low.most(a, b), Length{}) + heights.rise.most(a, b) +
         apron;
}

}  // namespace

Length strip_grip(const Slab& slab, const Side& side, Length thickness) {
  if (slab.support == Support::ground) return {};
  return side.overhang > Length{} ? thickness : strip_lap;
}

Pressure liquid_pressure(Density fresh, Length depth) {
  return Pressure::from_si(weight(fresh) * depth.in_m());
}

Force side_push(Density fresh, Length depth) {
  return Force::from_si(weight(fresh) * depth.in_m() * depth.in_m() / 2);
}

std::vector<LoadedStrip> loaded_strips(const Slab& slab, const Forms& forms,
                                       const Heights& heights) {
  const Polygon outline = sharp_outline(slab);
  std::vector<LoadedStrip> strips;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side& side = slab.sides[k];
    if (side.wall) continue;
    LoadedStrip strip;
    strip.side = side.name;
    strip.thickness = forms.strip_stock.front().thickness;
    strip.head = rim_depth(slab, outline, k, heights);
    strip.staked = slab.support == Support::ground;
    strip.grip = strip_grip(slab, side, strip.thickness);
    strip.height = strip.head + strip.grip + forms.oversize;
    strips.push_back(std::move(strip));
  }
  return strips;
}

Length bow(const LoadedStrip& strip, Density fresh, Length spacing) {
  const double load = side_push(fresh, strip.head).si();
  return Length::m(5 * load * std::pow(spacing.in_m(), 4) /
                   (384 * bending_stiffness(strip.height, strip.thickness)));
}

Force screw_pull(const LoadedStrip& strip, Density fresh, Length spacing) {
  return strip.staked ? Force{} : pull_per_metre(strip, fresh) * spacing.in_m();
}

bool needs_kickers(const LoadedStrip& strip) {
  return !strip.staked && strip.head > strip.thickness * tall_for_thickness;
}

std::vector<WideSoffit> wide_soffits(const Slab& slab, const Forms& forms, const Heights& heights) {
  std::vector<WideSoffit> soffits;
  if (slab.support == Support::ground) return soffits;
  const Polygon outline = sharp_outline(slab);
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side& side = slab.sides[k];
    if (side.wall || side.overhang <= widest_free_soffit) continue;
    // Under an apron as if it were that deep all over.
    soffits.push_back({side.name, side.overhang, forms.strip_stock.front().thickness,
                       rim_depth(slab, outline, k, heights)});
  }
  return soffits;
}

Pressure soffit_load(const WideSoffit& soffit, Density fresh) {
  return liquid_pressure(fresh, soffit.depth) + people_and_tools +
         liquid_pressure(board_density, soffit.thickness);
}

Length prop_span(const WideSoffit& soffit, Density fresh) {
  const double load = soffit_load(soffit, fresh).si() * soffit.width.in_m() / 2;  // N/m
  const double modulus = soffit.width.in_m() * std::pow(soffit.thickness.in_m(), 2) / 6;
  // q a2/8 = stress x modulus
  const Length by_stress = Length::m(std::sqrt(8 * wet_board_bends_to.si() * modulus / load));
  return std::min(by_stress,
                  span_of_most_bow(bending_stiffness(soffit.width, soffit.thickness), load));
}

Length sag_across(const WideSoffit& soffit, Density fresh) {
  return Length::m(5 * soffit_load(soffit, fresh).si() * std::pow(soffit.width.in_m(), 4) /
                   (384 * bending_stiffness(Length::m(1), soffit.thickness)));
}

FormSpacing form_spacing(const Slab& slab, const Forms& forms, const Heights& heights,
                         Density fresh) {
  FormSpacing spacing;
  spacing.screws = forms.screw_spacing;
  const bool ground = slab.support == Support::ground;
  if (ground) spacing.stakes = stakes_usual;
  for (const LoadedStrip& strip : loaded_strips(slab, forms, heights)) {
    const Length needed = widest_screws(strip, fresh);
    if (ground) {
      spacing.stakes =
          std::min(spacing.stakes, closer(stakes_usual, needed, Length::mm(50), Length::mm(200)));
    } else if (forms.screws_may_tighten) {
      spacing.screws = std::min(spacing.screws,
                                closer(forms.screw_spacing, needed, Length::mm(5), Length::mm(50)));
    }
  }
  for (const WideSoffit& soffit : wide_soffits(slab, forms, heights)) {
    const Length apart =
        closer(props_usual, prop_span(soffit, fresh), Length::mm(50), Length::mm(50));
    spacing.props = spacing.props > Length{} ? std::min(spacing.props, apart) : apart;
  }
  return spacing;
}

int count_along(Length length, Length spacing) {
  // 1e-9: a length that is a whole number of spacings has no extra one for rounding.
  return std::max(2, static_cast<int>(std::ceil(length / spacing - 1e-9)) + 1);
}

int bracket_count(const Slab& slab) {
  int number = 0;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    const Side& side = slab.sides[k];
    if (!side.bracket || side.wall || side.overhang <= Length{}) continue;
    number += count_along(edge_length(slab.base, k), brackets_apart);
  }
  return number;
}

}  // namespace strikeoff
