// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <optional>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"

namespace strikeoff {
namespace {

// One panel bridges 150 mm and nothing bridges more than 300 mm; mix does not run through a slit
// of 10 mm that is taped over (assumptions).
constexpr Length bridged_at_most = Length::mm(150);
constexpr Length widest = Length::mm(300);
constexpr Length slit = Length::mm(10);

/// True when one panel lies over all of the gap that the panels cover: no seam runs over it.
bool one_panel_covers(const SlabPlan& slab, const Rectangle& gap) {
  const double covered = overlap(slab.panel, gap).si();
  return std::any_of(slab.panels.begin(), slab.panels.end(), [&](const PanelPiece& piece) {
    const Polygon outline = piece.outline.empty() ? corners_of(piece.at) : piece.outline;
    return overlap(outline, gap).si() >= covered - 1e-9;
  });
}

Check base_gap(const SlabPlan& slab, const Rectangle& gap, Units units) {
  const Length span = std::min(gap.length, gap.depth);
  const bool panelled = !slab.panel.empty() && overlap(slab.panel, gap).si() > 0;
  Check check = measured(
      "base-gap",
      fmt::format("{}: the gap of {} in the base is bridged", slab.name, show(span, units)), span,
      panelled ? bridged_at_most : slit, basis("base-gap"));
  const Length most = panelled ? widest : slit;
  if (span > most) {
    check.level = Level::stop;
    check.limit = most.in_mm();
    check.title =
        fmt::format("{}: the mix falls through the gap of {}", slab.name, show(span, units));
    check.advice = "Board it over from rim to rim, screwed down, before anything else.";
  } else if (panelled && (span > bridged_at_most || !one_panel_covers(slab, gap))) {
    check.level = Level::caution;
    check.title =
        fmt::format("{}: the panels may sag over the gap of {}", slab.name, show(span, units));
    check.advice = span > bridged_at_most
                       ? "It is wide for a panel: fix a board under it, flush with the base's top."
                       : "A seam lies over it: fix a batten under the seam, flush with the base's "
                         "top.";
  }
  return check;
}

/// A seam over nothing bends and cracks the slab above it; one through an opening leaves two narrow
/// strips (common practice, no source).
std::optional<Check> panel_seam(const Slab& slab, const SlabPlan& plan, Units units) {
  const bool loose = plan.forms.loose_seams > Length{}, split = plan.forms.split_seams > Length{};
  if (plan.forms.seams <= Length{} || (slab.partitions.empty() && !split)) return std::nullopt;
  Check check;
  check.code = "panel-seam";
  check.title = fmt::format("{}: every panel seam lies well", slab.name);
  check.value = plan.forms.loose_seams.in_mm();
  check.unit = "mm";
  check.basis = basis("panel-seam");
  if (loose) {
    check.level = Level::caution;
    check.title = fmt::format("{}: {} of panel seams lie over no partition", slab.name,
                              show(plan.forms.loose_seams, units));
    check.advice = "Fix a board or batten under each, flush with the base's top.";
  }
  if (split) {
    check.level = Level::caution;
    if (!loose) check.title = fmt::format("{}: a panel seam runs into an opening", slab.name);
    check.advice += check.advice.empty() ? "" : " ";
    check.advice += "Back the narrow strips beside the opening with a board under the seam.";
  }
  return check;
}

}  // namespace

std::vector<Check> panel_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const std::size_t first = checks.size();
    for (const Rectangle& gap : job.slabs[i].gaps) {
      checks.push_back(base_gap(plan.slabs[i], gap, job.units));
    }
    add(panel_seam(job.slabs[i], plan.slabs[i], job.units), checks);
    set_about(job.slabs[i].name, first, checks);
  }
  return checks;
}

}  // namespace strikeoff
