// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "core/outlines.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> corner_radius{Length{}, Length::m(50), "0 mm and 50 m (164 ft)"};
/// Less concrete than this beside an opening is no rail but a broken edge. Assumption.
constexpr Length least_rail = Length::mm(1);
/// Far below what a saw can show, far above rounding.
constexpr Length hair = Length::mm(1e-6);
/// More in one slab is a slip, or a sieve. Assumption.
constexpr std::size_t most_openings = 100;

/// An opening where it lies, in the base frame: all places within `radius` of its `core`, which
/// has no length or depth where the opening is round.
struct Place {
  Rectangle core;
  Length radius;
};

Place place_of(const Opening& opening, const Point& origin) {
  const Length r = opening.corner_radius;
  return {{{origin.x + opening.at.at.x + r, origin.y + opening.at.at.y + r},
           opening.at.length - 2 * r,
           opening.at.depth - 2 * r},
          r};
}

/// True when the place lies inside the outline and this far from it.
bool is_inside(const Polygon& outline, const Place& place, Length from_edge) {
  const Length reach = place.radius + from_edge;
  if (reach == Length{}) return contains(outline, place.core);
  return contains(outline, place.core.at) &&
         distance(corners_of(place.core), outline) >= reach - hair;
}

bool run_together(const Place& a, const Place& b) {
  const Polygon one = corners_of(a.core), other = corners_of(b.core);
  return contains(one, b.core.at) || contains(other, a.core.at) ||
         distance(one, other) < a.radius + b.radius + least_rail - hair;
}

/// Where the openings of one slab may lie.
struct Room {
  Polygon edge, panel, inside_aprons;
  Point origin;  // of the openings' frame

  Room(const Context& c, const Slab& slab) {
    const Outline outline = slab_edge(slab);
    edge = chords(outline, drawn_within);
    origin = bounding_box(outline).at;
    if (slab.panel) panel = panel_outline(slab);
    if (has_apron(slab) && c.strip_thickness) {
      inside_aprons = strikeoff::inside_aprons(slab, *c.strip_thickness);
    }
  }
};

/// What is wrong with the place of the next opening, if anything.
std::optional<TextError> wrong_place(const Opening& opening, const Room& room, const Slab& slab) {
  const Place place = place_of(opening, room.origin);
  const std::string name = in_quotes(opening.name);
  if (!is_inside(room.edge, place, Length{})) {
    return TextError{"opening-outside", fmt::format("{} reaches outside the slab", name),
                     "\"at\" is its lower left corner, or a circle's centre, from the lower left "
                     "of the slab's outline"};
  }
  if (!is_inside(room.edge, place, least_rail)) {
    return TextError{"opening-at-edge",
                     fmt::format("{} leaves no concrete at the slab's edge", name),
                     "draw an open notch with the base's \"corners\""};
  }
  if (opening.through && slab.panel && !is_inside(room.panel, place, Length{})) {
    return TextError{"opening-outside-panel",
                     fmt::format("{} goes through the panel but reaches past its edge", name),
                     "move it inwards; or \"through\": false where the panel stays whole"};
  }
  if (!room.inside_aprons.empty() && !is_inside(room.inside_aprons, place, Length{})) {
    return TextError{"opening-over-apron", fmt::format("{} lies over an apron", name),
                     "move it inwards, or leave that side out of the apron's \"sides\""};
  }
  for (const Opening& other : slab.openings) {
    if (!run_together(place, place_of(other, room.origin))) continue;
    return TextError{"openings-overlap",
                     fmt::format("{} runs into {}", name, in_quotes(other.name)),
                     "move one of them, or make them one"};
  }
  return std::nullopt;
}

/// The circle's box, rounded by half its side.
void read_circle(Context& c, const Node& circle, const std::optional<Point>& centre,
                 const Node& radius, Opening& opening) {
  const auto diameter = read_quantity(c.reader, circle, any_length);
  if (radius) {
    c.reader.error(
        radius.pointer,
        {"two-shapes", "a circle has no corners to round", "leave \"corner_radius\" out"},
        Reader::Mark::key);
  }
  if (!diameter || !centre) return;
  const Length half = *diameter / 2;
  opening.at = {{centre->x - half, centre->y - half}, *diameter, *diameter};
  opening.corner_radius = half;
}

