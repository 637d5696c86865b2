// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>

#include "job/read_parts.h"

namespace strikeoff {

std::vector<ListedSide> read_side_list(Context& c, const Node& node, const Base& base) {
  std::vector<ListedSide> sides;
  const auto entries = read_list(c.reader, node, "sides");
  if (!entries) return sides;
  for (const Node& entry : *entries) {
    const auto k = read_side(c, entry, base);
    if (!k) continue;
    if (std::any_of(sides.begin(), sides.end(),
                    [&](const ListedSide& side) { return side.index == *k; })) {
      c.reader.error(entry.pointer,
                     {"side-given-twice",
                      fmt::format("the side {} stands here twice", in_quotes(base.sides[*k].name)),
                      "keep one"});
    } else {
      sides.push_back({*k, entry.pointer});
    }
  }
  return sides;
}

std::optional<TextError> without_overhang(const Side& side, const char* code, const char* why) {
  if (!side.wall && side.overhang > Length{}) return std::nullopt;
  return TextError{code,
                   fmt::format("the side {} {}: {}", in_quotes(side.name),
                               side.wall ? "meets a wall" : "has no overhang", why),
                   side.wall ? "leave it out, or take it out of \"walls\""
                             : "leave it out, or give that side its \"overhang\""};
}

}  // namespace strikeoff
