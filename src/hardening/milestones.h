// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "hardening/hardening.h"

namespace strikeoff {

/// Side strips stand 2 MPa of cube strength without harm (C&CA 42.505, 1975), 5 MPa where it can
/// freeze (CIRIA 136, from memory); soffits 10 MPa (CIRIA 136, from memory).
inline constexpr Pressure strip_strength = megapascals(2);
inline constexpr Pressure strip_strength_in_frost = megapascals(5);
inline constexpr Pressure soffit_strength = megapascals(10);
/// Assumptions.
inline constexpr Pressure light_use_strength = megapascals(10);
inline constexpr Pressure full_use_strength = megapascals(20);

struct Circumstances {
  bool props = false;  // under soffit panels
  bool frost = false;  // it can freeze
};

/// Each step's milestone, in the order of the day: those the slab has, known or not.
[[nodiscard]] std::vector<Milestone> milestones(const Job& job, const Hardener& hardener,
                                                Circumstances circumstances);

}  // namespace strikeoff
