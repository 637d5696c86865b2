// SPDX-License-Identifier: MIT
// Where the zones and joints of made-up pours lie, with GEOS as the oracle. Jobs and how many of
// them are run as for the laws of joints.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "strikeoff/planner.h"
#include "support/deep.h"
#include "support/geos.h"
#include "support/plan_parts.h"
#include "support/random_pours.h"
#include "support/read.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Polygon drawn(const Outline& edge) {
  return chords(edge, drawn_within);
}

GeosRegion region_of(const SlabPlan& slab) {
  std::vector<Polygon> holes;
  for (const OpeningPlan& opening : slab.openings) holes.push_back(drawn(opening.edge));
  return GeosRegion(slab.outline, holes);
}

/// The zones of a plan in one lift of one slab, by batch.
std::map<int, std::vector<Polygon>> zones_in(const Plan& plan, const SlabPlan& slab, int lift) {
  std::map<int, std::vector<Polygon>> zones;
  for (const Batch& batch : plan.batches) {
    for (const Zone& zone : batch.zones) {
      if (zone.slab == slab.name && zone.lift == lift) zones[batch.number].push_back(zone.outline);
    }
  }
  return zones;
}

int lifts_of(const Plan& plan, const SlabPlan& slab) {
  int lifts = 1;
  for (const Batch& batch : plan.batches) {
    for (const Zone& zone : batch.zones) {
      if (zone.slab == slab.name) lifts = std::max(lifts, zone.lift);
    }
  }
  return lifts;
}

/// What the edges of two regions have in common: what the one, grown by a little, takes of the
/// other, over how much it was grown.
Length contact(const GeosRegion& a, const GeosRegion& b) {
  const Length little = mm(0.1);
  return Length::m(a.grown_mitred(little).common(b).area().si() / little.in_m());
}

bool listed(const Plan& plan, const SlabPlan& slab, int first, int second) {
  return std::any_of(plan.pour.joints.begin(), plan.pour.joints.end(), [&](const Joint& joint) {
    return joint.slab == slab.name && joint.first == std::min(first, second) &&
           joint.second == std::max(first, second);
  });
}

/// So far along a side of a polygon from one of its corners, and so far in.
Point on_side(const Polygon& polygon, std::size_t side, bool from_start, const JointEnd& end) {
  const Point &a = polygon[side], &b = polygon[(side + 1) % polygon.size()];
  const Point on = from_start ? towards(a, b, end.away) : towards(b, a, end.away);
  const double x = (b.x - a.x).in_mm(), y = (b.y - a.y).in_mm(), length = std::hypot(x, y);
  return {on.x - end.inward * (y / length), on.y + end.inward * (x / length)};
}

/// Finds the side of this name, and measures from the corner it has in common with the other.
std::optional<Point> taped(const Polygon& polygon, const std::vector<std::string>& names,
                           const JointEnd& end) {
  const std::size_t n = names.size();
  for (std::size_t k = 0; k < n; ++k) {
    if (names[k] != end.on) continue;
    if (names[(k + n - 1) % n] == end.from) return on_side(polygon, k, true, end);
    if (names[(k + 1) % n] == end.from) return on_side(polygon, k, false, end);
  }
  return std::nullopt;
}

/// The place a joint's end names: "the front" or "edge 3" of the slab, or "hole 1's left".
std::optional<Point> taped(const SlabPlan& slab, const JointEnd& end) {
  std::vector<std::string> names;
  for (const SidePlan& side : slab.sides) {
    names.push_back(side.name.rfind("edge ", 0) == 0 ? side.name : "the " + side.name);
  }
  if (const auto found = taped(slab.sharp, names, end)) return found;
  for (const OpeningPlan& opening : slab.openings) {
    names.clear();
    for (const char* side : {"front", "right", "back", "left"}) {
      names.push_back(opening.name + "'s " + side);
    }
    if (const auto found = taped(corners_of(opening.box), names, end)) return found;
  }
  return std::nullopt;
}

double apart_mm(const Point& a, const Point& b) {
  return std::hypot((a.x - b.x).in_mm(), (a.y - b.y).in_mm());
}

