// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

#include "basis/basis.h"
#include "checks/checks.h"
#include "checks/trowel_check.h"
#include "core/format.h"
#include "pour/crew.h"
#include "pour/finishing.h"
#include "pour/joint_corners.h"
#include "pour/zones.h"
#include "pour/setting.h"

namespace strikeoff {
namespace {

Check timed(std::string code, std::string title, Duration value) {
  Check check;
  check.code = std::move(code);
  check.title = std::move(title);
  check.value = in_minutes(value);
  check.unit = "min";
  return check;
}

/// What working time leaves for a joint once the margin asked for is off.
std::optional<Duration> allowed(const Job& job, const PourPlan& pour) {
  if (!pour.usable) return std::nullopt;
  return *pour.usable - job.limits.margin;
}

const char* const measure_first =
    "The bag does not say how long it can be worked: do the bucket test and give working_time "
    "before you pour.";

/// Sets the limit; without a working time there is none, and the check is a caution in these words.
bool set_limit(Check& check, std::optional<Duration> limit, const char* unknown) {
  if (limit) {
    check.limit = in_minutes(*limit);
    return true;
  }
  check.level = Level::caution;
  check.title = unknown;
  check.advice = measure_first;
  return false;
}

/// "mix 3 min, tip out 30 s, carry 30 s, place 3 min": what a batch ages by, step by step.
std::string lead_parts(const Times& times) {
  return fmt::format("mix {}, tip out {}, carry {}, place {}", show(times.mix.usual),
                     show(times.discharge.usual), show(times.carry.usual), show(times.place.usual));
}

/// True when a retarder could still be added, or more of the one in use.
bool retarder_is_left(const Job& job, const Plan& plan) {
  return std::none_of(plan.mix.doses.begin(), plan.mix.doses.end(), [&](const DoseTotal& dose) {
    if (dose.kind != AdditiveKind::retarder) return false;
    const auto used = std::find_if(job.additives.begin(), job.additives.end(),
                                   [&](const Additive& a) { return a.name == dose.name; });
    return used != job.additives.end() && used->most && dose.per_bag >= *used->most - 1e-9;
  });
}

/// What makes the mix last longer.
std::string longer_life(const Job& job, const Plan& plan) {
  return retarder_is_left(job, plan)
             ? "Colder water or a retarder within its label makes the mix last longer."
             : "Colder water makes the mix last longer; the retarder is at its most.";
}

std::string half_bags(const Job& job) {
  return job.crew.bags_per_batch >= 1 ? ", or half-bag batches" : "";
}

/// What a time must come down to, to a tenth of a minute and never rounded up.
std::string at_most(Duration time) {
  return show(minutes(std::floor(in_minutes(time) * 10 + 1e-6) / 10));
}

/// What a joint's wait is made of, which part weighs most and what either must come down to.
std::string shorter_wait(const Job& job, const Plan& plan, Duration limit) {
  const PourPlan& pour = plan.pour;
  const Duration beats = pour.takt * pour.gap;
  std::string advice =
      fmt::format("{} too long: {} x {} from batch to batch and {} from water to placed ({}). ",
                  show(pour.edge_wait_max - limit), pour.gap, show(pour.takt), show(pour.lead),
                  lead_parts(job.crew.times));
  const Duration room_for_beats = limit - pour.lead, room_for_lead = limit - beats;
  const bool lead_weighs = pour.lead >= beats;
  const std::string lead_way = fmt::format("bring {} down to {} (mix nearer, quicker placing{})",
                                           lead_weighs ? "it" : "the time from water to placed",
                                           at_most(room_for_lead), half_bags(job));
  const std::string beat_way = fmt::format("start a batch every {} (speed up {})",
                                           at_most(room_for_beats / pour.gap), pour.bottleneck);
  advice += lead_weighs ? "The time from water to placed weighs most: "
                        : "The time from batch to batch weighs most: ";
  const bool beat_can = room_for_beats > Duration{}, lead_can = room_for_lead > Duration{};
  if (lead_can && beat_can) {
    advice += lead_weighs ? lead_way + "; or " + beat_way : beat_way + "; or " + lead_way;
  } else if (lead_can) {
    advice += lead_way + "; a faster beat alone cannot help";
  } else if (beat_can) {
    advice += beat_way + "; a shorter time from water to placed alone cannot help";
  } else {
    advice += "either alone is over the limit, so shorten both";
  }
  return advice + ". " + longer_life(job, plan);
}

/// The first remedy that works alone.
std::string easiest(const PourPlan& pour) {
  if (pour.remedies.empty() || !pour.remedies.front().works) return "";
  return pour.remedies.front().what + " Or: ";
}

Check cold_joint(const Job& job, const Plan& plan) {
  const PourPlan& pour = plan.pour;
  Check check =
      timed("cold-joint", "Every batch meets the next while it still knits", pour.edge_wait_max);
  if (pour.batches == 1 || pour.gap == 0) {
    check.title = pour.batches == 1 ? "One batch: no joints" : "No two batches touch: no joints";
    check.value = std::nullopt;
    check.unit.clear();
    check.basis = basis("no-joint");
    return check;
  }
  const std::string wait = pour.chain.empty() ? fmt::format("{} x takt {} + lead {}", pour.gap,
                                                            show(pour.takt), show(pour.lead))
                                              : pour.chain;
  check.basis = basis("cold-joint", wait);
  const auto limit = allowed(job, pour);
  if (!set_limit(check, limit, "Whether the joints knit is not known")) return check;
  if (pour.edge_wait_max > *limit + rounding) {
    check.level = Level::stop;
    check.title = "A batch waits too long for its neighbour: cold joint";
    check.advice = easiest(pour) + shorter_wait(job, plan, *limit);
  }
  return check;
}

/// Joints that end where the slab cracks first; nothing for slabs without such a corner.
std::optional<Check> joint_at_corner(const Job& job, const Plan& plan) {
  Check check;
  check.code = "joint-at-corner";
  check.title = "No joint ends at a corner where the slab cracks first";
  check.basis = basis("joint-at-corner");
  std::optional<Length> nearest;
  const Joint* worst = nullptr;
  Length clearance;
  bool any_corner = false;
  std::set<std::pair<int, int>> joints;
  for (const SlabPlan& slab : plan.slabs) {
    const std::vector<Point> corners = crack_corners(slab);
    if (corners.empty()) continue;
    any_corner = true;
    for (const Joint& joint : plan.pour.joints) {
      if (joint.slab != slab.name) continue;
      const auto away = near_corner(joint.line, corners, corner_clearance(slab));
      if (!away) continue;
      joints.emplace(joint.first, joint.second);
      if (nearest && *nearest <= *away) continue;
      nearest = away;
      worst = &joint;
      clearance = corner_clearance(slab);
    }
  }
  if (!any_corner || plan.pour.joints.empty()) return std::nullopt;
  if (!worst) return check;
  check.level = Level::caution;
  check.about = worst->slab;
  check.value = nearest->in_mm();
  check.limit = clearance.in_mm();
  check.unit = "mm";
  check.title = fmt::format(
      "{} at a corner where the slab cracks first",
      joints.size() == 1 ? "A joint ends" : fmt::format("{} joints end", joints.size()));
  check.advice = fmt::format(
      "The joint of batches {} and {} ends {} from a corner that turns into the slab; {} is good. "
      "Fill batch {} round the corner to {} past it and let the next batch make up for it, rod "
      "across the joint, and lay mesh or a bar aslant across the corner.",
      worst->first, worst->second, show(*nearest, job.units), show(clearance, job.units),
      worst->first, show(clearance, job.units));
  return check;
}

/// How narrow the narrowest ribbon is, whole batches and what they leave over alike; nothing for one
/// batch, and where it is wider than the slab is thick.
std::optional<Check> ribbon(const Job& job, const Plan& plan) {
  if (!plan.pour.narrowest) return std::nullopt;
  Length thickest;
  for (const SlabPlan& slab : plan.slabs) thickest = std::max(thickest, slab.edge_thickness);
  const Length narrowest = *plan.pour.narrowest, must = ribbon_rule(job).must;
  if (narrowest >= thickest) return std::nullopt;
  Check check;
  check.code = "ribbon";
  check.basis = basis("ribbon");
  check.level = Level::caution;
  check.value = narrowest.in_mm();
  check.limit = thickest.in_mm();
  check.unit = "mm";
  check.title = "A batch is a ribbon narrower than the slab is thick";
  check.advice = fmt::format(
      "It is {} wide, and {} deep: lay it along the edge before it in one go, from end to end, chop "
      "it into that edge with a trowel and rod along the joint.",
      show(narrowest, job.units), show(thickest, job.units));
  if (narrowest < must * (1 - 1e-6)) {
    check.limit = must.in_mm();
    const bool whole = std::any_of(plan.batches.begin(), plan.batches.end(), [&](const Batch& b) {
      return b.advance < must * (1 - 1e-6);
    });
    if (whole) check.level = Level::stop;
    check.title = "A batch is too narrow a ribbon to be worked in";
    check.advice = fmt::format(
        "It is {} wide, and {} is the least (40 mm, or three grains): mix more bags in a batch, or "
        "keep less of a batch for another slab.",
        show(narrowest, job.units), show(must, job.units));
  }
  return check;
}

Check own_age(const Job& job, const Plan& plan) {
  const PourPlan& pour = plan.pour;
  Check check = timed("own-age", "Each batch is placed while it can be worked", pour.lead);
  check.basis = basis("own-age");
  const auto limit = allowed(job, pour);
  if (!set_limit(check, limit, "Whether a batch stays workable until it is placed is not known"))
    return check;
  if (pour.lead > *limit + rounding) {
    check.level = Level::stop;
    check.title = "A batch is stiff before it is placed";
    check.advice = fmt::format(
        "{} too long from water to placed ({}): bring it down to {} (shorter mixing, mix nearer, "
        "quicker placing{}); more people or mixers do not help. {}",
        show(pour.lead - *limit), lead_parts(job.crew.times), at_most(*limit), half_bags(job),
        longer_life(job, plan));
  }
  return check;
}

/// Nobody has the minutes between two batches: what it takes and what there is.
void ask_for_striker(const Job& job, const Plan& plan, Check& check) {
  const auto spare = strike_off_spare(job.crew, plan.pour.takt);
  const Duration needed = strike_off_time(plan.batches);
  if (!spare || *spare + rounding >= needed) return;
  check.level = Level::caution;
  check.title = "Nobody is free to strike off while the pour runs";
  check.advice += fmt::format(
      " A zone takes about {} (1 min per m2, 0.1 min per ft2, an assumption), and whoever strikes "
      "off has {} between two batches: find one more person, or start batches further apart.",
      show(needed), show(std::max(*spare, Duration{})));
}

Check strike_off(const Job& job, const Plan& plan) {
  const PourPlan& pour = plan.pour;
  // Struck one zone (or row of zones) behind the front, or the whole top once at the end.
  const double behind = std::min(std::max(1, pour.gap), std::max(0, pour.batches - 1));
  const Duration progressive = pour.takt * behind + pour.lead;
  const bool at_end = strikes_off_at_end(pour);
  Check check = timed("strike-off",
                      at_end ? "The whole top can be struck off at the end"
                             : "Strike off one zone behind the front, not at the end",
                      at_end ? pour.end : progressive);
  check.basis = basis("strike-off");
  if (!set_limit(check, pour.usable,
                 "Strike off right behind the front: how long the mix lasts is not known")) {
    return check;
  }
  if (at_end && pour.end <= *pour.usable + rounding) return check;
  check.advice = fmt::format(
      "Pull the straightedge over each zone as soon as the next is placed; "
      "the whole top at the end would be {} old.",
      show(pour.end));
  if (progressive > *pour.usable + rounding) {
    check.level = Level::stop;
    check.title = "The top sets before it can be struck off";
    check.advice = fmt::format(
        "{} too late even right behind the front: shorten the time from batch to batch or from "
        "water to placed. {}",
        show(progressive - *pour.usable), longer_life(job, plan));
    return check;
  }
  if (pour.batches > 1) ask_for_striker(job, plan, check);
  return check;
}

Check pour_end(Duration within, const PourPlan& pour) {
  Check check = timed("pour-end", "The pour ends in the time you have", pour.end);
  check.limit = in_minutes(within);
  check.basis = basis("pour-end-check");
  if (pour.end > within + rounding) {
    check.level = Level::stop;
    check.title = "The pour takes longer than you have";
    check.advice = fmt::format(
        "{} too long: speed up {}, or mix larger batches if the joints "
        "allow it.",
        show(pour.end - within), pour.bottleneck);
  }
  return check;
}

std::string missing_to_pour(const Crew& crew) {
  const std::pair<Role, const char*> roles[] = {
      {Role::mix, "mixes"}, {Role::carry, "carries"}, {Role::place, "places"}};
  std::string missing;
  for (const auto& [role, verb] : roles) {
    if (holders(crew.people, role) == 0)
      missing += (missing.empty() ? "nobody " : ", nobody ") + std::string(verb);
  }
  return missing;
}

Check crew_check(const Job& job, const Plan& plan) {
  Check check;
  check.code = "crew";
  check.title = "Every job of the pour has somebody";
  check.basis = basis("crew");
  check.advice = plan.pour.smallest_crew;
  if (const std::string missing = missing_to_pour(job.crew); !missing.empty()) {
    check.level = Level::stop;
    check.title = "The crew is not complete: " + missing;
    check.advice = "Give the missing work to somebody, or find one more person.";
  } else if (holders(job.crew.people, Role::finish) == 0) {
    check.level = Level::caution;
    check.title = "Nobody is named to trowel the top";
    check.advice =
        "Decide who does: whoever is free can, once the last batch is placed. Add \"finish\" to "
        "that person's roles.";
  }
  return check;
}

}  // namespace

std::vector<Check> pour_checks(const Job& job, const Plan& plan) {
  std::vector<Check> checks{cold_joint(job, plan)};
  if (auto corners = joint_at_corner(job, plan)) checks.push_back(std::move(*corners));
  if (auto narrow = ribbon(job, plan)) checks.push_back(std::move(*narrow));
  checks.push_back(own_age(job, plan));
  checks.push_back(strike_off(job, plan));
  checks.push_back(trowelling(job, plan));
  if (job.crew.pour_within) checks.push_back(pour_end(*job.crew.pour_within, plan.pour));
  checks.push_back(crew_check(job, plan));
  return checks;
}

}  // namespace strikeoff
