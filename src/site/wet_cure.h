// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"

namespace strikeoff {

/// Mixes to strip after 12 h or more set like ordinary portland cement (assumption), and so does
/// a mix whose bag does not say.
[[nodiscard]] bool is_ordinary(const Mix& mix);

/// How long the top is kept wet once it is hard: ACI 308R and ACI 318: 7 days for ordinary cement
/// at 50 F (10 C) or warmer, from memory. Rapid mixes: an hour is common practice, no source.
[[nodiscard]] Duration wet_cure(const Mix& mix);

}  // namespace strikeoff
