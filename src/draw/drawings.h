// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "draw/paper.h"
#include "strikeoff/draw.h"
#include "strikeoff/plan.h"

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

/// True for a circle.
[[nodiscard]] bool is_round(const OpeningPlan& opening);

/// True where the slab has an outline and its sides: every slab that is planned, but not one that a
/// caller has filled by hand in part.
[[nodiscard]] bool has_shape(const SlabPlan& slab);

/// The sides of a slab in words, as many pages as they fill: how long each is, where it begins and
/// which strips form it.
[[nodiscard]] std::vector<Drawing> side_lists(const Plan& plan, const SlabPlan& slab,
                                              std::size_t number);

/// Those of these shares of the piece's box, the rows one after another, that lie on the piece as
/// it is cut to the line.
[[nodiscard]] std::vector<PaperPoint> spots_in(const PanelPiece& piece, const View& view,
                                               const std::vector<double>& across,
                                               const std::vector<double>& down);

/// True where an opening has round corners but is too large for a template.
[[nodiscard]] bool too_large_for_template(const OpeningPlan& opening, Units units);

/// "bench top: plan, seen from above", the slab's name cut to what a title has room for.
[[nodiscard]] std::string title_of(const SlabPlan& slab, const std::string& words);

}  // namespace strikeoff::draw
