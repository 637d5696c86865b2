// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "strikeoff/job.h"

namespace strikeoff::html {

/// The sheet's style, for the screen and for paper: drawings stand on pages of their own, lying,
/// without margins, so that they print in the scale they name. No colour says anything.
[[nodiscard]] std::string style(Units units);

}  // namespace strikeoff::html
