// SPDX-License-Identifier: MIT
#include "loads/handling.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "mix/mix.h"
#include "pour/crew.h"

namespace strikeoff {
namespace {

// Hands 12 in before the ankles and 6 in up on a bag that lies on the floor, 30 in up to a mixer's
// lip at 36 in (assumption; the lift of NIOSH's own example of bags on the floor, from memory).
constexpr Length bag_out = Length::inches(12);
constexpr Length bag_from = Length::inches(6);
constexpr Length bag_by = Length::inches(30);

// A bucket of 5 gal or 20 L, 300 mm wide and 380 mm high (assumption), held by its rim. Hands
// before the ankles: 20 cm and half the load's width (manual of the equation, from memory).
constexpr Length bucket_height = Length::mm(380);
constexpr Length bucket_out = Length::mm(200) + Length::mm(300) * 0.5;
constexpr Length knuckles = Length::mm(750);     // where hands carry a load (same manual)
constexpr Length form_height = Length::mm(900);  // of a base (assumption: a bench or counter)

constexpr int most_parts = 20;

Lifting lifting_of(const LiftPlan& lift) {
  return {lift.out, lift.from, lift.by, 0, lift.per_minute, lift.lasting, Coupling::fair};
}

/// So often over the pour. What takes less than 15 min counts as spread over 15 min (manual of the
/// equation, from memory).
double per_minute(double lifts, Duration lasting) {
  return lifts / std::max(15.0, in_minutes(lasting));
}

std::optional<int> parts_of(const LiftPlan& lift, const Limits& limits) {
  LiftPlan part = lift;
  for (int parts = 1; parts <= most_parts; ++parts) {
    part.per_minute = lift.per_minute * parts;
    part.recommended = recommended_weight(lifting_of(part));
    if (lift.mass / parts <= lift_limit(part, limits)) return parts;
  }
  return std::nullopt;
}

void weigh(const Limits& limits, LiftPlan& lift) {
  const LiftMultipliers factors = lift_multipliers(lifting_of(lift));
  lift.horizontal = factors.horizontal;
  lift.vertical = factors.vertical;
  lift.distance = factors.distance;
  lift.frequency = factors.frequency;
  lift.coupling = factors.coupling;
  lift.recommended = recommended_weight(lifting_of(lift));
  if (lift.recommended > Mass{}) lift.index = lift.mass / lift.recommended;
  lift.parts = parts_of(lift, limits);
}

double bags_of(const Plan& plan) {
  double bags = 0;
  for (const Batch& batch : plan.batches) bags += batch.bags;
  return bags;
}

int sharing(const Job& job, Role role) {
  return std::max(1, holders(job.crew.people, role));
}

/// Who mixes lifts every bag; of a batch of less than a bag, one for each that is opened.
LiftPlan bag_lift(const Job& job, const Plan& plan) {
  LiftPlan lift;
  lift.name = "bag";
  lift.mass = job.mix.bag;
  lift.sharing = sharing(job, Role::mix);
  lift.out = bag_out;
  lift.from = bag_from;
  lift.by = bag_by;
  lift.lasting = plan.pour.end;
  lift.per_minute = per_minute(std::ceil(bags_of(plan) - 1e-9) / lift.sharing, lift.lasting);
  weigh(job.limits, lift);
  return lift;
}

Mass mass_of(const Batch& batch) {
  return batch.dry + batch.water * water_density + batch.ice;
}

/// Those who carry take an equal part of each batch.
LiftPlan batch_lift(const Job& job, const Plan& plan) {
  LiftPlan lift;
  lift.name = "batch";
  lift.sharing = sharing(job, Role::carry);
  for (const Batch& batch : plan.batches) {
    lift.mass = std::max(lift.mass, mass_of(batch) / lift.sharing);
  }
  const bool on_base = std::any_of(job.slabs.begin(), job.slabs.end(),
                                   [](const Slab& slab) { return slab.support == Support::base; });
  lift.out = bucket_out;
  lift.from = bucket_height;
  // The bucket's foot over the form's edge; else as high as hands carry it.
  lift.by = on_base ? form_height : knuckles - bucket_height;
  lift.lasting = plan.pour.end;
  lift.per_minute = per_minute(static_cast<double>(plan.batches.size()), lift.lasting);
  weigh(job.limits, lift);
  return lift;
}

std::vector<PersonLoad> people_of(const Job& job, const Plan& plan) {
  Mass dry;
  Mass water;
  for (const Batch& batch : plan.batches) {
    dry += batch.dry;
    water += batch.water * water_density + batch.ice;
  }
  const Mass brought = job.mix.bag * (plan.mix.bags + plan.mix.spare_bags);
  std::vector<PersonLoad> people;
  for (const std::vector<Role>& roles : job.crew.people) {
    PersonLoad person;
    person.name = fmt::format("person {}", people.size() + 1);
    person.bags_in = brought / static_cast<double>(job.crew.people.size());
    if (has(roles, Role::mix)) {
      person.to_mixer = dry / sharing(job, Role::mix);
      person.water = water / sharing(job, Role::mix);
    }
    if (has(roles, Role::carry)) person.batches = (dry + water) / sharing(job, Role::carry);
    person.mass = person.bags_in + person.to_mixer + person.water + person.batches;
    people.push_back(std::move(person));
  }
  return people;
}

}  // namespace

HandlingPlan plan_handling(const Job& job, const Plan& plan) {
  HandlingPlan handling;
  if (!plan.batches.empty()) handling.lifts = {bag_lift(job, plan), batch_lift(job, plan)};
  handling.people = people_of(job, plan);
  return handling;
}

Mass recommended_from_waist(const LiftPlan& bag) {
  Lifting lift = lifting_of(bag);
  lift.from = knuckles;
  lift.by = Length::mm(250);
  return recommended_weight(lift);
}

Mass lift_limit(const LiftPlan& lift, const Limits& limits) {
  return std::min(lift.recommended, limits.lift.value_or(lift.recommended));
}

}  // namespace strikeoff
