// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "job/read_shape.h"
#include "job/suggest.h"

namespace strikeoff {
namespace {

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

std::optional<std::size_t> read_side(Context& c, const Node& node, const Base& base) {
  std::string name;
  if (node.text()) {
    name = *node.text();
  } else if (node.json->is_whole()) {
    name = written(*node.json);
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
  if (!node.json->object()) {
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
  if (edges && !edges.json->object()) {
    wrong_kind(c.reader, edges, "an object", R"(as in {"1": "1 in", "3": "0 in"})");
  } else if (edges) {
    for (const auto& [name, value] : *edges.json->object()) {
      const Node edge{&value, pointer_to(edges.pointer, name)};
      set_side(c, edge, base, name, read_quantity(c.reader, edge, range), sides);
    }
  }
  o.finish();
  return sides;
}

}  // namespace strikeoff
