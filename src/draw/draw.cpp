// SPDX-License-Identifier: MIT
#include "strikeoff/draw.h"

#include <iterator>

#include "draw/drawings.h"

namespace strikeoff {

std::vector<Drawing> drawings_of(const Plan& plan) {
  std::vector<Drawing> drawings;
  for (const auto kind : {draw::slab_plans, draw::edge_sections, draw::cut_layouts, draw::templates,
                          draw::pour_zones, draw::timelines, draw::curves}) {
    std::vector<Drawing> some = kind(plan);
    drawings.insert(drawings.end(), std::make_move_iterator(some.begin()),
                    std::make_move_iterator(some.end()));
  }
  return drawings;
}

namespace draw {

std::string title_of(const SlabPlan& slab, const std::string& words) {
  return slab.name + ": " + words;
}

}  // namespace draw
}  // namespace strikeoff
