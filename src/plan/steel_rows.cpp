// SPDX-License-Identifier: MIT
#include "plan/steel_rows.h"

#include <fmt/core.h>

#include <map>

#include "basis/basis.h"
#include "core/format.h"
#include "loads/steel.h"
#include "plan/purchasing.h"

namespace strikeoff {
namespace {

// As long as bars are commonly sold for cars and trailers. Assumption.
constexpr Length longest_sold = Length::m(6);

/// The steel of one diameter; nothing where the job does not say.
struct SteelNeed {
  Length bars;
  Area mesh;
  std::vector<std::string> cuts;
  bool laps = false;
};
using Needs = std::map<std::optional<Length>, SteelNeed>;

void add_cuts(const SlabPlan& plan, bool several, Units units, SteelNeed& need) {
  for (const BarCut& bar : plan.steel.bars) {
    need.cuts.push_back(fmt::format("{} x {} {}{}", bar.number, show(bar.length, units), bar.place,
                                    several ? " (" + plan.name + ")" : ""));
    need.laps = need.laps || bar.length > longest_sold;
  }
}

Needs needs_of(const Job& job, const Plan& plan, ReinforcementKind kind) {
  Needs needs;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const Reinforcement& given = job.slabs[i].reinforcement;
    if (given.kind != kind) continue;
    SteelNeed& need = needs[given.diameter];
    need.bars += plan.slabs[i].steel.bar_length;
    need.mesh += plan.slabs[i].steel.mesh;
    add_cuts(plan.slabs[i], job.slabs.size() > 1, job.units, need);
  }
  return needs;
}

std::string with_diameter(const std::string& item, const std::optional<Length>& diameter,
                          Units units) {
  return diameter ? item + ", " + show(*diameter, units) : item + ", diameter not given";
}

std::string cut_note(const SteelNeed& need) {
  std::string text = "cut ";
  for (std::size_t i = 0; i < need.cuts.size(); ++i) text += (i == 0 ? "" : ", ") + need.cuts[i];
  if (need.laps) text += "; where a bar is longer than sold, lap two by 40 diameters";
  return text;
}

/// `sold`: in what, after the unit.
Material row(const Job& job, std::string item, std::string stock, double needed, std::string unit,
             const char* sold) {
  Material result;
  result.item = std::move(item);
  result.stock = std::move(stock);
  result.needed = needed;
  result.unit = std::move(unit);
  result.on_hand = quantity_on_hand(job, result);
  result.pack = result.unit + sold;
  result.basis = basis(result.stock);
  buy(job, whole_packs(needed - result.on_hand), std::nullopt, {}, result);
  return result;
}

}  // namespace

std::vector<Material> steel_rows(const Job& job, const Plan& plan) {
  std::vector<Material> rows;
  const bool us = job.units == Units::us;
  for (const auto& [diameter, need] : needs_of(job, plan, ReinforcementKind::bar)) {
    if (need.bars <= Length{}) continue;
    const double needed = us ? need.bars.in_in() / 12 : need.bars.in_m();
    rows.push_back(row(job, with_diameter("reinforcing bar", diameter, job.units),
                       "reinforcing-bar", needed, us ? "ft" : "m", " in bars that give the cuts"));
    rows.back().note = cut_note(need);
  }
  for (const auto& [diameter, need] : needs_of(job, plan, ReinforcementKind::mesh)) {
    const double needed = us ? in_square_feet(need.mesh) : need.mesh.si();
    rows.push_back(row(job, with_diameter("reinforcing mesh", diameter, job.units),
                       "reinforcing-mesh", needed, us ? "ft2" : "m2",
                       " in sheets or off the roll"));
    rows.back().note = "cut it back from every edge and opening by the cover";
  }
  return rows;
}

}  // namespace strikeoff
