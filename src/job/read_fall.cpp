// SPDX-License-Identifier: MIT
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Percent> slope{{0}, {0.2}, "0 % and 20 %"};

}  // namespace

void read_fall(Context& c, const Node& node, const Base& base, Slab& slab) {
  if (!node) return;
  Object o(c.reader, node, "a fall");
  constexpr auto example = R"({"percent": "1 %", "towards": "front"})";
  const auto percent = read_quantity(c.reader, o.need("percent", example), slope);
  const Node towards = o.need("towards", example);
  const auto side = towards ? read_side(c, towards, base) : std::nullopt;
  o.finish();
  if (percent && side && percent->fraction > 0) slab.fall = Fall{percent->fraction, *side};
}

}  // namespace strikeoff
