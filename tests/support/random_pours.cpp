// SPDX-License-Identifier: MIT
#include "support/random_pours.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <utility>

namespace strikeoff::test {
namespace {

/// A length about so many mm, in whole quarter inches.
Sixteenths between_mm(Draw& draw, int least, int most) {
  return 4 * draw.whole(least * 16 / 100, most * 16 / 100);
}

std::vector<PourPoint> corners_of(const PourBox& box) {
  return {{box.x, box.y},
          {box.x + box.length, box.y},
          {box.x + box.length, box.y + box.depth},
          {box.x, box.y + box.depth}};
}

/// Without sides, thickness and panel.
PourSlab rectangle(Sixteenths length, Sixteenths depth) {
  PourSlab slab;
  slab.corners = corners_of({0, 0, length, depth});
  return slab;
}

PourSlab random_ell(Draw& draw) {
  PourSlab slab;
  slab.shape = PourShape::ell;
  const Sixteenths a = between_mm(draw, 400, 750), b = between_mm(draw, 400, 750);
  const Sixteenths right = b + a + between_mm(draw, 0, 1300);
  const Sixteenths top = a + b + between_mm(draw, 0, 1300);
  slab.corners = {{0, 0}, {right, 0}, {right, a}, {b, a}, {b, top}, {0, top}};
  slab.arms = {{0, 0, right, a}, {0, 0, b, top}};
  return slab;
}

PourSlab random_you(Draw& draw) {
  PourSlab slab;
  slab.shape = PourShape::you;
  const Sixteenths a = between_mm(draw, 400, 700), b = between_mm(draw, 400, 700);
  const Sixteenths c = between_mm(draw, 400, 700);
  const Sixteenths right = b + c + std::max(a, between_mm(draw, 500, 1600));
  const Sixteenths left_top = a + b + between_mm(draw, 0, 900);
  const Sixteenths right_top = a + c + between_mm(draw, 0, 900);
  slab.corners = {{0, 0},         {right, 0}, {right, right_top}, {right - c, right_top},
                  {right - c, a}, {b, a},     {b, left_top},      {0, left_top}};
  slab.arms = {{0, 0, right, a}, {0, 0, b, left_top}, {right - c, 0, c, right_top}};
  return slab;
}

PourSlab random_tee(Draw& draw) {
  PourSlab slab;
  slab.shape = PourShape::tee;
  const Sixteenths a = between_mm(draw, 450, 750), stem = between_mm(draw, 450, 750);
  const Sixteenths x = a + between_mm(draw, 0, 900);
  const Sixteenths right = x + stem + a + between_mm(draw, 0, 900);
  const Sixteenths top = a + stem + between_mm(draw, 0, 900);
  slab.corners = {{0, 0},          {right, 0}, {right, a}, {x + stem, a},
                  {x + stem, top}, {x, top},   {x, a},     {0, a}};
  slab.arms = {{0, 0, right, a}, {x, 0, stem, top}};
  return slab;
}

/// A closed band round a large opening.
PourSlab random_ring(Draw& draw) {
  const Sixteenths left = between_mm(draw, 200, 400), right = between_mm(draw, 200, 400);
  const Sixteenths front = between_mm(draw, 200, 400), back = between_mm(draw, 200, 400);
  const PourBox hole{left, front, between_mm(draw, 600, 1500), between_mm(draw, 500, 1200)};
  PourSlab slab = rectangle(left + hole.length + right, front + hole.depth + back);
  slab.shape = PourShape::ring;
  slab.openings = {{hole, draw.one_in(3) ? between_mm(draw, 30, 100) : 0}};
  return slab;
}

PourSlab random_worktop(Draw& draw) {
  return rectangle(between_mm(draw, 800, 3000), between_mm(draw, 400, 800));
}

PourSlab random_sink(Draw& draw) {
  const Sixteenths depth = between_mm(draw, 580, 750), rim = between_mm(draw, 90, 120);
  const PourBox sink{between_mm(draw, 150, 900), rim, between_mm(draw, 300, 560),
                     depth - rim - between_mm(draw, 90, 160)};
  PourSlab slab = rectangle(sink.x + sink.length + between_mm(draw, 150, 1200), depth);
  slab.openings = {{sink, draw.one_in(2) ? between_mm(draw, 20, 80) : 0}};
  return slab;
}

/// On the ground; now and then too thick for one lift, and now and then with a drain.
PourSlab random_pad(Draw& draw) {
  PourSlab slab = rectangle(between_mm(draw, 1600, 3200), between_mm(draw, 1200, 2500));
  slab.on_ground = true;
  slab.thickness = draw.one_in(4) ? between_mm(draw, 160, 220) : between_mm(draw, 75, 125);
  if (draw.one_in(3)) {
    const Sixteenths drain = between_mm(draw, 80, 160);
    slab.openings = {{{between_mm(draw, 300, 1200), between_mm(draw, 300, 900), drain, drain}, 0}};
  }
  return slab;
}

/// Rounds some corners: on a base as far as the panel's corner stays covered (3.4 times what the
/// slab hangs over it, here 12 mm), and none beside a wall.
void round_corners(Draw& draw, PourSlab& slab) {
  for (std::size_t k = 0; k < slab.corners.size(); ++k) {
    const PourSide& before = slab.sides[(k + slab.sides.size() - 1) % slab.sides.size()];
    const bool is_free = before.overhang > 0 && slab.sides[k].overhang > 0;
    if (!draw.one_in(6)) continue;
    if (slab.on_ground) slab.rounded[k] = between_mm(draw, 30, 180);
    if (!slab.on_ground && is_free) slab.rounded[k] = between_mm(draw, 20, 35);
  }
}

/// What every slab has beside its shape: thickness, panel, sides, rounded corners.
PourSlab furnished(Draw& draw, PourSlab slab, bool plain) {
  slab.sides.resize(slab.corners.size());
  slab.rounded.resize(slab.corners.size());
  if (slab.thickness == 0) slab.thickness = between_mm(draw, 38, 76);
  if (!slab.on_ground) {
    if (draw.one_in(2)) slab.panel = 8;  // half an inch
    const Sixteenths overhang = draw.one_in(3) ? 0 : between_mm(draw, 25, 45);
    for (PourSide& side : slab.sides) side.overhang = overhang;
    if (draw.one_in(2)) {
      const int wall = draw.whole(0, static_cast<int>(slab.sides.size()) - 1);
      slab.sides[static_cast<std::size_t>(wall)] = {0, true};
    }
  }
  if (!plain) round_corners(draw, slab);
  return slab;
}

PourSlab random_shape(Draw& draw) {
  switch (draw.whole(0, 9)) {
    case 0:
    case 1:
      return random_ell(draw);
    case 2:
      return random_you(draw);
    case 3:
    case 4:
      return random_tee(draw);
    case 5:
      return random_ring(draw);
    case 6:
      return random_sink(draw);
    case 7:
    case 8:
      return random_pad(draw);
    default:
      return random_worktop(draw);
  }
}

/// Whole quarter minutes.
int between_s(Draw& draw, int least, int most) {
  return 15 * draw.whole(least / 15, most / 15);
}

/// Mix and crew; people have roles that follow one another, so that the beat is known.
RandomPour random_day(Draw& draw) {
  RandomPour pour;
  pour.bag_kg = draw.whole(18, 28);
  pour.water_l = pour.bag_kg * draw.whole(11, 17) / 100;
  pour.yield_l = (pour.bag_kg + pour.water_l) / (draw.whole(200, 235) / 100.0);
  const int working[] = {15, 20, 25, 30, 40, 45, 60};
  pour.working_min = working[draw.whole(0, 6)];
  pour.grain = draw.whole(1, 6);
  const std::vector<std::vector<std::vector<std::string>>> crews{
      {{"mix", "carry", "place"}},
      {{"mix"}, {"carry", "place"}},
      {{"mix", "carry"}, {"place"}},
      {{"mix"}, {"carry"}, {"place"}},
      {{"mix"}, {"mix"}, {"carry", "place"}}};
  pour.roles = crews[static_cast<std::size_t>(draw.whole(0, 4))];
  pour.mixers = pour.roles.size() == 3 && pour.roles[1][0] == "mix" ? 2 : 1;
  pour.bags_per_batch = draw.whole(1, 3);
  const int bags = pour.bags_per_batch;
  pour.load_s = between_s(draw, 30, 60) * bags;
  pour.mix_s = between_s(draw, 120, 240);
  pour.discharge_s = 15 * bags;
  pour.reset_s = between_s(draw, 15, 45);
  pour.carry_s = between_s(draw, 15, 45) * bags;
  pour.return_s = between_s(draw, 15, 30) * bags;
  pour.place_s = between_s(draw, 60, 150) * bags;
  return pour;
}

void add_slab(RandomPour& pour, PourSlab slab) {
  slab.name = fmt::format("slab {}", pour.slabs.size() + 1);
  pour.slabs.push_back(std::move(slab));
}

/// What is written starts at the lowest corner, of several the leftmost, as a rectangle must.
PourSlab from_lowest(PourSlab slab) {
  const auto lowest = std::min_element(
      slab.corners.begin(), slab.corners.end(),
      [](const PourPoint& a, const PourPoint& b) { return a.y != b.y ? a.y < b.y : a.x < b.x; });
  const auto by = lowest - slab.corners.begin();
  const auto start_there = [by](auto& list) {
    std::rotate(list.begin(), list.begin() + by, list.end());
  };
  start_there(slab.corners);
  start_there(slab.sides);
  start_there(slab.rounded);
  return slab;
}

PourSlab mirrored_slab(PourSlab slab) {
  for (PourPoint& p : slab.corners) p.x = -p.x;
  std::reverse(slab.corners.begin(), slab.corners.end());
  std::reverse(slab.rounded.begin(), slab.rounded.end());
  // The side that led to a corner now leads from it.
  std::reverse(slab.sides.begin(), slab.sides.end());
  std::rotate(slab.sides.begin(), slab.sides.begin() + 1, slab.sides.end());
  for (PourBox& box : slab.arms) box.x = -(box.x + box.length);
  for (PourOpening& o : slab.openings) o.box.x = -(o.box.x + o.box.length);
  return from_lowest(std::move(slab));
}

PourSlab turned_slab(PourSlab slab) {
  for (PourPoint& p : slab.corners) p = {-p.y, p.x};
  const auto turn = [](PourBox& b) { b = {-(b.y + b.depth), b.x, b.depth, b.length}; };
  for (PourBox& box : slab.arms) turn(box);
  for (PourOpening& o : slab.openings) turn(o.box);
  return from_lowest(std::move(slab));
}

std::string length(Sixteenths value, Writing writing) {
  if (writing == Writing::inches) return fmt::format(R"("{:.4f} in")", value / 16.0);
  return fmt::format(R"("{:.4f} mm")", value * 1.5875);
}

/// The base: every side moved in by its overhang. Sides run along x or y.
std::vector<PourPoint> base_of(const PourSlab& slab) {
  std::vector<PourPoint> base = slab.corners;
  const std::size_t n = base.size();
  for (std::size_t k = 0; k < n; ++k) {
    const PourPoint &a = slab.corners[k], &b = slab.corners[(k + 1) % n];
    const Sixteenths in = slab.sides[k].overhang;
    for (PourPoint* end : {&base[k], &base[(k + 1) % n]}) {
      if (a.y == b.y) {
        end->y += b.x > a.x ? in : -in;
      } else {
        end->x += b.y > a.y ? -in : in;
      }
    }
  }
  return base;
}

std::string base_text(const PourSlab& slab, Writing writing) {
  const std::vector<PourPoint> base = base_of(slab);
  if (base.size() == 4) {
    return fmt::format(R"({{"rectangle": {{"length": {}, "depth": {}}}}})",
                       length(base[1].x - base[0].x, writing),
                       length(base[3].y - base[0].y, writing));
  }
  std::vector<std::string> points;
  points.reserve(base.size());
  for (const PourPoint& p : base) {
    points.push_back(fmt::format("[{}, {}]", length(p.x, writing), length(p.y, writing)));
  }
  return fmt::format(R"({{"corners": [{}]}})", fmt::join(points, ", "));
}

std::string opening_text(const PourOpening& opening, const PourPoint& corner, Writing writing,
                         std::size_t number) {
  std::string text = fmt::format(
      R"({{"name": "hole {}", "rectangle": {{"length": {}, "depth": {}}}, "at": [{}, {}])", number,
      length(opening.box.length, writing), length(opening.box.depth, writing),
      length(opening.box.x - corner.x, writing), length(opening.box.y - corner.y, writing));
  if (opening.radius > 0) {
    text += fmt::format(R"(, "corner_radius": {})", length(opening.radius, writing));
  }
  return text + "}";
}

std::string slab_text(const PourSlab& slab, Writing writing) {
  std::vector<std::string> overhangs, walls, rounded, openings;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    overhangs.push_back(fmt::format(R"("{}": {})", k + 1, length(slab.sides[k].overhang, writing)));
    if (slab.sides[k].wall) walls.push_back(std::to_string(k + 1));
    if (slab.rounded[k] == 0) continue;
    rounded.push_back(
        fmt::format(R"({{"corner": {}, "radius": {}}})", k + 1, length(slab.rounded[k], writing)));
  }
  const PourBox box = box_of(slab);
  for (const PourOpening& opening : slab.openings) {
    openings.push_back(opening_text(opening, {box.x, box.y}, writing, openings.size() + 1));
  }
  std::string text = fmt::format(R"({{"name": "{}", "base": {}, "thickness": {})", slab.name,
                                 base_text(slab, writing), length(slab.thickness, writing));
  if (slab.on_ground) {
    text += R"(, "support": "ground")";
  } else {
    text += fmt::format(R"(, "overhang": {{"edges": {{{}}}}}, "walls": [{}])",
                        fmt::join(overhangs, ", "), fmt::join(walls, ", "));
    text +=
        slab.panel == 0
            ? R"(, "panel": "none")"
            : fmt::format(R"(, "panel": {{"stock": {{"name": "sheet", "length": {}, "width": {},
   "thickness": {}}}}})",
                          length(768, writing), length(576, writing), length(slab.panel, writing));
  }
  if (!rounded.empty()) {
    text += fmt::format(R"(, "corner_treatment": [{}])", fmt::join(rounded, ", "));
  }
  if (!openings.empty()) text += fmt::format(R"(, "openings": [{}])", fmt::join(openings, ", "));
  return text + "}";
}

