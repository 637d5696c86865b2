// SPDX-License-Identifier: MIT
#pragma once

#include <utility>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"
#include "support/slabs.h"

namespace strikeoff::test {

/// A mix, a crew and a site without surprises: 48 lb bags of 0.44 ft3 at 3.7 qt that can be
/// worked for 20 min at 70 F; everything at 70 F, so that temperature changes nothing. Invented.
inline Job a_pour_job() {
  Job job;
  job.mix.name = "test mix";
  job.mix.bag = pounds(48);
  job.mix.yield = cubic_feet(0.44);
  job.mix.yield_water = quarts(3.7);
  job.mix.water_least = quarts(3.2);
  job.mix.water_most = quarts(4.2);
  job.mix.working_time = minutes(20);
  job.mix.at = Temperature::fahrenheit(70);
  job.site.air = job.site.bag_temperature = job.site.water_temperature = job.mix.at;
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}, {Role::finish}};
  const auto both = [](double value) { return UsualBad{minutes(value), minutes(value)}; };
  job.crew.times = {both(1), both(3), both(0.5), both(0.5), both(0.5), both(0.5), both(3)};
  return job;
}

/// A flat slab without a panel.
inline SlabPlan a_slab(Polygon outline, Length thickness,
                       const std::vector<Rectangle>& openings = {}) {
  SlabPlan slab;
  slab.name = "slab";
  slab.outline = std::move(outline);
  slab.edge = outline_of(slab.outline);
  slab.perimeter = perimeter(slab.outline);
  for (const Rectangle& box : openings) slab.openings.push_back({outline_of(box, {}), box});
  slab.area = slab.top_area = signed_area(slab.outline);
  for (const OpeningPlan& opening : slab.openings) slab.top_area -= area(opening.edge);
  slab.edge_thickness = thickness;
  slab.concrete = slab.top_area * thickness;
  return slab;
}

inline SlabPlan a_slab(Length length, Length depth, Length thickness,
                       const std::vector<Rectangle>& openings = {}) {
  return a_slab(corners_of({{}, length, depth}), thickness, openings);
}

/// The job's slabs that have these shapes.
inline std::vector<Slab> slabs_of(const std::vector<SlabPlan>& shapes) {
  std::vector<Slab> slabs;
  for (const SlabPlan& shape : shapes) {
    Slab slab = slab_on(shape.outline, {}, shape.edge_thickness);
    slab.name = shape.name;
    const Point corner = bounding_box(shape.outline).at;
    for (const OpeningPlan& opening : shape.openings) {
      Rectangle at = opening.box;
      at.at = {at.at.x - corner.x, at.at.y - corner.y};
      slab.openings.push_back({"opening", at});
    }
    slabs.push_back(slab);
  }
  return slabs;
}

inline Additive a_retarder() {
  Additive retarder;
  retarder.name = "retarder";
  retarder.dose_size = kilograms(0.025);
  retarder.step = 0.5;
  retarder.most = 5;
  retarder.extends = minutes(15);
  return retarder;
}

}  // namespace strikeoff::test
