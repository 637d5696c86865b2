// SPDX-License-Identifier: MIT
#include "slab/slices.h"

#include <algorithm>
#include <map>
#include <utility>

#include "slab/line_cut.h"

namespace strikeoff {
namespace {

using Interval = std::pair<Length, Length>;

Length right(const Rectangle& r) {
  return r.at.x + r.length;
}

void find_contacts(Slices& slices) {
  std::map<Length, std::vector<std::size_t>> by_top;
  for (std::size_t i = 0; i < slices.rectangles.size(); ++i) {
    const Rectangle& r = slices.rectangles[i];
    by_top[r.at.y + r.depth].push_back(i);
  }
  for (std::size_t above = 0; above < slices.rectangles.size(); ++above) {
    const Rectangle& high = slices.rectangles[above];
    const auto touching = by_top.find(high.at.y);
    if (touching == by_top.end()) continue;
    for (const std::size_t below : touching->second) {
      const Rectangle& low = slices.rectangles[below];
      const Length overlap = std::min(right(low), right(high)) - std::max(low.at.x, high.at.x);
      if (overlap > Length{}) slices.contacts.push_back({below, above, overlap});
    }
  }
}

}  // namespace

Slices slice(const Polygon& polygon) {
  std::vector<Length> levels;
  for (const Point& p : polygon) levels.push_back(p.y);
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());

  Slices slices;
  std::map<Interval, std::size_t> open;  // slices that reach the present level
  for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
    std::map<Interval, std::size_t> still_open;
    for (const LineSpan& span : inside(polygon, levels[i])) {
      const Interval x{span.from, span.to};
      const auto known = open.find(x);
      if (known == open.end()) {
        still_open[x] = slices.rectangles.size();
        slices.rectangles.push_back(
            {{span.from, levels[i]}, span.to - span.from, levels[i + 1] - levels[i]});
      } else {
        still_open.insert(*known);
        Rectangle& grown = slices.rectangles[known->second];
        grown.depth = levels[i + 1] - grown.at.y;
      }
    }
    open = std::move(still_open);
  }
  find_contacts(slices);
  return slices;
}

std::vector<Rectangle> part_slices(const Slices& slices, Length gap) {
  const auto& whole = slices.rectangles;
  std::vector<bool> lower_top(whole.size()), raise_bottom(whole.size());
  const auto covered = [&](std::size_t inner, std::size_t outer) {
    return whole[outer].at.x <= whole[inner].at.x && right(whole[inner]) <= right(whole[outer]);
  };
  for (const Contact& c : slices.contacts) {
    if (!covered(c.above, c.below)) lower_top[c.below] = true;
  }
  for (const Contact& c : slices.contacts) {
    if (!lower_top[c.below]) raise_bottom[c.above] = true;
  }
  std::vector<Rectangle> parted = whole;
  for (std::size_t i = 0; i < parted.size(); ++i) {
    if (raise_bottom[i]) parted[i].at.y += gap;
    parted[i].depth -= gap * (int{lower_top[i]} + int{raise_bottom[i]});
  }
  return parted;
}

}  // namespace strikeoff
