// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "core/format.h"
#include "plan/purchasing.h"
#include "plan/supplies.h"

namespace strikeoff {
namespace {

/// "4 of grit 100, 4 of grit 200"
std::string discs_by_grit(const std::vector<SandingPass>& passes) {
  std::string text;
  for (const SandingPass& pass : passes) {
    if (!text.empty()) text += ", ";
    text += fmt::format("{} of grit {}", pass.discs, pass.grit);
  }
  return text;
}

Material disc_row(const Job& job, const Catalogue& catalogue, const FinishPlan& finish) {
  int discs = 0;
  for (const SandingPass& pass : finish.sanding) discs += pass.discs;
  Need need{"sanding-discs", static_cast<double>(discs), discs_by_grit(finish.sanding), ""};
  Supply disc = supply(catalogue, need.id);
  disc.rate = 1;  // they are counted by grit
  return supply_row(job, disc, need);
}

Material sealer_row(const Job& job, const Sealer& sealer, const FinishPlan& finish) {
  Supply good;
  good.id = sealer.id;
  good.item = sealer.name;
  good.unit = "L";
  good.pack = in_litres(sealer.pack);
  good.pack_name = "can of " + show_water(sealer.pack, job.units);
  good.price = sealer.price;
  return supply_row(
      job, good,
      {"sealer", in_litres(finish.sealer_volume),
       count(finish.coats, "coat", "coats") + " over " + show(finish.sealed, job.units), ""});
}

}  // namespace

std::vector<Material> finish_supplies(const Job& job, const Catalogue& catalogue,
                                      const FinishPlan& finish) {
  std::vector<Material> rows;
  if (!finish.sanding.empty()) rows.push_back(disc_row(job, catalogue, finish));
  if (job.finish.sealer) rows.push_back(sealer_row(job, *job.finish.sealer, finish));
  return rows;
}

}  // namespace strikeoff
