// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numeric>

#include "core/format.h"
#include "job/read_parts.h"
#include "job/suggest.h"

namespace strikeoff {
namespace {

constexpr std::array<const char*, 4> rectangle_sides{"front", "right", "back", "left"};

/// "92 mm" beside "26 in" is a job with two tapes, or a slip. The plan says how it took it.
void remark_on_units(Context& c, Object& o, Length length, Length depth) {
  constexpr double far_apart = 10;  // assumption
  if (std::max(length, depth) / std::min(length, depth) <= far_apart) return;
  const auto text = [&](const char* key) { return o.find(key).json->get<std::string>(); };
  // Every metric unit of length has an m, and no other has.
  const auto is_metric = [&](const char* key) {
    return text(key).find_first_of("mM") != std::string::npos;
  };
  if (is_metric("length") == is_metric("depth")) return;
  const bool odd_length = is_metric("length") != (c.units == Units::metric);
  const char *odd = odd_length ? "length" : "depth", *other = odd_length ? "depth" : "length";
  c.reader.assume(weight_unit_slip, o.path(odd), show(odd_length ? length : depth, c.units),
                  fmt::format("the job says {} beside a {} of {}: look whether the unit is a slip "
                              "(assumption: it is meant)",
                              in_quotes(text(odd)), other, in_quotes(text(other))));
}

void read_diagonals(Reader& reader, Object& o) {
  const Node node = o.find("diagonals");
  const auto two = read_list(reader, node, "two diagonals");
  if (!two) return;
  if (two->size() != 2) {
    reader.error(node.pointer, {"not-a-pair", "two diagonals are needed here",
                                "corner 1 to 3, then corner 2 to 4"});
    return;
  }
  for (const Node& diagonal : *two) (void)read_quantity(reader, diagonal, any_length);
  reader.not_planned(node, "a base out of square is not planned yet: the slab is planned square");
}

void read_rectangle(Context& c, const Node& node, Base& base) {
  Object o(c.reader, node, "a rectangle");
  const auto length = read_quantity(c.reader, o.need("length", R"("length": "92 in")"), any_length);
  const auto depth = read_quantity(c.reader, o.need("depth", R"("depth": "26 in")"), any_length);
  read_diagonals(c.reader, o);
  o.finish();
  base.rectangle = true;
  if (!length || !depth) return;
  remark_on_units(c, o, *length, *depth);
  base.polygon = corners_of({{}, *length, *depth});
  for (int k = 0; k < 4; ++k) {
    base.sides.push_back({k + 1, rectangle_sides[static_cast<std::size_t>(k)], {}, {}, false});
  }
}

/// Reports the first thing that makes these corners no outline this version can plan.
bool is_outline(Reader& reader, const Node& node, const Polygon& corners) {
  const std::size_t n = corners.size();
  const auto at = [&](std::size_t k) { return pointer_to(node.pointer, k); };
  if (n < 3) {
    reader.error(node.pointer, {"too-few-corners", "an outline has at least three corners", ""});
    return false;
  }
  for (std::size_t k = 0; k < n; ++k) {
    if (edge_length(corners, k) < any_length.least) {
      reader.error(at((k + 1) % n), {"short-edge",
                                     fmt::format("corners {} and {} are less than 1 mm apart",
                                                 k + 1, (k + 1) % n + 1),
                                     "the first corner is not repeated at the end"});
      return false;
    }
  }
  if (const auto contact = self_contact(corners)) {
    reader.error(
        at(contact->second),
        {"outline-touches-itself",
         fmt::format("edge {} of the outline meets edge {}", contact->second + 1,
                     contact->first + 1),
         "edge k runs from corner k to the next; list the corners in order round the base"});
    return false;
  }
  for (std::size_t k = 0; k < n; ++k) {
    const Polygon triangle{corners[(k + n - 1) % n], corners[k], corners[(k + 1) % n]};
    if (signed_area(triangle) == Area{}) {
      reader.error(
          at(k), {"straight-corner",
                  fmt::format("corner {} lies on the straight line between its neighbours", k + 1),
                  "leave it out"});
      return false;
    }
  }
  if (!is_right_angled(corners)) {
    reader.error(node.pointer,
                 {"not-planned", "only outlines with right angles along x and y are planned yet",
                  "measure the corners from the front left one: x to the right, y to the back; if "
                  "the base is a little out of square, give the largest size"},
                 Reader::Mark::key);
    return false;
  }
  return true;
}

/// Anticlockwise from corner 1; the sides keep the numbers of the edges as written.
void set_outline(Base& base, Polygon corners) {
  const std::size_t n = corners.size();
  std::vector<int> numbers(n);
  std::iota(numbers.begin(), numbers.end(), 1);
  if (signed_area(corners) < Area{}) {
    std::reverse(corners.begin() + 1, corners.end());
    std::reverse(numbers.begin(), numbers.end());
  }
  base.polygon = std::move(corners);
  for (const int number : numbers) {
    base.sides.push_back({number, fmt::format("edge {}", number), {}, {}, false});
  }
}

void read_corners(Reader& reader, const Node& node, Base& base) {
  const auto entries = read_list(reader, node, "corners [x, y]");
  if (!entries) return;
  Polygon corners;
  for (const Node& entry : *entries) {
    if (const auto point = read_point(reader, entry)) corners.push_back(*point);
  }
  if (corners.size() != entries->size() || !is_outline(reader, node, corners)) return;
  set_outline(base, std::move(corners));
}

void read_unplanned_list(Reader& reader, Object& o, const char* key, const char* sentence) {
  const Node node = o.find(key);
  if (read_list(reader, node, key)) reader.not_planned(node, sentence);
}

/// The side a text or number means, or nothing.
std::optional<std::size_t> side_named(const Base& base, const std::string& name) {
  for (std::size_t k = 0; k < base.sides.size(); ++k) {
    const Side& side = base.sides[k];
    if (side.name == name || fmt::format("{}", side.number) == name ||
        fmt::format("edge {}", side.number) == name) {
      return k;
    }
  }
  return std::nullopt;
}

TextError unknown_side(const Base& base, const std::string& name) {
  std::vector<std::string> names;
  if (base.rectangle) names.assign(rectangle_sides.begin(), rectangle_sides.end());
  const std::string edges = fmt::format("edges 1 to {}", base.sides.size());
  return {"unknown-side", fmt::format("this base has no side {}", in_quotes(name)),
          did_you_mean(name, names,
                       base.rectangle ? "it has " + quoted_list(names) + ", or " + edges
                                      : "write a number: it has " + edges +
                                            ", and edge 2 runs from corner 2 to corner 3")};
}

void set_side(Context& c, const Node& node, const Base& base, const std::string& name,
              std::optional<Length> length, std::vector<SideLength>& sides) {
  if (base.sides.empty()) return;  // the base is already rejected
  const auto k = side_named(base, name);
  if (!k) {
    c.reader.error(node.pointer, unknown_side(base, name), Reader::Mark::key);
  } else if (sides[*k].named) {
    c.reader.error(node.pointer,
                   {"side-given-twice",
                    fmt::format("the side {} already has a value", in_quotes(base.sides[*k].name)),
                    "keep one"},
                   Reader::Mark::key);
  } else {
    sides[*k] = {length, true, node.pointer};
  }
}

}  // namespace

std::optional<Point> read_point(Reader& reader, const Node& node) {
  const auto two = read_list(reader, node, "two lengths [x, y]");
  if (!two) return std::nullopt;
  if (two->size() != 2) {
    reader.error(node.pointer, {"not-a-pair", "two lengths are needed here, x and y",
                                R"(as in ["12 in", "6 in"])"});
    return std::nullopt;
  }
  const auto x = read_quantity(reader, (*two)[0], any_position);
  const auto y = read_quantity(reader, (*two)[1], any_position);
  if (!x || !y) return std::nullopt;
  return Point{*x, *y};
}

Base read_base(Context& c, const Node& node) {
  Base base;
  if (!node) return base;
  Reader& reader = c.reader;
  Object o(reader, node, "a base");
  const Node rectangle = o.find("rectangle"), corners = o.find("corners"), runs = o.find("runs");
  const int shapes = int(bool(rectangle)) + int(bool(corners)) + int(bool(runs));
  const char* example = R"("rectangle": {"length": "92 in", "depth": "26 in"})";
  if (o.is_object() && shapes == 0) {
    reader.error(node.pointer,
                 {"missing-key", "a base needs \"rectangle\" or \"corners\"",
                  fmt::format("as in {}", example)},
                 Reader::Mark::key);
  } else if (shapes > 1) {
    reader.error((rectangle ? (corners ? corners : runs) : runs).pointer,
                 {"two-shapes", "a base has one shape, here are two", "keep one of them"},
                 Reader::Mark::key);
  } else if (runs) {
    reader.error(runs.pointer,
                 {"not-planned", "a base walked in \"runs\" is not planned yet",
                  R"(give its "corners": [["0 in","0 in"],["92 in","0 in"],...] from corner 1)"},
                 Reader::Mark::key);
  } else if (rectangle) {
    read_rectangle(c, rectangle, base);
  } else if (corners) {
    read_corners(reader, corners, base);
  }
  read_diagonals(reader, o);
  read_unplanned_list(reader, o, "legs", "the load on single legs is not planned yet");
  read_partitions(reader, o.find("partitions"), base);
  read_gaps(reader, o.find("gaps"), base);
  o.finish();
  return base;
}

std::optional<std::size_t> read_side(Context& c, const Node& node, const Base& base) {
  std::string name;
  if (node.json->is_string()) {
    name = node.json->get<std::string>();
  } else if (node.json->is_number_integer()) {
    name = node.json->dump();
  } else {
    wrong_kind(c.reader, node, "a side", "write its name or number, as in \"back\" or 3");
    return std::nullopt;
  }
  if (base.sides.empty()) return std::nullopt;  // the base is already rejected
  const auto k = side_named(base, name);
  if (!k) c.reader.error(node.pointer, unknown_side(base, name));
  return k;
}

std::vector<SideLength> read_side_lengths(Context& c, const Node& node, const Base& base,
                                          const Range<Length>& range) {
  std::vector<SideLength> sides(base.sides.size());
  if (!node) return sides;
  if (!node.json->is_object()) {
    const auto length = read_quantity(c.reader, node, range);
    for (SideLength& side : sides) side = {length, false, node.pointer};
    return sides;
  }
  Object o(c.reader, node, "an overhang");
  const Node all = o.find("all");
  if (const auto length = read_quantity(c.reader, all, range)) {
    for (SideLength& side : sides) side = {length, false, all.pointer};
  }
  for (const char* name : rectangle_sides) {
    const Node side = o.find(name);
    if (side) set_side(c, side, base, name, read_quantity(c.reader, side, range), sides);
  }
  const Node edges = o.find("edges");
  if (edges && !edges.json->is_object()) {
    wrong_kind(c.reader, edges, "an object", R"(as in {"1": "1 in", "3": "0 in"})");
  } else if (edges) {
    for (const auto& member : edges.json->items()) {
      const Node edge{&member.value(), pointer_to(edges.pointer, member.key())};
      set_side(c, edge, base, member.key(), read_quantity(c.reader, edge, range), sides);
    }
  }
  o.finish();
  return sides;
}

}  // namespace strikeoff