std::string crew_text(const RandomPour& pour) {
  std::vector<std::string> people;
  for (const std::vector<std::string>& roles : pour.roles) {
    people.push_back(fmt::format(R"(["{}"])", fmt::join(roles, R"(", ")")));
  }
  return fmt::format(
      R"({{"mixers": {}, "roles": [{}], "bags_per_batch": {},
  "times": {{"load": "{} s", "mix": "{} s", "discharge": "{} s", "reset": "{} s", "carry": "{} s",
             "return": "{} s", "place": "{} s"}}}})",
      pour.mixers, fmt::join(people, ", "), pour.bags_per_batch, pour.load_s, pour.mix_s,
      pour.discharge_s, pour.reset_s, pour.carry_s, pour.return_s, pour.place_s);
}

std::string mix_text(const RandomPour& pour, Writing writing) {
  return fmt::format(
      R"({{"name": "invented mix", "bag": "{} kg", "yield": "{:.3f} L", "yield_water": "{:.2f} L",
  "water": {{"least": "{:.2f} L", "most": "{:.2f} L"}}, "working_time": "{} min", "at": "20 C",
  "final_set": "8 h", "strip_after": "24 h", "aggregate": {}}})",
      pour.bag_kg, pour.yield_l, pour.water_l, pour.water_l * 0.9, pour.water_l * 1.1,
      pour.working_min, length(pour.grain, writing));
}

}  // namespace

