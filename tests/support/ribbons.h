// SPDX-License-Identifier: MIT
// Whether a pour can cross its slabs in ribbons, judged by hand arithmetic alone.
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/plan.h"
#include "support/random_pours.h"

namespace strikeoff::test {

/// What is promised of a pour in full-width ribbons.
struct RibbonPour {
  int gap = 1;
  double wait_min = 0;  // its longest
};

/// A pour of ribbons no narrower than `least_m` and than max(40 mm, 3 x the largest grain), or
/// nothing where this model knows of none; there may be one even then. It claims only what is sure:
/// - n = whole bags over bags a batch, every batch an equal part of the net volume.
/// - A batch is a strip across the whole front from one end of a slab to the other. It is at least
///   volume / (thickness x front) wide: panels and openings leave less to fill, so it is wider.
/// - The front of a rectangle is its shorter side. Of an L, U or T it is taken as 1.42 times the
///   widest arm, as long as a joint through the corners of a square: where it turns, it slants. Its
///   ribbons are at least as wide as joints keep off an inner corner, max(2 x thickness, 100 mm),
///   so that there is room to turn.
/// - Neighbours follow one another, gap 1; where arms branch (T) two fronts go on in turn, gap 2.
/// - Slabs follow one another in some order. Either a batch that ends one begins the next, both of
///   its parts wide enough (or the whole of a slab); or every slab has batches of its own, of equal
///   size, no larger than what is mixed, the same number in all.
/// - The longest wait is gap x takt + lead; where a strip is split by an opening, two minutes more.
/// Slabs thicker than 150 mm, poured in lifts, are not judged: nothing.
std::optional<RibbonPour> ribbon_pour(const RandomPour& pour, const Plan& plan, double least_m);

}  // namespace strikeoff::test
