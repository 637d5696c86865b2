// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "loads/cantilever.h"

namespace strikeoff {
namespace {

Length most_overhang(const Slab& slab, const Side& side) {
  return std::min(root_depth(slab, side) * 4, Length::mm(300));
}

std::optional<Check> overhang(const CheckedSlab& one) {
  const Side* worst = least_side(one.slab, [&](const Side& side) {
    return side.bracket ? 0 : -(side.overhang / most_overhang(one.slab, side));
  });
  if (worst == nullptr || worst->bracket || worst->overhang <= Length{}) return std::nullopt;
  const Length most = most_overhang(one.slab, *worst);
  Check check = measured("overhang", one.slab.name + ": the overhang is short for its depth",
                         worst->overhang, most, basis("overhang"));
  const Units units = one.job.units;
  if (worst->overhang > most) {
    check.level = Level::stop;
    check.title = fmt::format("{}: the {} hangs out too far", one.slab.name, worst->name);
    check.advice = fmt::format(
        "{} out, {} at most unless brackets carry it: carry it, or make it "
        "shorter or thicker.",
        show(worst->overhang, units), show(most, units));
  } else if (worst->overhang > most / 2) {
    check.level = Level::caution;
    check.title = fmt::format("{}: the {} hangs out far", one.slab.name, worst->name);
    check.advice = fmt::format(
        "{} out: nobody sits or leans hard on it; put steel near its top, or "
        "brackets beneath.",
        show(worst->overhang, units));
  }
  return check;
}

/// Overhangs that the job says are carried; nothing where there are none.
std::optional<Check> brackets(const CheckedSlab& one) {
  const Side* worst = least_side(one.slab, [&](const Side& side) {
    return side.bracket ? -(side.overhang / most_overhang(one.slab, side)) : 0;
  });
  if (worst == nullptr || !worst->bracket || worst->overhang <= Length{}) return std::nullopt;
  const Length most = most_overhang(one.slab, *worst);
  Check check =
      measured("overhang", fmt::format("{}: brackets carry the {}", one.slab.name, worst->name),
               worst->overhang, most, basis("overhang"));
  if (worst->overhang > most / 2) check.level = Level::caution;
  check.advice = fmt::format(
      "{} out: set a bracket at each end and every {} at most before the pour, fixed to the base's "
      "frame and rated for the slab's weight and people leaning on it.",
      show(worst->overhang, one.job.units), one.job.units == Units::us ? "2 ft" : "600 mm");
  return check;
}

std::string stress_text(Pressure stress, Units units) {
  return units == Units::us ? fmt::format("{:.0f} psi", in_psi(stress))
                            : fmt::format("{:.2f} MPa", in_megapascals(stress));
}

/// What brings the stress down, and when people may lean.
std::string bending_advice(const Cantilever& worst, bool stop, Units units) {
  std::string text =
      stop ? fmt::format("{} out and {} deep: carry it on brackets, or make it shorter or thicker.",
                         show(worst.reach, units), show(worst.depth, units))
           : "Nobody sits on it or leans hard; brackets beneath are safer.";
  if (worst.corner) text += " Its corners bend both ways: nobody leans there.";
  if (worst.lean_from) {
    text +=
        fmt::format(" Nobody leans on it before {} after the first water.", show(*worst.lean_from));
  }
  return text;
}

std::optional<Check> bending(const CheckedSlab& one) {
  if (!one.plan.loads.worst) return std::nullopt;
  const Cantilever& worst = *one.plan.loads.worst;
  const Units units = one.job.units;
  const std::string stress = stress_text(worst.stress(), units);
  Check check;
  check.code = "overhang-bending";
  check.title =
      fmt::format("{}: the {} bends little when someone leans on it", one.slab.name, worst.side);
  check.value = in_megapascals(worst.stress());
  check.unit = "MPa";
  check.basis = basis("overhang-bending");
  if (!worst.strength) {
    check.level = Level::caution;
    check.title = fmt::format("{}: whether the {} holds someone who leans on it is not known ({})",
                              one.slab.name, worst.side, stress);
    check.advice =
        "The bag's strength is not given: put it in the job from the data sheet. Until then nobody "
        "leans on it.";
    return check;
  }
  const bool stop = worst.stress() > *worst.strength * stress_share_most;
  const bool caution = worst.stress() > *worst.strength * stress_share_good;
  check.limit = in_megapascals(*worst.strength * (stop ? stress_share_most : stress_share_good));
  if (stop || caution) {
    check.level = stop ? Level::stop : Level::caution;
    check.title = fmt::format("{}: the {} {} when someone leans on it ({} of about {})",
                              one.slab.name, worst.side, stop ? "may break off" : "bends hard",
                              stress, stress_text(*worst.strength, units));
  }
  check.advice = stop || caution || worst.lean_from ? bending_advice(worst, stop, units) : "";
  if (!stop && !caution && worst.lean_from) {
    check.advice =
        fmt::format("Nobody leans on it before {} after the first water.", show(*worst.lean_from));
  }
  return check;
}

}  // namespace

std::vector<Check> overhang_checks(const Job& job, const Plan& plan) {
  return for_each_slab(job, plan, [](const CheckedSlab& one, std::vector<Check>& checks) {
    add(overhang(one), checks);
    add(brackets(one), checks);
    add(bending(one), checks);
  });
}

}  // namespace strikeoff
