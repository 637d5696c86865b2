// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "resume/filling.h"
#include "strikeoff/resume.h"

namespace strikeoff {

/// What there is to say about a pour under way, the worst first.
[[nodiscard]] std::vector<Check> findings(const Job& job, const Plan& plan, const PourLog& log,
                                          const Filling& filling, const Resume& resume,
                                          const std::vector<Joint>& made);

/// What to do with batches that have their water and are not placed; empty without any.
[[nodiscard]] std::string what_to_do_in_hand(const Resume& resume);

}  // namespace strikeoff
