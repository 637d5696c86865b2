// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "job/read_shape.h"

namespace strikeoff {
namespace {

/// The one of three shapes that the base gives.
void read_shape(Context& c, Object& o, const Node& node, Base& base) {
  const Node rectangle = o.find("rectangle"), corners = o.find("corners"), runs = o.find("runs");
  const Node diagonals = o.find("diagonals");
  const int shapes = int(bool(rectangle)) + int(bool(corners)) + int(bool(runs));
  if (o.is_object() && shapes == 0) {
    c.reader.error(node.pointer,
                   {"missing-key", R"(a base needs "rectangle", "corners" or "runs")",
                    R"(as in "rectangle": {"length": "76 in", "depth": "24 in"})"},
                   Reader::Mark::key);
  } else if (shapes > 1) {
    c.reader.error((rectangle ? (corners ? corners : runs) : runs).pointer,
                   {"two-shapes", "a base has one shape, here are two", "keep one of them"},
                   Reader::Mark::key);
  } else if (rectangle) {
    read_rectangle(c, rectangle, diagonals, base);
  } else if (diagonals) {
    c.reader.error(diagonals.pointer,
                   {"diagonals-of-no-rectangle", "only a rectangle has diagonals here",
                    R"(leave them out: "corners" and "runs" fix the shape by themselves)"},
                   Reader::Mark::key);
  } else if (runs) {
    read_runs(c, runs, base);
  } else if (corners) {
    read_corners(c.reader, corners, base);
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
  read_shape(c, o, node, base);
  read_legs(reader, o.find("legs"), base);
  read_partitions(reader, o.find("partitions"), base);
  read_gaps(reader, o.find("gaps"), base);
  o.finish();
  return base;
}

}  // namespace strikeoff