/// The straight lines that ends of joints are measured along, before corners were rounded.
std::vector<Polygon> sharp_edges(const SlabPlan& slab) {
  std::vector<Polygon> edges{slab.sharp};
  for (const OpeningPlan& opening : slab.openings) edges.push_back(corners_of(opening.box));
  return edges;
}

bool lies_on(const std::vector<Polygon>& edges, const Point& p, Length within) {
  return std::any_of(edges.begin(), edges.end(),
                     [&](const Polygon& edge) { return distance(p, edge) < within; });
}

/// The slab's edge and its openings' as they are formed.
std::vector<Polygon> formed_edges(const SlabPlan& slab) {
  std::vector<Polygon> edges{slab.outline};
  for (const OpeningPlan& opening : slab.openings) edges.push_back(drawn(opening.edge));
  return edges;
}

template <class Law>
void for_each_slab(const Law& law) {
  for (const int number : deep_numbers(jobs_for_laws)) {
    const RandomPour pour = numbered_pour(number);
    const std::string text = text_of(pour);
    CAPTURE(number, text);
    const Plan plan = make_plan(job_of(text));
    for (const PourSlab& slab : pour.slabs) {
      CAPTURE(slab.name);
      law(slab, plan, slab_of(plan, slab.name));
    }
  }
}

}  // namespace

TEST_CASE("the zones of every lift tile the slab", "[joints][deep]") {
  for_each_slab([](const PourSlab&, const Plan& plan, const SlabPlan& slab) {
    const GeosRegion region = region_of(slab);
    const double all = region.area().si();
    CHECK(slab.top_area.si() == Approx(all).epsilon(1e-3));
    for (int lift = 1; lift <= lifts_of(plan, slab); ++lift) {
      CAPTURE(lift);
      std::vector<Polygon> zones;
      double sum = 0;
      for (const auto& [batch, parts] : zones_in(plan, slab, lift)) {
        for (const Polygon& part : parts) {
          CAPTURE(batch);
          CHECK(GeosRegion(part).is_valid());
          CHECK(signed_area(part).si() > 0);
          sum += signed_area(part).si();
          zones.push_back(part);
        }
      }
      const GeosRegion covered = GeosRegion::union_of(zones);
      CHECK(sum == Approx(all).epsilon(1e-4));
      CHECK(covered.area().si() == Approx(all).epsilon(1e-4));
      CHECK(covered.common(region).area().si() == Approx(all).epsilon(1e-4));
    }
  });
}

TEST_CASE("the zones of a batch hold its share of the pour", "[joints][deep]") {
  for (const int number : deep_numbers(jobs_for_laws)) {
    const RandomPour pour = numbered_pour(number);
    const std::string text = text_of(pour);
    CAPTURE(number, text);
    const Plan plan = make_plan(job_of(text));
    std::map<int, double> filled;  // m3
    for (const PourSlab& slab : pour.slabs) {
      const SlabPlan& shape = slab_of(plan, slab.name);
      const int lifts = lifts_of(plan, shape);
      const double thick = slab.thickness * metres_in_sixteenth;
      for (int lift = 1; lift <= lifts; ++lift) {
        for (const auto& [batch, parts] : zones_in(plan, shape, lift)) {
          for (const Polygon& part : parts) {
            filled[batch] += signed_area(part).si() * thick / lifts;
            if (slab.panel == 0) continue;
            filled[batch] -=
                geos_common_area(part, shape.panel).si() * slab.panel * metres_in_sixteenth / lifts;
          }
        }
      }
    }
    for (const Batch& batch : plan.batches) {
      CAPTURE(batch.number);
      CHECK(filled[batch.number] == Approx(batch.zone.si()).epsilon(0.005));
    }
  }
}

