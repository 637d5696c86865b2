// SPDX-License-Identifier: MIT
// Laws of the joints of a pour over 300 made-up jobs; a plain run takes every tenth of them,
// `ctest -L deep` all. Nothing here knows how the program cuts a slab.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "strikeoff/planner.h"
#include "support/deep.h"
#include "support/plan_parts.h"
#include "support/random_pours.h"
#include "support/read.h"
#include "support/ribbons.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Plan plan_of(const RandomPour& pour, Writing writing = Writing::mm) {
  return make_plan(job_of(text_of(pour, writing)));
}

/// One line of what a law compares.
std::string verdict(const Plan& plan) {
  return fmt::format("gap {}, wait {:.6f} min, cold-joint {}, own-age {}", plan.pour.gap,
                     in_minutes(plan.pour.edge_wait_max),
                     static_cast<int>(level_of(plan, "cold-joint")),
                     static_cast<int>(level_of(plan, "own-age")));
}

/// Two verdicts with waits alike to 1e-6 min are the same.
void check_same(const Plan& plan, const Plan& other, const std::string& what) {
  const double apart =
      std::abs(in_minutes(plan.pour.edge_wait_max) - in_minutes(other.pour.edge_wait_max));
  const bool same = plan.pour.gap == other.pour.gap && apart <= 1e-6 &&
                    level_of(plan, "cold-joint") == level_of(other, "cold-joint") &&
                    level_of(plan, "own-age") == level_of(other, "own-age");
  const std::string as_written = verdict(plan), changed = what + ": " + verdict(other);
  CAPTURE(as_written, changed);
  CHECK(same);
}

double length_mm(const Polygon& line) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i)
    sum += edge_length({line[i], line[i + 1]}, 0).in_mm();
  return sum;
}

/// The width of the arm a joint crosses: of the arms its middle lies in the wider, for where two
/// meet it may cross either.
double arm_width_mm(const PourSlab& slab, const Polygon& line) {
  const double x = (line.front().x + line.back().x).in_mm() / 2 / 1.5875;
  const double y = (line.front().y + line.back().y).in_mm() / 2 / 1.5875;
  double width = 0;
  for (const PourBox& arm : slab.arms) {
    const bool is_in = x >= arm.x - 1 && x <= arm.x + arm.length + 1 && y >= arm.y - 1 &&
                       y <= arm.y + arm.depth + 1;
    if (is_in) width = std::max(width, std::min(arm.length, arm.depth) * 1.5875);
  }
  return width;
}

/// True when both ends of the line lie on the slab's edge: it crosses the slab, and is not a joint
/// of a cell in a row.
bool crosses(const SlabPlan& slab, const Polygon& line) {
  const Length near = mm(0.5);
  return distance(line.front(), slab.outline) < near && distance(line.back(), slab.outline) < near;
}

}  // namespace

TEST_CASE("no pour is stopped for a cold joint that fits in full-width ribbons", "[joints][deep]") {
  int promised = 0;
  for (const int number : deep_numbers(jobs_for_laws)) {
    const RandomPour pour = numbered_pour(number);
    const std::string text = text_of(pour);
    CAPTURE(number, text);
    const Plan plan = plan_of(pour);
    REQUIRE(plan.pour.usable);
    const double usable = in_minutes(*plan.pour.usable);
    const auto narrow = ribbon_pour(pour, plan, 0);
    if (!narrow || narrow->wait_min > usable + 1e-9) continue;
    ++promised;
    const std::string verdict_of_plan = verdict(plan);
    CAPTURE(verdict_of_plan, usable, narrow->gap, narrow->wait_min);
    CHECK(level_of(plan, "cold-joint") != Level::stop);
    CHECK(level_of(plan, "own-age") != Level::stop);
    // More batches apart only for the comfort of wider cells, with a tenth of the time to spare.
    const bool spare = in_minutes(plan.pour.edge_wait_max) <= 0.9 * usable + 1e-9;
    CHECK((plan.pour.gap <= narrow->gap || spare));
    double least = 0.15;
    for (const PourSlab& slab : pour.slabs) {
      least = std::max(least, 2 * slab.thickness * metres_in_sixteenth);
    }
    const bool is_comfortable = ribbon_pour(pour, plan, least).has_value();
    CAPTURE(is_comfortable);
    // Past the junction of a T an arm may begin three batches after the first that touches its
    // mouth.
    const bool any_tee =
        std::any_of(pour.slabs.begin(), pour.slabs.end(),
                    [](const PourSlab& slab) { return slab.shape == PourShape::tee; });
    if (is_comfortable) CHECK(plan.pour.gap <= narrow->gap + (any_tee ? 1 : 0));
  }
  CHECK(promised >= static_cast<int>(deep_numbers(jobs_for_laws).size()) / 3);
}

TEST_CASE("several slabs have no larger gap than one of them alone", "[joints][deep]") {
  for (const int number : deep_numbers(jobs_for_laws)) {
    const RandomPour pour = numbered_pour(number);
    if (pour.slabs.size() == 1) continue;
    const std::string text = text_of(pour);
    CAPTURE(number, text);
    int largest = 1;  // a batch that ends one slab and begins the next has two neighbours
    for (std::size_t k = 0; k < pour.slabs.size(); ++k) {
      largest = std::max(largest, plan_of(alone(pour, k)).pour.gap);
    }
    CHECK(plan_of(pour).pour.gap <= largest);
  }
}

TEST_CASE("how a job is turned, ordered or written changes no verdict on its joints",
          "[joints][deep]") {
  for (const int number : deep_numbers(jobs_for_laws)) {
    const RandomPour pour = numbered_pour(number);
    const std::string text = text_of(pour);
    CAPTURE(number, text);
    const Plan plan = plan_of(pour);
    check_same(plan, plan_of(mirrored(pour)), "mirrored");
    check_same(plan, plan_of(turned(pour)), "a quarter turn");
    check_same(plan, plan_of(pour, Writing::inches), "in inches");
    if (pour.slabs.size() > 1) check_same(plan, plan_of(backwards(pour)), "slabs backwards");
  }
}

TEST_CASE("joints of L, U and T are about as long as their arm is wide", "[joints][deep]") {
  double lengths = 0, widths = 0;
  int joints = 0, too_long = 0;
  for (const int number : deep_numbers(jobs_for_laws)) {
    const RandomPour pour = numbered_pour(number);
    const std::string text = text_of(pour);
    CAPTURE(number, text);
    const Plan plan = plan_of(pour);
    for (const PourSlab& slab : pour.slabs) {
      if (slab.arms.empty()) continue;
      // A T needs two fronts, up to three batches apart; where there is no time for that, longer
      // fronts that pass its stem are the way to pour it at all.
      const Duration fronts = plan.pour.takt * 3 + plan.pour.lead;
      if (slab.shape == PourShape::tee && plan.pour.usable && fronts > *plan.pour.usable) continue;
      for (const Joint& joint : plan.pour.joints) {
        if (joint.slab != slab.name || joint.line.empty()) continue;
        if (!crosses(slab_of(plan, slab.name), joint.line)) continue;
        const double length = length_mm(joint.line), width = arm_width_mm(slab, joint.line);
        CAPTURE(joint.slab, joint.first, joint.second, length, width);
        ++joints;
        if (length > 1.6 * width + 0.1) ++too_long;
        lengths += length;
        widths += width;
      }
    }
  }
  REQUIRE(widths > 0);
  CHECK(lengths / widths <= 1.06);
  // A few slant across a junction.
  CHECK(too_long <= joints / 200);
}
