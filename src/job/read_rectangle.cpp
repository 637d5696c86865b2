// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/format.h"
#include "core/vec.h"
#include "job/read_shape.h"

namespace strikeoff {
namespace {

/// How far the second diagonal may be from what the first asks for. Assumption.
constexpr Length diagonal_allowed = Length::mm(3);
/// A tape read to 1/16 in or 1 mm is off by less than this.
constexpr Length tape_rounding = Length::mm(1);

struct Diagonals {
  Length one_three, two_four;
  Node node;
};

/// "76 mm" beside "24 in" is a job with two tapes, or a slip. The plan says how it took it.
void remark_on_units(Context& c, Object& o, Length length, Length depth) {
  constexpr double far_apart = 10;  // assumption
  if (std::max(length, depth) / std::min(length, depth) <= far_apart) return;
  const auto text = [&](const char* key) { return *o.find(key).text(); };
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

std::optional<Diagonals> read_diagonals(Reader& reader, const Node& node) {
  const auto two = read_list(reader, node, "two diagonals");
  if (!two) return std::nullopt;
  if (two->size() != 2) {
    reader.error(node.pointer, {"not-a-pair", "two diagonals are needed here",
                                "corner 1 to 3, then corner 2 to 4"});
    return std::nullopt;
  }
  const auto one_three = read_quantity(reader, (*two)[0], any_length);
  const auto two_four = read_quantity(reader, (*two)[1], any_length);
  if (!one_three || !two_four) return std::nullopt;
  return Diagonals{*one_three, *two_four, node};
}

Length root(double mm2) {
  return Length::mm(std::sqrt(mm2));
}

Length apart(Length a, Length b) {
  return a > b ? a - b : b - a;
}

double square(Length length) {
  return length.in_mm() * length.in_mm();
}

/// The parallelogram with these sides and this first diagonal: corner 4 lies at (x, y) where
/// (L + x)^2 + y^2 = a^2 and x^2 + y^2 = D^2. Reports sides that do not reach.
std::optional<Polygon> parallelogram(Context& c, const Diagonals& d, Length length, Length depth) {
  const Length x =
      Length::mm((square(d.one_three) - square(length) - square(depth)) / (2 * length.in_mm()));
  if (x >= depth || x <= -depth) {
    const Length right = root(square(length) + square(depth));
    c.reader.error(pointer_to(d.node.pointer, 0),
                   {"impossible-diagonal",
                    fmt::format("sides of {} and {} have no diagonal of {}, however askew; square, "
                                "it is {}",
                                show(length, c.units), show(depth, c.units),
                                show(d.one_three, c.units), show(right, c.units)),
                    "measure it again, and length and depth"});
    return std::nullopt;
  }
  const Length y = root(square(depth) - square(x));
  return Polygon{{}, {length, {}}, {length + x, y}, {x, y}};
}

/// The corners the sides and diagonals fix; empty after reporting that they do not go together.
Polygon out_of_square(Context& c, const Diagonals& d, Length length, Length depth, Base& base) {
  Polygon corners = corners_of({{}, length, depth});
  const Length right = root(square(length) + square(depth));
  if (d.one_three == d.two_four && apart(d.one_three, right) <= tape_rounding) {
    base.diagonal = Misfit{apart(d.two_four, right), diagonal_allowed};
    return corners;
  }
  const auto found = parallelogram(c, d, length, depth);
  if (!found) return {};
  corners = *found;
  const Length should_be = distance(corners[1], corners[3]);
  const Length by = apart(d.two_four, should_be);
  if (by > diagonal_allowed) {
    c.reader.error(pointer_to(d.node.pointer, 1),
                   {"diagonals-disagree",
                    fmt::format("with {} from corner 1 to 3, corner 2 to 4 must be {}, is {}",
                                show(d.one_three, c.units), show(should_be, c.units),
                                show(d.two_four, c.units)),
                    "measure both again, and length and depth; where opposite sides differ, walk "
                    "round it with \"runs\", or give its \"corners\""});
    return {};
  }
  // Corners 1 and 3 are equal, and 2 and 4.
  for (const std::size_t k : {0U, 1U}) {
    if (const auto problem = corner_problem(corners, k, "")) {
      c.reader.error(d.node.pointer, *problem, Reader::Mark::key);
      return {};
    }
  }
  base.diagonal = Misfit{by, diagonal_allowed};
  return corners;
}

}  // namespace

void read_rectangle(Context& c, const Node& node, const Node& beside, Base& base) {
  Object o(c.reader, node, "a rectangle");
  const auto length = read_quantity(c.reader, o.need("length", R"("length": "76 in")"), any_length);
  const auto depth = read_quantity(c.reader, o.need("depth", R"("depth": "24 in")"), any_length);
  const Node inside = o.find("diagonals");
  const std::size_t before = c.reader.errors();
  if (inside && beside) {
    c.reader.error(beside.pointer,
                   {"diagonals-given-twice", "the rectangle already has diagonals", "keep one"},
                   Reader::Mark::key);
  }
  const auto diagonals = read_diagonals(c.reader, inside ? inside : beside);
  o.finish();
  base.rectangle = true;
  if (!length || !depth) return;
  remark_on_units(c, o, *length, *depth);
  if (c.reader.errors() != before) return;
  base.polygon = diagonals ? out_of_square(c, *diagonals, *length, *depth, base)
                           : corners_of({{}, *length, *depth});
  for (std::size_t k = 0; k < base.polygon.size(); ++k) {
    Side side;
    side.number = side.corner = static_cast<int>(k) + 1;
    side.name = rectangle_sides[k];
    base.sides.push_back(std::move(side));
  }
}

}  // namespace strikeoff
