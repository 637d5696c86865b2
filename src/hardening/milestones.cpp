// SPDX-License-Identifier: MIT
#include "hardening/milestones.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "site/wet_cure.h"

namespace strikeoff {
namespace {

/// What a step waits for.
struct Need {
  std::string step;
  std::optional<Duration> label;
  std::string whose;  // "the bag's"
  std::optional<Pressure> strength;
  bool by_steps = false;  // a strength the bag names for one age serves where its time is silent
};

Duration whole_minutes(Duration time) {
  return minutes(std::round(in_minutes(time)));
}

/// "the bag's 1 h, longer in the cold: 1.4 times, and 15 min more for the retarder".
std::string label_words(const Need& need, const Hardener& hardener, Duration moment) {
  std::string text = fmt::format("{} {}", need.whose, show(*need.label));
  const double longer = (moment - hardener.start()) / *need.label;
  if (longer >= 1.05) text += fmt::format(", longer in the cold: {} times", show_number(longer, 1));
  const Duration delay = whole_minutes(hardener.delay());
  if (delay > Duration{}) {
    text +=
        fmt::format("{} {} more for the retarder", longer >= 1.05 ? ", and" : " and", show(delay));
  }
  return text;
}

std::string unknown_words(const Need& need, const Hardener& hardener, Units units) {
  if (need.label && !hardener.slowing()) {
    return fmt::format("nothing hardens at {} or colder", show(datum_temperature, units));
  }
  if (need.label) return "not within a year in this cold";
  if (need.strength && hardener.curve()) {
    return fmt::format("the bag names no time, and its strengths do not tell when it has {}",
                       show(*need.strength, units));
  }
  return "the bag does not say";
}

Milestone meet(const Need& need, const Hardener& hardener, Units units) {
  Milestone result;
  result.step = need.step;
  result.strength = need.strength;
  if (need.label) result.label = hardener.after(*need.label);
  const bool counts = hardener.has_curve() || (need.by_steps && !need.label);
  if (need.strength && counts) result.strong = hardener.when_strong(*need.strength);
  // A time by the label that the cold puts off for ever is not replaced by a strength.
  if (need.label ? !result.label : !result.strong) {
    result.reason = unknown_words(need, hardener, units);
    return result;
  }
  if (!result.label) {
    result.from = result.strong;
    result.reason = fmt::format("{} by the bag's strengths, an estimate; it names no time",
                                show(*need.strength, units));
    return result;
  }
  const std::string by_label = label_words(need, hardener, *result.label);
  const bool wait = result.strong && *result.strong > *result.label;
  result.from = wait ? result.strong : result.label;
  result.reason = wait ? fmt::format("{} by the bag's strengths, an estimate, later than {}",
                                     show(*need.strength, units), by_label)
                       : by_label;
  return result;
}

/// Soffits stay carried longer than edges are held: 7 days for ordinary cement (ACI 347's times
/// for soffits, from memory), else until the label's first full use.
Need props_need(const Mix& mix) {
  if (is_ordinary(mix)) return {"props", days(7), "for soffits", soffit_strength};
  return {"props", mix.full_service, "the full use, the bag's", soffit_strength};
}

}  // namespace

const Milestone* milestone(const HardeningPlan& plan, std::string_view step) {
  const auto found = std::find_if(plan.milestones.begin(), plan.milestones.end(),
                                  [&](const Milestone& each) { return each.step == step; });
  return found == plan.milestones.end() ? nullptr : &*found;
}

std::vector<Milestone> milestones(const Job& job, const Hardener& hardener,
                                  Circumstances circumstances) {
  const Mix& mix = job.mix;
  const char* const bag = "the bag's";
  std::vector<Need> needs = {{"strip", mix.strip_after, bag,
                              circumstances.frost ? strip_strength_in_frost : strip_strength},
                             {"sand", mix.sand_after, bag, std::nullopt},
                             {"seal", mix.seal_after, bag, std::nullopt}};
  if (circumstances.props) needs.insert(needs.begin() + 1, props_need(mix));
  if (hardener.curve()) {
    needs.push_back({"light use", std::nullopt, bag, light_use_strength, true});
  }
  needs.push_back({"full use", mix.full_service, bag, full_use_strength, true});
  std::vector<Milestone> result;
  for (const Need& need : needs) result.push_back(meet(need, hardener, job.units));
  return result;
}

}  // namespace strikeoff