TEST_CASE("joints lie where the zones of their batches meet", "[joints][deep]") {
  for_each_slab([](const PourSlab&, const Plan& plan, const SlabPlan& slab) {
    const Length little = mm(0.5);
    std::map<int, GeosRegion> all;
    for (const Batch& batch : plan.batches) {
      std::vector<Polygon> parts;
      for (const Zone& zone : batch.zones) {
        if (zone.slab == slab.name) parts.push_back(zone.outline);
      }
      if (!parts.empty())
        all.emplace(batch.number, GeosRegion::union_of(parts).grown_mitred(little));
    }
    for (const Joint& joint : plan.pour.joints) {
      if (joint.slab != slab.name) continue;
      CAPTURE(joint.first, joint.second);
      REQUIRE(joint.first < joint.second);
      REQUIRE(all.count(joint.first) + all.count(joint.second) == 2);
      const GeosRegion &first = all.at(joint.first), &second = all.at(joint.second);
      if (joint.line.empty()) {
        CHECK(first.overlaps(second));  // one above the other
        continue;
      }
      double length = 0;
      for (std::size_t i = 0; i < joint.line.size(); ++i) {
        const Point& p = joint.line[i];
        CHECK((first.covers(p) && second.covers(p)));
        if (i == 0) continue;
        const Point& q = joint.line[i - 1];
        const Point middle{(p.x + q.x) / 2, (p.y + q.y) / 2};
        CHECK((first.covers(middle) && second.covers(middle)));
        length += apart_mm(p, q);
      }
      CHECK(joint.length.in_mm() == Approx(length).margin(0.01));
    }
  });
}

TEST_CASE("batches that share an edge have a joint", "[joints][deep]") {
  for_each_slab([](const PourSlab& made, const Plan& plan, const SlabPlan& slab) {
    const Length short_contact =
        std::max(mm(100), Length::m(0.1 * widest(made) * metres_in_sixteenth)) + mm(1);
    const int lifts = lifts_of(plan, slab);
    std::vector<std::map<int, GeosRegion>> zones(static_cast<std::size_t>(lifts));
    std::vector<std::map<int, Rectangle>> boxes(zones.size());
    for (int lift = 1; lift <= lifts; ++lift) {
      for (const auto& [batch, parts] : zones_in(plan, slab, lift)) {
        const auto at = static_cast<std::size_t>(lift - 1);
        zones[at].emplace(batch, GeosRegion::union_of(parts));
        Polygon points;
        for (const Polygon& part : parts) points.insert(points.end(), part.begin(), part.end());
        Rectangle box = bounding_box(points);
        boxes[at].emplace(
            batch,
            Rectangle{{box.at.x - mm(1), box.at.y - mm(1)}, box.length + mm(2), box.depth + mm(2)});
      }
    }
    for (std::size_t lift = 0; lift < zones.size(); ++lift) {
      for (const auto& [a, here] : zones[lift]) {
        for (const auto& [b, there] : zones[lift]) {
          if (b <= a || !overlaps(boxes[lift].at(a), boxes[lift].at(b))) continue;
          const Length shared = contact(here, there);
          CAPTURE(lift, a, b, shared.in_mm(), short_contact.in_mm());
          CHECK((shared < short_contact || listed(plan, slab, a, b)));
        }
        if (lift + 1 == zones.size()) continue;
        for (const auto& [b, there] : zones[lift + 1]) {
          if (b == a || !overlaps(boxes[lift].at(a), boxes[lift + 1].at(b))) continue;
          const double shared = here.common(there).area().si();
          CAPTURE(lift, a, b, shared);
          CHECK((shared < 0.01 || listed(plan, slab, a, b)));
        }
      }
    }
  });
}

TEST_CASE("a tape finds both ends of every joint", "[joints][deep]") {
  for_each_slab([](const PourSlab&, const Plan& plan, const SlabPlan& slab) {
    for (const Joint& joint : plan.pour.joints) {
      if (joint.slab != slab.name || joint.line.empty()) continue;
      CAPTURE(joint.first, joint.second, joint.ends.size());
      const Point ends[] = {joint.line.front(), joint.line.back()};
      REQUIRE(joint.ends.size() == 2);
      for (std::size_t e = 0; e < 2; ++e) {
        const JointEnd& end = joint.ends[e];
        CAPTURE(e, end.on, end.from, end.away.in_mm());
        const auto place = taped(slab, end);
        REQUIRE(place);
        CHECK(end.away >= Length{});
        // On a rounded corner the tape is read along the side it rounds off, square beside the
        // joint.
        double off = HUGE_VAL;
        for (const Polygon& edge : sharp_edges(slab)) {
          off = std::min(off, distance(ends[e], edge).in_mm());
        }
        if (end.inward > Length{}) off = 0;
        CHECK(apart_mm(*place, ends[e]) <= off + 1);
      }
    }
  });
}
