// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "core/outlines.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> corner_radius{Length{}, Length::m(1), "0 mm and 1 m (39 in)"};
/// Less concrete than this beside an opening is no rail but a broken edge. Assumption.
constexpr Length least_rail = Length::mm(1);

Rectangle grown(const Rectangle& r, Length by) {
  return {{r.at.x - by, r.at.y - by}, r.length + 2 * by, r.depth + 2 * by};
}

/// The opening's shape as written, from the lower left of the outline; nothing when wrong.
std::optional<Rectangle> read_shape(Context& c, Object& o) {
  const Node circle = o.find("circle");
  if (circle) {
    c.reader.error(circle.pointer,
                   {"not-planned", "a round opening is not planned yet",
                    "give the \"rectangle\" around it, and cut the round form block yourself"},
                   Reader::Mark::key);
    (void)o.find("rectangle");
    (void)o.find("at");
    return std::nullopt;
  }
  constexpr auto example = R"("rectangle": {"length": "20 in", "depth": "15 in"})";
  const Node node = o.need("rectangle", example);
  std::optional<Length> length, depth;
  if (node) {
    Object rectangle(c.reader, node, "a rectangle");
    length = read_quantity(c.reader, rectangle.need("length", example), any_length);
    depth = read_quantity(c.reader, rectangle.need("depth", example), any_length);
    rectangle.finish();
  }
  const Node at_node = o.need("at", R"("at": ["30 in", "6 in"], its lower left corner)");
  std::optional<Point> at;
  if (at_node) at = read_point(c.reader, at_node);
  if (!at || !length || !depth) return std::nullopt;
  return Rectangle{*at, *length, *depth};
}

void check_place(Context& c, const Node& node, const Opening& opening, const Slab& slab) {
  const Polygon outline = sharp_outline(slab);
  const Point origin = bounding_box(outline).at;
  const auto in_frame = [&](const Rectangle& r) {
    return Rectangle{{origin.x + r.at.x, origin.y + r.at.y}, r.length, r.depth};
  };
  const Rectangle place = in_frame(opening.at);
  const char* help = "\"at\" is its lower left corner, from the lower left of the slab's outline";
  if (!contains(outline, place)) {
    c.reader.error(node.pointer,
                   {"opening-outside",
                    fmt::format("{} reaches outside the slab", in_quotes(opening.name)), help});
    return;
  }
  if (!contains(outline, grown(place, least_rail))) {
    c.reader.error(node.pointer, {"opening-at-edge",
                                  fmt::format("{} leaves no concrete at the slab's edge",
                                              in_quotes(opening.name)),
                                  "draw an open notch with the base's \"corners\""});
    return;
  }
  if (opening.through && slab.panel && !contains(panel_outline(slab), place)) {
    c.reader.error(node.pointer,
                   {"opening-outside-panel",
                    fmt::format("{} goes through the panel but reaches past its edge",
                                in_quotes(opening.name)),
                    "move it inwards; or \"through\": false where the panel stays whole"});
    return;
  }
  for (const Opening& other : slab.openings) {
    if (overlaps(grown(place, least_rail), in_frame(other.at))) {
      c.reader.error(node.pointer, {"openings-overlap",
                                    fmt::format("{} runs into {}", in_quotes(opening.name),
                                                in_quotes(other.name)),
                                    "move one of them, or make them one"});
      return;
    }
  }
}

}  // namespace

void read_openings(Context& c, const Node& node, Slab& slab, bool shape_is_good) {
  const auto entries = read_list(c.reader, node, "openings");
  if (!entries) return;
  for (const Node& entry : *entries) {
    Object o(c.reader, entry, "an opening");
    const std::size_t before = c.reader.errors();
    Opening opening;
    opening.name = o.text("name").value_or(
        entries->size() == 1 ? "opening"
                             : fmt::format("opening {}", &entry - &entries->front() + 1));
    const auto shape = o.is_object() ? read_shape(c, o) : std::nullopt;
    if (shape) opening.at = *shape;
    const auto through = o.flag("through");
    opening.through = through.value_or(true);
    const Node radius = o.find("corner_radius");
    if (read_quantity(c.reader, radius, corner_radius)) {
      c.reader.not_planned(radius, "a rounded opening is not planned yet: it is planned square");
    }
    o.finish();
    if (!shape || c.reader.errors() != before) continue;
    if (!through && slab.panel) {
      c.reader.assume(weight_opening, o.path("through"), "true",
                      "the opening is cut through the panel too (assumption)");
    }
    if (shape_is_good) check_place(c, entry, opening, slab);
    slab.openings.push_back(std::move(opening));
  }
}

}  // namespace strikeoff
