// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "strikeoff/draw.h"

namespace strikeoff::draw {

// The kinds of drawings, one file each. A kind the plan has nothing for gives none.

[[nodiscard]] std::vector<Drawing> slab_plans(const Plan& plan);
[[nodiscard]] std::vector<Drawing> edge_sections(const Plan& plan);
[[nodiscard]] std::vector<Drawing> panel_layouts(const Plan& plan);
[[nodiscard]] std::vector<Drawing> cut_layouts(const Plan& plan);
[[nodiscard]] std::vector<Drawing> pour_zones(const Plan& plan);
[[nodiscard]] std::vector<Drawing> timelines(const Plan& plan);
/// At full size, of openings with round corners; a tape marks out the others. It stops one page
/// past what is kept.
inline constexpr std::size_t most_template_pages = 60;
[[nodiscard]] std::vector<Drawing> templates(const Plan& plan);
[[nodiscard]] std::vector<Drawing> curves(const Plan& plan);

/// True where the slab has an outline and its sides: every slab that is planned, but not one that a
/// caller has filled by hand in part.
[[nodiscard]] bool has_shape(const SlabPlan& slab);

/// "bench top: plan", or the words alone where there is one slab without a name of its own.
[[nodiscard]] std::string title_of(const SlabPlan& slab, const std::string& words);

}  // namespace strikeoff::draw