bool RandomPour::is_plain() const {
  return std::all_of(slabs.begin(), slabs.end(), [](const PourSlab& slab) {
    return slab.shape == PourShape::rectangle && slab.openings.empty() &&
           std::all_of(slab.rounded.begin(), slab.rounded.end(),
                       [](Sixteenths radius) { return radius == 0; });
  });
}

RandomPour random_pour(Draw& draw) {
  RandomPour pour = random_day(draw);
  const int kind = draw.whole(1, 6);
  for (int k = kind <= 3 ? 1 : kind <= 5 ? 2 : 3; k > 0; --k) {
    PourSlab slab = random_shape(draw);
    if (draw.one_in(6)) slab.on_ground = true;
    slab = furnished(draw, std::move(slab), false);
    for (int times = draw.whole(0, 3); times > 0; --times) slab = turned_slab(std::move(slab));
    if (draw.one_in(2)) slab = mirrored_slab(std::move(slab));
    add_slab(pour, std::move(slab));
  }
  return pour;
}

RandomPour random_worktops(Draw& draw) {
  RandomPour pour = random_day(draw);
  for (int k = draw.whole(2, 3); k > 0; --k) {
    add_slab(pour, furnished(draw, random_worktop(draw), true));
  }
  return pour;
}

RandomPour numbered_pour(int number) {
  Draw draw(static_cast<std::uint64_t>(20260100 + number));
  return number % 3 == 0 ? random_worktops(draw) : random_pour(draw);
}

