// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include "core/format.h"
#include "job/read_shape.h"

namespace strikeoff {
namespace {

constexpr double degree = std::numbers::pi / 180;
/// Smaller turns are rounding: 1/16 in over 100 m turns by 16 times this.
constexpr double least_turn = 1e-6;
/// No form strip ends in a sharper point, and concrete there breaks off. Assumption.
constexpr double least_angle = 15 * degree;

constexpr OutlineWords corner_words{
    "edge", "edge k runs from corner k to the next; list the corners in order round the base",
    "leave it out"};

bool enough_corners(Reader& reader, const Node& node, std::size_t n) {
  if (n >= 3 && n <= most_corners) return true;
  if (n < 3) {
    reader.error(node.pointer, {"too-few-corners", "an outline has at least three corners", ""});
  } else {
    reader.error(node.pointer,
                 {"too-many-corners",
                  fmt::format("an outline has at most {} corners, here are {}", most_corners, n),
                  "leave out those that change less than a tape can show"});
  }
  return false;
}

bool edges_are_long_enough(Reader& reader, const Node& node, const Polygon& corners) {
  const std::size_t n = corners.size();
  for (std::size_t k = 0; k < n; ++k) {
    if (edge_length(corners, k) >= any_length.least) continue;
    const std::size_t next = (k + 1) % n;
    reader.error(
        pointer_to(node.pointer, next),
        {"short-edge", fmt::format("corners {} and {} are less than 1 mm apart", k + 1, next + 1),
         next == 0 ? "the first corner is not repeated at the end" : "leave one of them out"});
    return false;
  }
  return true;
}

}  // namespace

std::optional<TextError> corner_problem(const Polygon& polygon, std::size_t corner,
                                        const char* straight_mend) {
  const double turn = turn_at(polygon, corner).radians, left = std::numbers::pi - std::abs(turn);
  if (std::abs(turn) < least_turn) {
    return TextError{
        "straight-corner",
        fmt::format("corner {} lies on the straight line between its neighbours", corner + 1),
        straight_mend};
  }
  if (left >= least_angle) return std::nullopt;
  return TextError{
      "sharp-corner",
      fmt::format("corner {} is a {} of {} degrees; under 15 degrees it cannot be formed",
                  corner + 1, turn > 0 ? "point" : "slit", show_number(left / degree, 1)),
      turn > 0 ? "cut its tip off: two corners an inch (25 mm) or more apart instead of one"
               : "end it with two corners an inch (25 mm) or more apart, or leave the slit out"};
}

bool is_outline(Reader& reader, const Node& node, const Polygon& corners,
                const OutlineWords& words) {
  if (!enough_corners(reader, node, corners.size()) ||
      !edges_are_long_enough(reader, node, corners)) {
    return false;
  }
  if (const auto contact = self_contact(corners)) {
    reader.error(pointer_to(node.pointer, contact->second),
                 {"outline-touches-itself",
                  fmt::format("{} {} of the outline meets {} {}", words.edge, contact->second + 1,
                              words.edge, contact->first + 1),
                  words.in_order});
    return false;
  }
  // The direction of the whole decides which corners are points and which are slits.
  Polygon turned = corners;
  const bool clockwise = signed_area(corners) < Area{};
  if (clockwise)
    std::transform(turned.begin(), turned.end(), turned.begin(), [](const Point& p) {
      return Point{-p.x, p.y};
    });
  for (std::size_t k = 0; k < corners.size(); ++k) {
    const auto problem = corner_problem(turned, k, words.straight_mend);
    if (!problem) continue;
    reader.error(pointer_to(node.pointer, k), *problem);
    return false;
  }
  return true;
}

void set_outline(Base& base, Polygon corners) {
  const int n = static_cast<int>(corners.size());
  const bool clockwise = signed_area(corners) < Area{};
  if (clockwise) std::reverse(corners.begin() + 1, corners.end());
  base.polygon = std::move(corners);
  for (int k = 0; k < n; ++k) {
    const int number = clockwise ? n - k : k + 1;
    const int corner = clockwise && k > 0 ? n + 1 - k : k + 1;
    Side side;
    side.number = number;
    side.name = fmt::format("edge {}", number);
    side.corner = corner;
    base.sides.push_back(std::move(side));
  }
}

void read_corners(Reader& reader, const Node& node, Base& base) {
  const auto entries = read_list(reader, node, "corners [x, y]");
  if (!entries) return;
  Polygon corners;
  for (const Node& entry : *entries) {
    if (const auto point = read_point(reader, entry)) corners.push_back(*point);
  }
  if (corners.size() != entries->size() || !is_outline(reader, node, corners, corner_words)) return;
  set_outline(base, std::move(corners));
}

}  // namespace strikeoff
