// SPDX-License-Identifier: MIT
#include "render/json_parts.h"

namespace strikeoff::json {
namespace {

Json pass(const SandingPass& pass) {
  return {{"grit", pass.grit},
          {"area_m2", number(pass.area.si())},
          {"work_min", number(in_minutes(pass.work))},
          {"discs", pass.discs}};
}

Json sealer(const FinishPlan& finish) {
  Json result = {{"name", finish.sealer},
                 {"coats", finish.coats},
                 {"area_m2", number(finish.sealed.si())},
                 {"work_min", number(in_minutes(finish.coating))},
                 {"volume_l", number(in_litres(finish.sealer_volume))}};
  if (finish.recoat) result["recoat_min"] = number(in_minutes(*finish.recoat));
  return result;
}

}  // namespace

Json finish(const FinishPlan& finish) {
  Json result = {{"top_m2", number(finish.top.si())},
                 {"edges_m2", number(finish.edges.si())},
                 {"sanding", array(finish.sanding, pass)},
                 {"fill_pits", finish.fill_pits}};
  if (finish.coats > 0) result["sealer"] = sealer(finish);
  return result;
}

}  // namespace strikeoff::json
