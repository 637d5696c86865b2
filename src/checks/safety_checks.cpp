// SPDX-License-Identifier: MIT
#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"

namespace strikeoff {
namespace {

/// A standing caution: short, always there, and not the last word on its subject. Its basis is the
/// entry of its own name.
Check standing(std::string code, std::string title, std::string advice) {
  Check check;
  check.basis = basis(code);
  check.code = std::move(code);
  check.level = Level::caution;
  check.title = std::move(title);
  check.advice = std::move(advice);
  return check;
}

/// What makes dust, each with what holds it back. Nothing here says that a mask is enough.
Check silica(const Job& job, const Plan& plan) {
  const bool panels = std::any_of(job.slabs.begin(), job.slabs.end(),
                                  [](const Slab& slab) { return slab.panel.has_value(); });
  std::string advice = "Tip bags low and slowly, outdoors or with extraction. ";
  if (panels) advice += "Score and snap cement sheets; saw them wet or with extraction. ";
  if (!plan.finish.sanding.empty()) {
    advice +=
        "Sand wet, or with a shroud and a vacuum: 25 ft3/min (42 m3/h) for each inch (25 mm) "
        "of the disc. ";
  }
  advice += "Wear a fitted dust mask; sweep nothing dry. The bag's safety data sheet decides.";
  return standing("silica", "Dust of the mix, of cement sheets and of dry sanding harms the lungs",
                  std::move(advice));
}

Check caustic() {
  return standing("caustic", "Wet mix burns skin and eyes, and does not hurt at first",
                  "Gloves, goggles, long sleeves, boots; no contact lenses; never kneel in it. "
                  "Wash splashes off "
                  "and change wet clothes at once; rinse eyes with water for 20 min and see a "
                  "doctor. The bag's "
                  "safety data sheet decides.");
}

Check electric() {
  return standing("electric", "Power tools stand on a wet floor",
                  "Use an outlet with a residual-current device (GFCI) and test it first; keep "
                  "leads and plugs out of the wet; unplug the mixer before you clean it. Local "
                  "electrical code decides.");
}

Check ventilation(const Job& job) {
  std::string advice =
      "No fuel heater and no engine in a closed room: carbon monoxide kills without a smell. ";
  if (job.finish.sealer) {
    advice +=
        "Seal and let dry with windows open, away from flames and pilot lights; its data "
        "sheet decides.";
  } else {
    advice += "The heater's or the engine's manual decides.";
  }
  return standing("ventilation", "Fumes and exhaust gather indoors", std::move(advice));
}

Check hearth() {
  return standing("hearth", "If this slab is a hearth, fire has rules of its own",
                  "Clearances, thickness and what may burn beneath it come from the local code and "
                  "the stove's manual; no fire before it is dry through. Ask a licensed "
                  "practitioner.");
}

}  // namespace

std::vector<Check> safety_checks(const Job& job, const Plan& plan) {
  return {silica(job, plan), caustic(), electric(), ventilation(job), hearth()};
}

}  // namespace strikeoff
