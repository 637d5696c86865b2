// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/quantity.h"

namespace strikeoff {

/// Temperature of the fresh mix from its ingredients:
/// T = (0.22 M_bag T_bag + M_water T_water - 79.7 M_ice) / (0.22 M_bag + M_water + M_ice) in C,
/// 0.22 being the specific heat of dry solids relative to water (ACI 305R mixing equation, from
/// memory; PCA EB001 ch. 13), 79.7 K the latent heat of ice over the heat of water: 143.5 Btu/lb
/// (CRD-C 307). `water` is what is liquid; the ice comes beside it, at its melting point. Never
/// under 0 C where nothing else is that cold: the rest of the ice would not melt.
[[nodiscard]] Temperature fresh_mix_temperature(Mass bag, Temperature bag_temperature, Mass water,
                                                Temperature water_temperature, Mass ice = {});

/// Above this share of ice in the water the equation is inaccurate (Jabbar 2017, abstract).
inline constexpr double most_ice = 0.20;

/// Out of a tub of ice (assumption).
inline constexpr Temperature coldest_water = Temperature::celsius(2);
/// Hotter water can set cement in a flash: 140 F, ACI 306R, from memory.
inline constexpr Temperature hottest_water = Temperature::celsius(60);

/// How one bag's water goes in: what is liquid at this temperature, the rest as ice.
struct Chill {
  Temperature water;
  Mass ice;
};

/// What brings the fresh mix to this temperature: the equation above solved for the water beside
/// the ice there is; where the coldest water is not enough, for ice in it. `water` is all of the
/// bag's, the ice in it. Nothing where it would take more ice than the equation holds for, or
/// hotter water than is good. Precondition: not all of the water is ice.
[[nodiscard]] std::optional<Chill> chill_to(Temperature wanted, Mass bag,
                                            Temperature bag_temperature, Mass water, Mass ice);

}  // namespace strikeoff
