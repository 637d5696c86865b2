// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>

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

Length apart(const Point& a, const Point& b) {
  return distance(a, Polygon{b});
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
      if (apart(levels[i].at, levels[k].at) >= least_apart) continue;
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

/// True when one line passes within a millimetre of every reading.
bool are_in_line(const std::vector<LevelReading>& levels) {
  const Point& from = levels.front().at;
  const auto to = std::max_element(levels.begin(), levels.end(), [&](const auto& a, const auto& b) {
    return apart(from, a.at) < apart(from, b.at);
  });
  const Polygon line{from, to->at};
  return std::all_of(levels.begin(), levels.end(), [&](const LevelReading& reading) {
    return distance(reading.at, line) < least_spread;
  });
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
  if (c.reader.errors() != before || !places_differ(c, *nodes, slab.levels)) return;
  if (are_in_line(slab.levels)) {
    c.reader.error(node.pointer,
                   {"readings-in-line", "all level readings lie in one straight line",
                    "take some to the side of it: how the base tips that way is not known"},
                   Reader::Mark::key);
  }
}

}  // namespace strikeoff
