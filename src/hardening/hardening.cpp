// SPDX-License-Identifier: MIT
#include "hardening/hardening.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "hardening/milestones.h"
#include "pour/setting.h"

namespace strikeoff {
namespace {

/// When the label's mix is set and its strength begins: its final set, else its working time, which
/// is sooner (assumption).
std::optional<Duration> set_of(const Mix& mix) {
  return mix.final_set ? mix.final_set : mix.working_time;
}

std::string law_name(const StrengthCurve& curve) {
  switch (curve.law) {
    case StrengthCurve::Law::steps:
      return "steps";
    case StrengthCurve::Law::hyperbolic:
      return "hyperbolic";
    case StrengthCurve::Law::exponential:
      return "exponential";
  }
  return "";
}

StrengthPoint point_at(const Hardener& hardener, const PourPlan& pour, Duration moment) {
  const Duration equivalent = hardener.equivalent(moment);
  return {moment - pour.end, equivalent, strength_at(*hardener.curve(), equivalent)};
}

/// As many as a drawing of the curve needs, evenly spaced in the logarithm of the age.
std::vector<StrengthPoint> drawn(const Hardener& hardener, const PourPlan& pour) {
  constexpr int points = 24;
  const Duration last = hardener.after(hardener.curve()->points.back().age)
                            .value_or(hardener.start() + AgeClock::longest) -
                        pour.end;
  const Duration first = std::min(hours(1), last / 10);
  std::vector<StrengthPoint> strength;
  for (int i = 0; i < points; ++i) {
    const double share = static_cast<double>(i) / (points - 1);
    const Duration age = i + 1 == points ? last : first * std::pow(last / first, share);
    strength.push_back(point_at(hardener, pour, pour.end + age));
  }
  return strength;
}

std::vector<StrengthPoint> given(const Hardener& hardener, const PourPlan& pour) {
  std::vector<StrengthPoint> strength;
  for (const StrengthAt& point : hardener.curve()->points) {
    const auto moment = hardener.after(point.age);
    if (moment) strength.push_back({*moment - pour.end, point.age, point.strength});
  }
  return strength;
}

std::vector<ExpectedStrength> expected(const Hardener& hardener, const PourPlan& pour,
                                       const HardeningPlan& plan) {
  std::vector<ExpectedStrength> result;
  const auto add = [&](const std::string& when, Duration moment) {
    const StrengthPoint point = point_at(hardener, pour, moment);
    if (point.equivalent <= hardener.curve()->points.back().age) result.push_back({when, point});
  };
  const Milestone* strip = milestone(plan, "strip");
  if (strip != nullptr && strip->from) add("strip", *strip->from);
  for (const int day : {1, 3, 7, 28}) {
    add(std::to_string(day) + " d", pour.end + days(day));
  }
  return result;
}

}  // namespace

Hardener::Hardener(const Job& job, const PourPlan& pour, Duration start_of_pour)
    : delay_(std::max(Duration{}, retarder_delay(job.mix, pour))),
      start_(pour.end + delay_),
      clock_(air_cycle(job.site), start_of_pour + start_, job.mix.at,
             job.mix.activation_energy.value_or(usual_activation_energy)),
      curve_(fit_strength(job.mix.strength, set_of(job.mix))) {}

std::optional<Duration> Hardener::after(Duration label) const {
  const auto age = clock_.reached(label);
  if (!age) return std::nullopt;
  return start_ + *age;
}

std::optional<Duration> Hardener::when_strong(Pressure strength) const {
  const auto age = curve_ ? age_of(*curve_, strength) : std::nullopt;
  return age ? after(*age) : std::nullopt;
}

Duration Hardener::equivalent(Duration from_first_water) const {
  return clock_.equivalent(from_first_water - start_);
}

bool Hardener::has_curve() const {
  return curve_ && curve_->law != StrengthCurve::Law::steps;
}

std::optional<Duration> when_strong(const Job& job, const PourPlan& pour, Pressure strength) {
  return Hardener(job, pour, start_of_pour(job)).when_strong(strength);
}

HardeningPlan plan_hardening(const Job& job, const std::vector<SlabPlan>& slabs,
                             const PourPlan& pour, Duration start_of_pour) {
  const AirCycle air = air_cycle(job.site);
  const Hardener hardener(job, pour, start_of_pour);
  HardeningPlan plan;
  plan.coldest = air.coldest();
  plan.warmest = air.warmest();
  plan.mean = air.mean();
  plan.slowing = hardener.slowing();
  const bool props = std::any_of(slabs.begin(), slabs.end(),
                                 [](const SlabPlan& slab) { return slab.forms.props > 0; });
  plan.milestones = milestones(job, hardener, {props, plan.coldest <= datum_temperature});
  if (!hardener.curve()) return plan;
  plan.curve = law_name(*hardener.curve());
  if (!hardener.has_curve()) {
    plan.strength = given(hardener, pour);
    return plan;
  }
  plan.ultimate = hardener.curve()->ultimate;
  plan.strength = drawn(hardener, pour);
  plan.expected = expected(hardener, pour, plan);
  return plan;
}

}  // namespace strikeoff