void read_rounded_rectangle(Context& c, const Node& node, const std::optional<Point>& at,
                            const Node& radius_node, const char* example, Opening& opening) {
  const auto size = read_rectangle_size(c.reader, node, example);
  const auto radius = read_quantity(c.reader, radius_node, corner_radius);
  if (!size || !at) return;
  opening.at = {*at, size->first, size->second};
  opening.corner_radius = radius.value_or(Length{});
  if (opening.corner_radius > std::min(size->first, size->second) / 2) {
    c.reader.error(
        radius_node.pointer,
        {"radius-too-large", "the corners are rounded by more than half the shorter side",
         "give a smaller radius, or a \"circle\" by its diameter"});
  }
}

/// Reads the opening's shape and place as written, from the lower left of the outline.
void read_shape(Context& c, Object& o, Opening& opening) {
  constexpr auto example = R"("rectangle": {"length": "20 in", "depth": "15 in"})";
  const Node circle = o.find("circle");
  const Node rectangle = circle ? o.find("rectangle") : o.need("rectangle", example);
  const Node at_node = o.need("at", circle ? R"("at": ["30 in", "12 in"], its centre)"
                                           : R"("at": ["30 in", "6 in"], its lower left corner)");
  const Node radius = o.find("corner_radius");
  const auto at = at_node ? read_point(c.reader, at_node) : std::nullopt;
  if (circle && rectangle) {
    c.reader.error(circle.pointer,
                   {"two-shapes", "an opening has one shape, here are two", "keep one of them"},
                   Reader::Mark::key);
  } else if (circle) {
    read_circle(c, circle, at, radius, opening);
  } else {
    read_rounded_rectangle(c, rectangle, at, radius, example, opening);
  }
}

/// Reads one opening; nothing when it is wrong.
std::optional<Opening> read_opening(Context& c, const Node& entry, const std::string& usual_name,
                                    const Slab& slab) {
  Object o(c.reader, entry, "an opening");
  if (!o.is_object()) return std::nullopt;
  const std::size_t before = c.reader.errors();
  Opening opening;
  opening.name = o.text("name").value_or(usual_name);
  read_shape(c, o, opening);
  const auto through = o.flag("through");
  opening.through = through.value_or(true);
  o.finish();
  if (c.reader.errors() != before) return std::nullopt;
  if (!through && slab.panel) {
    c.reader.assume(weight_opening, o.path("through"), "true",
                    "the opening is cut through the panel too (assumption)");
  }
  return opening;
}

}  // namespace

std::optional<std::pair<Length, Length>> read_rectangle_size(Reader& reader, const Node& node,
                                                             const std::string& example) {
  if (!node) return std::nullopt;
  Object o(reader, node, "a rectangle");
  const auto length = read_quantity(reader, o.need("length", example), any_length);
  const auto depth = read_quantity(reader, o.need("depth", example), any_length);
  o.finish();
  if (!length || !depth) return std::nullopt;
  return std::pair{*length, *depth};
}

void read_openings(Context& c, const Node& node, Slab& slab, bool shape_is_good) {
  const auto entries = read_list(c.reader, node, "openings");
  if (!entries) return;
  if (entries->size() > most_openings) {
    c.reader.error(
        node.pointer,
        {"list-too-long",
         fmt::format("a slab has at most {} openings, here are {}", most_openings, entries->size()),
         "cast it as several slabs"},
        Reader::Mark::key);
    return;
  }
  const auto room = shape_is_good ? std::optional<Room>(std::in_place, c, slab) : std::nullopt;
  for (std::size_t i = 0; i < entries->size(); ++i) {
    const Node& entry = (*entries)[i];
    auto opening = read_opening(
        c, entry, entries->size() == 1 ? "opening" : fmt::format("opening {}", i + 1), slab);
    if (!opening) continue;
    const auto wrong = room ? wrong_place(*opening, *room, slab) : std::nullopt;
    if (wrong) c.reader.error(entry.pointer, *wrong);
    slab.openings.push_back(std::move(*opening));
  }
}

}  // namespace strikeoff