std::string text_of(const RandomPour& pour, Writing writing) {
  std::vector<std::string> slabs;
  slabs.reserve(pour.slabs.size());
  for (const PourSlab& slab : pour.slabs) slabs.push_back(slab_text(slab, writing));
  return fmt::format(
      R"({{"units": "{}", "slabs": [
 {}],
 "mix": {},
 "crew": {}}}
)",
      writing == Writing::inches ? "us" : "metric", fmt::join(slabs, ",\n "),
      mix_text(pour, writing), crew_text(pour));
}

RandomPour mirrored(RandomPour pour) {
  for (PourSlab& slab : pour.slabs) slab = mirrored_slab(std::move(slab));
  return pour;
}

RandomPour turned(RandomPour pour) {
  for (PourSlab& slab : pour.slabs) slab = turned_slab(std::move(slab));
  return pour;
}

RandomPour backwards(RandomPour pour) {
  std::reverse(pour.slabs.begin(), pour.slabs.end());
  return pour;
}

RandomPour alone(const RandomPour& pour, std::size_t k) {
  RandomPour one = pour;
  one.slabs = {pour.slabs[k]};
  return one;
}

PourBox box_of(const PourSlab& slab) {
  PourPoint low = slab.corners.front(), high = low;
  for (const PourPoint& p : slab.corners) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  return {low.x, low.y, high.x - low.x, high.y - low.y};
}

