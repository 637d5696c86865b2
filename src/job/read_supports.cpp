// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr std::size_t most_partitions = 200, most_legs = 200, most_gaps = 100;

/// The entries of a list that may not be longer than this.
std::vector<Node> read_short_list(Reader& reader, const Node& node, const char* what,
                                  std::size_t most) {
  auto entries = read_list(reader, node, what);
  if (entries && entries->size() > most) {
    reader.error(node.pointer,
                 {"list-too-long",
                  fmt::format("a base has at most {} {}, here are {}", most, what, entries->size()),
                  "a base with more is several bases: give each its own slab"},
                 Reader::Mark::key);
    entries.reset();
  }
  return entries.value_or(std::vector<Node>{});
}

/// A length is the x of a line from front to back; an object gives both ends.
std::optional<Partition> read_partition(Reader& reader, const Node& node, const Base& base) {
  if (!node.json->object()) {
    const auto x = read_quantity(reader, node, any_position);
    if (!x || base.polygon.empty()) return std::nullopt;
    const Rectangle box = bounding_box(base.polygon);
    return Partition{{*x, box.at.y}, {*x, box.at.y + box.depth}};
  }
  constexpr auto example = R"({"from": ["30 in", "0 in"], "to": ["30 in", "24 in"]})";
  Object o(reader, node, "a partition");
  const Node from_node = o.need("from", example), to_node = o.need("to", example);
  const auto from = from_node ? read_point(reader, from_node) : std::nullopt;
  const auto to = to_node ? read_point(reader, to_node) : std::nullopt;
  o.finish();
  if (!from || !to) return std::nullopt;
  return Partition{*from, *to};
}

bool meets(const Partition& line, const Polygon& base) {
  return contains(base, line.from) || distance(Polygon{line.from, line.to}, base) == Length{};
}

std::optional<Rectangle> read_gap(Reader& reader, const Node& node) {
  constexpr auto example = R"("rectangle": {"length": "24 in", "depth": "24 in"})";
  Object o(reader, node, "a gap");
  const auto size = read_rectangle_size(reader, o.need("rectangle", example), example);
  const Node at_node = o.need("at", R"("at": ["30 in", "0 in"], its lower left corner)");
  const auto at = at_node ? read_point(reader, at_node) : std::nullopt;
  o.finish();
  if (!size || !at) return std::nullopt;
  return Rectangle{*at, size->first, size->second};
}

/// Reports a gap beside the base, or over an earlier one.
void check_gap(Reader& reader, const Node& node, const Rectangle& gap, const Base& base) {
  if (overlap(base.polygon, gap) <= Area{}) {
    reader.error(node.pointer, {"gap-outside", "this gap lies beside the base",
                                "\"at\" is its lower left corner, measured as the base's corners"});
    return;
  }
  for (std::size_t k = 0; k < base.gaps.size(); ++k) {
    if (!overlaps(gap, base.gaps[k])) continue;
    reader.error(node.pointer,
                 {"gaps-overlap", fmt::format("this gap lies over an earlier one, gap {}", k + 1),
                  "give each place once"});
    return;
  }
}

}  // namespace

void read_partitions(Reader& reader, const Node& node, Base& base) {
  for (const Node& entry : read_short_list(reader, node, "partitions", most_partitions)) {
    const auto line = read_partition(reader, entry, base);
    if (!line || base.polygon.empty()) continue;
    if (distance(line->from, Polygon{line->to}) < any_length.least) {
      reader.error(entry.pointer,
                   {"partition-without-length", "this partition begins and ends at one place",
                    "\"from\" and \"to\" are its two ends, seen from above"});
    } else if (!meets(*line, base.polygon)) {
      reader.error(entry.pointer,
                   {"partition-outside", "this partition stands beside the base",
                    "it is measured as the base's corners are: x to the right, y to the back"});
    }
    base.partitions.push_back(*line);
  }
}

void read_legs(Reader& reader, const Node& node, Base& base) {
  for (const Node& entry : read_short_list(reader, node, "legs", most_legs)) {
    const auto leg = read_point(reader, entry);
    if (!leg || base.polygon.empty()) continue;
    if (!contains(base.polygon, *leg)) {
      reader.error(entry.pointer,
                   {"leg-outside", "this leg stands beside the base",
                    "it is measured as the base's corners are: x to the right, y to the back"});
    }
    for (std::size_t k = 0; k < base.legs.size(); ++k) {
      if (distance(*leg, Polygon{base.legs[k]}) >= any_length.least) continue;
      reader.error(entry.pointer,
                   {"legs-at-one-place", fmt::format("this leg stands where leg {} does", k + 1),
                    "give each once"});
      break;
    }
    base.legs.push_back(*leg);
  }
}

void read_gaps(Reader& reader, const Node& node, Base& base) {
  const std::size_t before = reader.errors();
  Area open;
  for (const Node& entry : read_short_list(reader, node, "gaps", most_gaps)) {
    const auto gap = read_gap(reader, entry);
    if (!gap || base.polygon.empty()) continue;
    check_gap(reader, entry, *gap, base);
    open += overlap(base.polygon, *gap);
    base.gaps.push_back(*gap);
  }
  if (base.gaps.empty() || reader.errors() != before) return;
  // The smallest share of a base that can still be said to carry a slab. Assumption.
  constexpr double least_share = 0.01;
  if (signed_area(base.polygon) - open < signed_area(base.polygon) * least_share) {
    reader.error(node.pointer,
                 {"no-base-left", "the gaps leave no base to carry the slab",
                  "give the gaps between the parts that carry, not the parts"},
                 Reader::Mark::key);
  }
}

}  // namespace strikeoff
