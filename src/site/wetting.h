// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/plan.h"

namespace strikeoff {

/// Water that a bare, level top holds before it runs off, and damp cotton or hessian (0.4 to
/// 0.8 kg/m2): assumptions. A millimetre of water is a kilogram on a square metre.
inline constexpr Length bare_film = Length::mm(0.2), cloth_film = Length::mm(0.6);
/// A sheet over it lets so much less through, or still less (assumption).
inline constexpr double sheet_cuts = 10;
/// Skin of an edge that must not dry before the next batch knits to it (assumption).
inline constexpr Length edge_skin = Length::mm(0.1);

/// Whatever the formulas say, a cure is looked at so often (common practice, no source).
inline constexpr Duration looked_at_every = hours(24);

/// How long this much water lasts at the upper end of the rate's band: film / (1.4 E). Nothing
/// where nothing dries.
[[nodiscard]] std::optional<Duration> drying_time(Length film, EvaporationRate rate);

/// Bare, under damp cloth, and both with a sheet over them, where a bare wet top loses `rate`.
[[nodiscard]] std::vector<Wetting> wettings(EvaporationRate rate);

/// What keeps `area` wet for so long under this cover: its first film, and what goes through it at
/// the upper end of the rate's band.
[[nodiscard]] Volume cure_water(const Wetting& cover, Area area, Duration time);

}  // namespace strikeoff
