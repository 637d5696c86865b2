// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

#include "render/text.h"
#include "strikeoff/plan.h"

namespace strikeoff::text {

// The sections of the text plan, in the order of the day. Each is complete lines, or empty when
// the plan has nothing for it.

/// Title, every stop, and the plan in ten lines.
[[nodiscard]] Text headline(const Plan& plan);
[[nodiscard]] Text shop(const Plan& plan);
[[nodiscard]] Text cut(const Plan& plan);
[[nodiscard]] Text mix_card(const Plan& plan);
/// The same with a row a batch, and boxes to tick as it is weighed and as it goes into the mixer.
[[nodiscard]] Text batch_rows(const Plan& plan);
[[nodiscard]] Text pour(const Plan& plan);
/// Of that section the table of times and places, and the joints that no box describes.
[[nodiscard]] Text clock_table(const Plan& plan);
/// "the front, 230 mm from the left to the back, 230 mm from the left"; empty for a joint that ends
/// inside the slab.
[[nodiscard]] std::string joint_line(const Joint& joint, Units units);
/// How the air dries the fresh top, the best hour to begin, and the water of the cure.
[[nodiscard]] Text air_and_water(const Plan& plan);
[[nodiscard]] Text the_day(const Plan& plan);
/// Of that section the table of one phase's tasks, and how to read its times.
[[nodiscard]] Text tasks_of(const Plan& plan, std::string_view phase);
[[nodiscard]] Text reading_times(const Plan& plan);
/// Why the later steps wait as long as they do; empty where the bag's times hold as they stand.
[[nodiscard]] Text hardening(const Plan& plan);
/// What lies on the bases, where slabs stand on any: on pour day, on each support, on overhangs.
[[nodiscard]] Text weights(const Plan& plan);
[[nodiscard]] Text checks(const Plan& plan);
[[nodiscard]] Text assumptions(const Plan& plan);

}  // namespace strikeoff::text
