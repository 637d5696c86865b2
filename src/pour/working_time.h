// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"

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

/// How much longer (over 1) or shorter setting takes at `mix` than at `reference`: 1 /
/// arrhenius_rate. Ea as given; else 50 kJ/mol when warmer, 30 when cooler: the cautious side each
/// way (assumption).
[[nodiscard]] double temperature_factor(Temperature mix, Temperature reference,
                                        std::optional<MolarEnergy> activation_energy);

/// Working time with `doses` of this retarder per bag, before the temperature factor: W0 + doses x
/// extends, or W0 x f(doses) with f linear between the additive's factors.
[[nodiscard]] Duration retarded(Duration working_time, const Additive& retarder, double doses);

}  // namespace strikeoff
