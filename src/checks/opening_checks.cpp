// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "checks/rails.h"
#include "core/format.h"
#include "loads/steel.h"

namespace strikeoff {
namespace {

std::optional<Check> rail(const CheckedSlab& one) {
  const auto narrowest = narrowest_rail(one.plan);
  if (!narrowest) return std::nullopt;
  // 2T and 75 mm: assumption; corners and thin bars are where worktops break in transport.
  const Length good = std::max(one.slab.thickness * 2, Length::mm(75));
  Check check = measured("narrow-rail", one.slab.name + ": the slab beside openings is wide enough",
                         narrowest->width, good, basis("narrow-rail"));
  if (narrowest->width < good) {
    const Units units = one.job.units;
    const std::string& opening = one.slab.openings[narrowest->opening].name;
    check.level = Level::caution;
    check.title = fmt::format("{}: a narrow rail beside {}", one.slab.name, opening);
    check.advice = fmt::format(
        "Only {} wide, {} is safer: nobody leans or kneels on it; move or shrink the opening, or "
        "lay a bar in the rail.",
        show(narrowest->width, units), show(good, units));
  }
  return check;
}

/// "2 bars of 700 mm beside sink and 4 of 400 mm across the corners of sink".
std::string bars_to_cut(const Opening& opening, const Reinforcement& given, Units units) {
  std::string text;
  for (const BarCut& bar : opening_bars(opening, given)) {
    text += text.empty()
                ? fmt::format("{} bars of {} {}", bar.number, show(bar.length, units), bar.place)
                : fmt::format(" and {} of {} {}", bar.number, show(bar.length, units), bar.place);
  }
  return text;
}

/// The bars of every opening that needs them, in one sentence. Many openings are a pattern: the
/// first few say how.
std::string all_bars(const CheckedSlab& one) {
  constexpr std::size_t most_named = 4;
  std::string text;
  std::size_t named = 0, left = 0;
  for (const Opening& opening : one.slab.openings) {
    if (!has_sharp_corners(opening)) continue;
    if (named == most_named) {
      ++left;
      continue;
    }
    text +=
        (named++ == 0 ? "" : "; ") + bars_to_cut(opening, one.slab.reinforcement, one.job.units);
  }
  if (left > 0) text += fmt::format("; and likewise at {} more", left);
  return text;
}

std::optional<Check> corners(const CheckedSlab& one) {
  const auto& openings = one.slab.openings;
  if (openings.empty()) return std::nullopt;
  const Opening* sharpest = nullptr;
  for (const Opening& opening : openings) {
    if (!has_sharp_corners(opening)) continue;
    if (sharpest == nullptr || opening.corner_radius < sharpest->corner_radius) sharpest = &opening;
  }
  Check check;
  check.code = "opening-corners";
  check.title = one.slab.name + ": the corners of openings are round enough";
  check.basis = basis("opening-corners");
  if (sharpest == nullptr) return check;
  check.value = sharpest->corner_radius.in_mm();
  check.limit = round_enough.in_mm();
  check.unit = "mm";
  const Units units = one.job.units;
  const std::string bars = all_bars(one);
  if (one.slab.reinforcement.kind == ReinforcementKind::bar) {
    check.title = one.slab.name + ": bars hold the corners of openings";
    check.advice = fmt::format("Lay {}, halfway up the slab.", bars);
    return check;
  }
  check.level = Level::caution;
  check.title =
      fmt::format("{}: cracks may start from the corners of {}", one.slab.name, sharpest->name);
  check.advice = fmt::format("Round them to {} or more, or lay {}, halfway up the slab.",
                             show(round_enough, units), bars);
  return check;
}

}  // namespace

std::vector<Check> opening_checks(const Job& job, const Plan& plan) {
  return for_each_slab(job, plan, [](const CheckedSlab& one, std::vector<Check>& checks) {
    add(rail(one), checks);
    add(corners(one), checks);
  });
}

}  // namespace strikeoff
