// SPDX-License-Identifier: MIT
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> small_length{Length{}, Length::m(1), "0 mm and 1 m (39 in)"};

void read_corner_treatment(Context& c, const Node& node, const Base& base) {
  const auto corners = read_list(c.reader, node, "corners");
  if (!corners) return;
  const int most = base.sides.empty() ? most_entries : static_cast<int>(base.sides.size());
  for (const Node& corner : *corners) {
    Object o(c.reader, corner, "a corner treatment");
    (void)read_count(c.reader, o.need("corner", R"({"corner": 1, "radius": "1 in"})"),
                     {1, most, "1 and the number of corners"});
    (void)o.quantity("radius", small_length);
    (void)o.quantity("clip", small_length);
    o.finish();
  }
  c.reader.not_planned(node,
                       "rounded or clipped corners are not planned yet: they are planned sharp");
}

}  // namespace

void read_unplanned_slab_keys(Context& c, Object& o, const Base& base) {
  read_corner_treatment(c, o.find("corner_treatment"), base);
}

}  // namespace strikeoff
