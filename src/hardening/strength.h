// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// The compressive strength of a mix at the temperature its label's times hold at. It is 0 before
/// the set, never falls, and stays at its value of the last age that the bag gives: what comes
/// after is not known.
struct StrengthCurve {
  enum class Law {
    steps,        // no curve fits, or one point alone: as strong as the last point passed
    hyperbolic,   // S = Su k (t - t0) / (1 + k (t - t0)) (ASTM C1074, annex, from memory)
    exponential,  // S = Su exp(-(theta / t)^a) (Freiesleben Hansen and Pedersen)
  };
  Law law = Law::steps;
  Pressure ultimate;  // Su
  double rate = 0;    // k, 1/s
  Duration set;       // t0
  Duration theta;
  double shape = 1;                // a
  std::vector<StrengthAt> points;  // of the bag, rising ages; at least one
};

/// The curve through the bag's points (rising ages), an estimate: through two exactly, by least
/// squares through more; `set` is when the label says the mix is set. Steps where no curve rises
/// through them. Nothing without points.
[[nodiscard]] std::optional<StrengthCurve> fit_strength(const std::vector<StrengthAt>& points,
                                                        std::optional<Duration> set);

[[nodiscard]] Pressure strength_at(const StrengthCurve& curve, Duration equivalent);

/// When it is as strong as that; nothing when the bag does not say that it ever is.
[[nodiscard]] std::optional<Duration> age_of(const StrengthCurve& curve, Pressure strength);

}  // namespace strikeoff