Sixteenths widest(const PourSlab& slab) {
  const PourBox box = box_of(slab);
  if (slab.arms.empty()) return std::min(box.length, box.depth);
  Sixteenths width = 0;
  for (const PourBox& arm : slab.arms) width = std::max(width, std::min(arm.length, arm.depth));
  return width;
}

Beat beat_of(const RandomPour& pour) {
  const auto holders = [&](const std::string& role) {
    return static_cast<double>(
        std::count_if(pour.roles.begin(), pour.roles.end(), [&](const auto& roles) {
          return std::find(roles.begin(), roles.end(), role) != roles.end();
        }));
  };
  const double units = std::min<double>(pour.mixers, holders("mix"));
  double takt = (pour.load_s + pour.mix_s + pour.discharge_s + pour.reset_s) / units;
  for (const std::vector<std::string>& roles : pour.roles) {
    double cycle = 0, tips_out = 0;
    for (const std::string& role : roles) {
      const double share = 1 / holders(role);
      if (role == "mix") cycle += (pour.load_s + pour.mix_s + pour.reset_s) * share;
      if (role == "carry") cycle += (pour.carry_s + pour.return_s) * share;
      if (role == "place") cycle += pour.place_s * share;
      if (role != "place") tips_out = std::max(tips_out, pour.discharge_s * share);
    }
    takt = std::max(takt, cycle + tips_out);
  }
  return {takt / 60, (pour.mix_s + pour.discharge_s + pour.carry_s + pour.place_s) / 60.0};
}

}  // namespace strikeoff::test
