// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "basis/basis.h"
#include "checks/checks.h"
#include "core/format.h"
#include "slab/stiffness.h"

namespace strikeoff {
namespace {

/// Past this the form is not off true but gives way (assumption).
constexpr Length bow_too_far = Length::mm(3);

struct Subject {
  const Slab& slab;
  const SlabPlan& plan;
  const Forms& forms;
  Density fresh;
  Units units;
};

/// One strip at the spacing planned for it.
struct Held {
  LoadedStrip strip;
  Length bow;
  Force pull;  // on each screw
  /// Of what is allowed; over 1 is too much.
  [[nodiscard]] double use() const { return std::max(bow / most_bow, pull / screw_holds); }
};

Length spacing_of(const Subject& subject) {
  const FormQuantities& forms = subject.plan.forms;
  return subject.slab.support == Support::ground ? forms.stakes_apart : forms.screw_spacing;
}

/// The strip that uses most of what is allowed; nothing where every side meets a wall.
std::optional<Held> worst_strip(const Subject& subject, const Heights& heights) {
  const Length spacing = spacing_of(subject);
  std::optional<Held> worst;
  for (const LoadedStrip& strip : loaded_strips(subject.slab, subject.forms, heights)) {
    const Held held{strip, bow(strip, subject.fresh, spacing),
                    screw_pull(strip, subject.fresh, spacing)};
    if (!worst || held.use() > worst->use()) worst = held;
  }
  return worst;
}

/// Finer than a tape: "2.3 mm", "0.09 in".
std::string show_bow(Length bow, Units units) {
  return units == Units::us ? show_number(bow.in_in(), 2) + " in"
                            : show_number(bow.in_mm(), 1) + " mm";
}

/// "250 N", "56 lb".
std::string show_pull(Force pull, Units units) {
  if (units == Units::metric) return fmt::format("{:.0f} N", pull.si());
  return show(kilograms(pull.si() / standard_gravity), units);
}

const char* kickers(Units units) {
  return units == Units::us
             ? "brace it with kickers from the floor or the base to near its top, every 2 ft"
             : "brace it with kickers from the floor or the base to near its top, every 600 mm";
}

/// What to do where screws or stakes this far apart let a strip move too far.
std::string closer_advice(const Subject& subject, const Held& worst, const Heights& heights) {
  const std::string spacing = show(spacing_of(subject), subject.units);
  const std::string moves =
      worst.bow > most_bow ? fmt::format("{} apart it bows about {} between them", spacing,
                                         show_bow(worst.bow, subject.units))
                           : fmt::format("{} apart each screw is pulled with about {}, {} is safe",
                                         spacing, show_pull(worst.pull, subject.units),
                                         show_pull(screw_holds, subject.units));
  if (worst.strip.staked) return moves + ": use a thicker board, or set stakes closer.";
  Forms free = subject.forms;
  free.screws_may_tighten = true;
  const Length enough = form_spacing(subject.slab, free, heights, subject.fresh).screws;
  if (enough < spacing_of(subject)) {
    return fmt::format("{}: set screws {} apart.", moves, show(enough, subject.units));
  }
  return fmt::format("{}: {}, or use a thicker board.", moves, kickers(subject.units));
}

std::optional<Check> form_deflection(const Subject& subject, const Heights& heights) {
  const auto worst = worst_strip(subject, heights);
  if (!worst) return std::nullopt;
  const std::string& name = subject.slab.name;
  Check check;
  check.code = "form-deflection";
  check.title = name + ": the edge strips stay straight under the fresh mix";
  check.value = worst->bow.in_mm();
  check.limit = most_bow.in_mm();
  check.unit = "mm";
  check.basis =
      basis("form-deflection", fmt::format("worst at {}, between {}", the_side(worst->strip.side),
                                           worst->strip.staked ? "stakes" : "screws"));
  const bool too_far = worst->bow > most_bow || worst->pull > screw_holds;
  const bool gives_way = worst->bow > bow_too_far || worst->pull > screw_holds * 2;
  if (too_far) {
    // A spacing that the plan chose asks for kickers; one that the job gives must be mended.
    const bool own = !subject.forms.screws_may_tighten && !worst->strip.staked;
    check.level = gives_way && own ? Level::stop : Level::caution;
    check.title = fmt::format("{}: the strip at {} {}", name, the_side(worst->strip.side),
                              worst->bow > most_bow ? "bows" : "may tear its screws out");
    check.advice = closer_advice(subject, *worst, heights);
  } else if (needs_kickers(worst->strip)) {
    check.level = Level::caution;
    check.title = fmt::format("{}: the strip at {} is tall for its thickness", name,
                              the_side(worst->strip.side));
    check.advice = fmt::format("{} of mix leans on {} of board that is screwed at its foot: {}.",
                               show(worst->strip.head, subject.units),
                               show(worst->strip.thickness, subject.units), kickers(subject.units));
  }
  return check;
}

std::optional<Check> no_wide_soffit(const Subject& subject) {
  Length widest;
  for (const Side& side : subject.slab.sides) {
    if (!side.wall) widest = std::max(widest, side.overhang);
  }
  if (subject.slab.support == Support::ground || widest <= Length{}) return std::nullopt;
  Check check;
  check.code = "soffit-span";
  check.title = subject.slab.name + ": the soffit strips hang on the base's face without props";
  check.value = widest.in_mm();
  check.limit = widest_free_soffit.in_mm();
  check.unit = "mm";
  check.basis = basis("soffit-width");
  return check;
}

std::optional<Check> soffit_span(const Subject& subject, const Heights& heights) {
  const auto soffits = wide_soffits(subject.slab, subject.forms, heights);
  if (soffits.empty()) return no_wide_soffit(subject);
  const auto span = [&](const WideSoffit& soffit) { return prop_span(soffit, subject.fresh); };
  const auto weakest =
      std::min_element(soffits.begin(), soffits.end(),
                       [&](const WideSoffit& a, const WideSoffit& b) { return span(a) < span(b); });
  const auto most_sag = std::max_element(
      soffits.begin(), soffits.end(), [&](const WideSoffit& a, const WideSoffit& b) {
        return sag_across(a, subject.fresh) < sag_across(b, subject.fresh);
      });
  const FormQuantities& forms = subject.plan.forms;
  Check check;
  check.code = "soffit-span";
  check.level = Level::caution;
  check.title = fmt::format("{}: soffits too wide to hang on the base's face stand on props",
                            subject.slab.name);
  check.value = forms.props_apart.in_mm();
  check.limit = least_props_apart.in_mm();
  check.unit = "mm";
  check.basis = basis("soffit-width");
  if (span(*weakest) < least_props_apart) {
    check.level = Level::stop;
    check.title = fmt::format("{}: the soffit at {} is too thin for its load", subject.slab.name,
                              the_side(weakest->side));
    check.advice =
        "Props would stand closer than 6 in (150 mm): use a thicker soffit, or screw a "
        "batten under its outer edge.";
    return check;
  }
  check.advice = fmt::format(
      "Set the {} no farther apart than {} under the outer edge, on boards, wedged tight.",
      count(forms.props, "prop", "props"), show(forms.props_apart, subject.units));
  if (const Length sag = sag_across(*most_sag, subject.fresh); sag > most_bow) {
    check.advice += fmt::format(
        " At {} the panel sags about {} between base and props too: set a second row of props "
        "halfway.",
        the_side(most_sag->side), show_bow(sag, subject.units));
  }
  return check;
}

}  // namespace

std::vector<Check> stiffness_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks;
  for (std::size_t i = 0; i < job.slabs.size(); ++i) {
    const Subject subject{job.slabs[i], plan.slabs[i], job.forms, plan.mix.fresh_density,
                          job.units};
    const Heights heights(job.slabs[i]);
    for (const auto& check : {form_deflection(subject, heights), soffit_span(subject, heights)}) {
      if (!check) continue;
      checks.push_back(*check);
      checks.back().about = job.slabs[i].name;
    }
  }
  return checks;
}

}  // namespace strikeoff
