// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "strikeoff/job.h"

namespace strikeoff::test {

/// The same draws with every standard library.
class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  /// A whole number from `least` to `most`.
  int whole(int least, int most) {
    const auto span = static_cast<std::uint64_t>(most - least) + 1;
    return least + static_cast<int>(engine_() % span);
  }
  bool one_in(int n) { return whole(1, n) == 1; }

 private:
  std::mt19937_64 engine_;
};

inline Length in(double v) {
  return Length::inches(v);
}
inline Length mm(double v) {
  return Length::mm(v);
}

inline Stock board(double length_in, double width_in, double thickness_in = 0.625) {
  return {"board", "board", in(length_in), in(width_in), in(thickness_in), {}, {}};
}

/// A slab on this base, the same overhang on every side, no panel.
inline Slab slab_on(const Polygon& base, Length overhang, Length thickness) {
  Slab slab;
  slab.name = "slab";
  slab.base = base;
  slab.thickness = thickness;
  for (std::size_t k = 0; k < base.size(); ++k) {
    Side side;
    side.number = static_cast<int>(k) + 1;
    side.name = "edge " + std::to_string(side.number);
    side.overhang = overhang;
    slab.sides.push_back(side);
  }
  return slab;
}

inline void add_panel(Slab& slab, Length overhang, Length thickness, Length length = in(60),
                      Length width = in(36)) {
  slab.panel = Stock{"panel", "panel", length, width, thickness, {}, {}};
  for (Side& side : slab.sides) side.panel_overhang = overhang;
}

inline Forms forms_with(const std::vector<Stock>& boards, Length kerf, Length oversize = {}) {
  Forms forms;
  forms.strip_stock = boards;
  forms.kerf = kerf;
  forms.oversize = oversize;
  return forms;
}

/// The greenhouse potting bench: 76 x 24 in base, 1 1/8 in overhang, 1 3/4 in thick, 7/16 in panel
/// 1/2 in past the base.
inline Slab potting_bench() {
  Slab slab = slab_on(corners_of({{}, in(76), in(24)}), in(1.125), in(1.75));
  const char* names[] = {"front", "right", "back", "left"};
  for (std::size_t k = 0; k < 4; ++k) slab.sides[k].name = names[k];
  add_panel(slab, in(0.5), in(0.4375), in(52), in(34));
  return slab;
}

/// A random right-angled outline, anticlockwise: columns with random tops and bottoms, which makes
/// rectangles, L, U, T, crosses and staircases. No edge is shorter than `step`.
inline Polygon random_outline(Draw& draw, Length step) {
  const int columns = draw.whole(1, 5);
  std::vector<Length> x{Length{}}, top, bottom;
  for (int i = 0; i < columns; ++i) {
    x.push_back(x.back() + step * draw.whole(1, 4));
    top.push_back(step * draw.whole(1, 4));
    bottom.push_back(-step * draw.whole(1, 4));
  }
  Polygon all;
  for (std::size_t i = 0; i < top.size(); ++i) {
    all.push_back({x[i], bottom[i]});
    all.push_back({x[i + 1], bottom[i]});
  }
  for (std::size_t i = top.size(); i-- > 0;) {
    all.push_back({x[i + 1], top[i]});
    all.push_back({x[i], top[i]});
  }
  Polygon outline;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Point &before = all[(i + all.size() - 1) % all.size()], &here = all[i];
    // Equal neighbours leave doubled points and points on a straight line.
    std::size_t after = (i + 1) % all.size();
    if (all[after] == here) continue;
    const Point& last = outline.empty() ? before : outline.back();
    if ((last.x == here.x && here.x == all[after].x) ||
        (last.y == here.y && here.y == all[after].y)) {
      continue;
    }
    outline.push_back(here);
  }
  return outline;
}

}  // namespace strikeoff::test
