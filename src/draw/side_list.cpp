// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "core/format.h"
#include "draw/drawings.h"
#include "draw/paper.h"

namespace strikeoff::draw {
namespace {

constexpr TextStyle style{2.8};
constexpr double row = 4.2;

std::string words_of(const SlabPlan& slab, std::size_t k, Units units) {
  const SidePlan& side = slab.sides[k];
  const Point &from = slab.sharp[k], &to = slab.sharp[(k + 1) % slab.sharp.size()];
  const Point zero = bounding_box(slab.sharp).at;
  std::string words =
      fmt::format("{}: {} from ({}, {})", side.name, both_units(distance(from, Polygon{to}), units),
                  both_units(from.x - zero.x, units), both_units(from.y - zero.y, units));
  if (side.wall) return words + "; wall";
  words += "; " + side.edge_marks;
  if (!side.soffit_marks.empty()) words += " on " + side.soffit_marks;
  if (!slab.on_ground) words += ", overhang " + both_units(side.overhang, units);
  if (side.bracket) words += ", brackets";
  return words;
}

}  // namespace

std::vector<Drawing> side_lists(const Plan& plan, const SlabPlan& slab, std::size_t number) {
  std::vector<Drawing> pages;
  std::vector<std::string> lines;
  double widest = 0;
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    lines.push_back(words_of(slab, k, plan.units));
    widest = std::max(widest, text_width(lines.back(), style));
  }
  for (std::size_t next = 0; next < lines.size();) {
    const std::string name = pages.empty()
                                 ? fmt::format("slab-{}-sides", number)
                                 : fmt::format("slab-{}-sides-{}", number, pages.size() + 1);
    const std::string title = title_of(slab, "its sides in words");
    Paper paper(name, title, plan.name, plan.units,
                "Length, place and form strips of every side of the slab");
    const PaperBox room = paper.room();
    const bool two = widest < room.width / 2 - 4;
    const auto rows = static_cast<std::size_t>((room.height - 4) / row);
    for (std::size_t column = 0; column < (two ? 2U : 1U); ++column) {
      for (std::size_t k = 0; k < rows && next < lines.size(); ++k, ++next) {
        paper.svg.text({room.x + 2 + room.width / 2 * static_cast<double>(column),
                        room.y + row * static_cast<double>(k + 1)},
                       fitted(lines[next], two ? room.width / 2 - 4 : room.width - 4, style),
                       style);
      }
    }
    paper.notes(
        {"In brackets where the side begins: from the left and from the front of the whole "
         "slab. Anticlockwise, seen from above."});
    pages.push_back({name, title, paper.svg.str()});
  }
  return pages;
}

}  // namespace strikeoff::draw
