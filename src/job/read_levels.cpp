// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/format.h"
#include "core/vec.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> level_reading{Length{}, Length::m(5), "0 mm and 5 m (16 ft)"};
// Three readings fix a plane; sixty are more than anyone takes on one base, and keep the triangles
// between them cheap. Assumption.
constexpr std::size_t fewest = 3, most = 60;
/// Readings nearer to each other are one, written twice. Assumption.
constexpr Length least_apart = Length::mm(2);
/// Readings this near to one line leave open how the base tips across it. Assumption.
constexpr Length least_spread = Length::mm(1);
/// A base steeper than this is no base, or has a step. Assumption.
constexpr double steepest = 0.2;
/// Three or four readings are gone on beyond themselves: this part of the base, each way, must lie
/// between them, or a slip of a millimetre grows to centimetres. Assumption.
constexpr double least_cover = 0.25;
constexpr std::size_t most_gone_on = 4;
/// A reading farther from its base has the wrong unit. Assumption.
constexpr Length farthest = Length::m(1);

std::optional<LevelReading> read_reading(Context& c, const Node& node) {
  constexpr auto example = R"({"at": ["0 in", "0 in"], "low": "3 mm"})";
  Object o(c.reader, node, "a level reading");
  const Node at_node = o.need("at", example);
  const auto at = at_node ? read_point(c.reader, at_node) : std::nullopt;
  const auto low = read_quantity(c.reader, o.need("low", example), level_reading);
  o.finish();
  if (!at || !low) return std::nullopt;
  return LevelReading{*at, *low};
}

bool is_near(const Rectangle& box, const Point& p) {
  return p.x >= box.at.x - farthest && p.x <= box.at.x + box.length + farthest &&
         p.y >= box.at.y - farthest && p.y <= box.at.y + box.depth + farthest;
}

/// Reports the first two readings at one place.
bool places_differ(Context& c, const std::vector<Node>& nodes,
                   const std::vector<LevelReading>& levels) {
  for (std::size_t i = 0; i < levels.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      if (distance(levels[i].at, levels[k].at) >= least_apart) continue;
      c.reader.error(
          nodes[i].pointer,
          {"reading-given-twice",
           fmt::format("readings {} and {} are less than 2 mm (1/16 in) apart", k + 1, i + 1),
           "keep one of them, or write where the other was taken"});
      return false;
    }
  }
  return true;
}

/// Reports the first two readings between which the base would be too steep.
bool are_gentle(Context& c, const std::vector<Node>& nodes,
                const std::vector<LevelReading>& levels) {
  for (std::size_t i = 0; i < levels.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      const Length by = std::max(levels[i].low - levels[k].low, levels[k].low - levels[i].low);
      const Length over = distance(levels[i].at, levels[k].at);
      if (by <= steepest * over) continue;
      c.reader.error(nodes[i].pointer,
                     {"readings-too-steep",
                      fmt::format("readings {} and {} differ by {} over {}: more than 20 %", k + 1,
                                  i + 1, show(by, c.units), show(over, c.units)),
                      "look at the units; a base with a step is planned as two slabs"});
      return false;
    }
  }
  return true;
}

/// How far points reach along a direction and square to it.
struct Reach {
  Length along, across;
};

Reach reach_of(const Polygon& points, const Point& from, const Point& to) {
  const Vec way = vec(from, to).unit();
  Polygon turned;
  for (const Point& p : points) turned.push_back(point({dot(way, vec(p)), cross(way, vec(p))}));
  const Rectangle box = bounding_box(turned);
  return {box.length, box.depth};
}

/// Reports readings that leave open how the base tips, or how it lies away from them.
void check_spread(Context& c, const Node& node, const Slab& slab) {
  Polygon places;
  for (const LevelReading& reading : slab.levels) places.push_back(reading.at);
  const Point& from = places.front();
  const Point to = *std::max_element(
      places.begin(), places.end(),
      [&](const Point& a, const Point& b) { return distance(from, a) < distance(from, b); });
  const bool in_line = std::all_of(places.begin(), places.end(), [&](const Point& place) {
    return distance(place, Polygon{from, to}) < least_spread;
  });
  if (in_line) {
    c.reader.error(node.pointer,
                   {"readings-in-line", "all level readings lie in one straight line",
                    "take some to the side of it: how the base tips that way is not known"},
                   Reader::Mark::key);
    return;
  }
  if (places.size() > most_gone_on || slab.base.empty()) return;
  const Reach readings = reach_of(places, from, to), base = reach_of(slab.base, from, to);
  if (readings.along >= base.along * least_cover && readings.across >= base.across * least_cover) {
    return;
  }
  c.reader.error(node.pointer,
                 {"readings-too-close", "the level readings lie too close together for this base",
                  "take one near each corner, so that they say how all of it lies"},
                 Reader::Mark::key);
}

}  // namespace

void read_levels(Context& c, const Node& node, Slab& slab) {
  const auto nodes = read_list(c.reader, node, "level readings");
  if (!nodes) return;
  if (nodes->size() < fewest || nodes->size() > most) {
    c.reader.error(node.pointer,
                   {nodes->size() < fewest ? "too-few-readings" : "too-many-readings",
                    fmt::format("a base has {} to {} level readings, here {} {}", fewest, most,
                                nodes->size() == 1 ? "is" : "are", nodes->size()),
                    "take one at each corner and one in the middle; without \"levels\" the base is "
                    "planned level"},
                   Reader::Mark::key);
    return;
  }
  const std::size_t before = c.reader.errors();
  for (const Node& entry : *nodes) {
    const auto reading = read_reading(c, entry);
    if (!reading) continue;
    if (!slab.base.empty() && !is_near(bounding_box(slab.base), reading->at)) {
      c.reader.error(pointer_to(entry.pointer, "at"),
                     {"reading-far-away", "this reading is more than 1 m (39 in) from the base",
                      "\"at\" is measured as the base's corners are: look at the units"});
    }
    slab.levels.push_back(*reading);
  }
  if (c.reader.errors() != before) return;
  if (places_differ(c, *nodes, slab.levels) && are_gentle(c, *nodes, slab.levels)) {
    check_spread(c, node, slab);
  }
}

}  // namespace strikeoff
