// SPDX-License-Identifier: MIT
#pragma once

#include "core/json.h"
#include "strikeoff/plan.h"

namespace strikeoff::json {

// The parts of the plan file. Keys stand in a fixed order; quantities are SI with the unit in the
// key; what is not known has no key.

/// The number, never -0. Throws std::logic_error for NaN and infinity: a plan holds none.
[[nodiscard]] double number(double value);

/// [[x,y],…] in millimetres.
[[nodiscard]] Json points_mm(const Polygon& polygon);

[[nodiscard]] Json slab(const SlabPlan& slab);
[[nodiscard]] Json loads(const SlabLoads& loads);
[[nodiscard]] Json steel(const SteelPlan& steel);
[[nodiscard]] Json control_joints(const ControlJoints& joints);
[[nodiscard]] Json mix(const MixPlan& mix);
[[nodiscard]] Json batch(const Batch& batch);
[[nodiscard]] Json pour(const PourPlan& pour);
[[nodiscard]] Json site(const SitePlan& site);
[[nodiscard]] Json hardening(const HardeningPlan& plan);
[[nodiscard]] Json handling(const HandlingPlan& handling);
[[nodiscard]] Json finish(const FinishPlan& finish);
[[nodiscard]] Json cut_list(const CutList& cut_list);
[[nodiscard]] Json material(const Material& material);
[[nodiscard]] Json cost(const Cost& cost);
[[nodiscard]] Json task(const Task& task);
[[nodiscard]] Json check(const Check& check);

/// An array of what `one` makes of each item.
template <class Item, class One>
[[nodiscard]] Json array(const std::vector<Item>& items, One one) {
  Json::List result;
  for (const Item& item : items) result.push_back(one(item));
  return result;
}

}  // namespace strikeoff::json
