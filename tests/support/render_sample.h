// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/plan.h"

namespace strikeoff::test {

/// A hand-built plan with something in every field, of an invented greenhouse potting bench:
/// 78 1/4 x 26 1/4 in, four batches, one board, a start time. Nothing is at `stop`.
[[nodiscard]] Plan printed_bench_plan();

/// The check of a joint that waits too long.
[[nodiscard]] Check cold_joint();

}  // namespace strikeoff::test
