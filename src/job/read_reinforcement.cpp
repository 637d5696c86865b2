// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> small_length{Length{}, Length::m(1), "0 mm and 1 m (39 in)"};

}  // namespace

void read_brackets(Context& c, const Node& node, const Base& base, Slab& slab) {
  for (const ListedSide& listed : read_side_list(c, node, base)) {
    Side& side = slab.sides[listed.index];
    if (const auto error = without_overhang(side, "bracket-without-overhang",
                                            "there is nothing for brackets to carry")) {
      c.reader.error(listed.pointer, *error);
    } else if (side.bracket) {
      c.reader.error(
          listed.pointer,
          {"side-given-twice",
           fmt::format("the side {} already has brackets", in_quotes(side.name)), "keep one"});
    }
    side.bracket = true;
  }
}

void read_reinforcement(Context& c, const Node& node, const Base& base, Slab& slab) {
  if (!node) return;
  Object o(c.reader, node, "reinforcement");
  enum class Kind { none, mesh, bar, fiber };
  const auto kind = read_choice<Kind>(
      c.reader, o.need("kind", R"("kind": "none", "mesh", "bar" or "fiber")"),
      {{"none", Kind::none}, {"mesh", Kind::mesh}, {"bar", Kind::bar}, {"fiber", Kind::fiber}});
  (void)o.quantity("diameter", small_length);
  (void)o.quantity("spacing", small_length);
  (void)o.quantity("cover", small_length);
  read_brackets(c, o.find("brackets"), base, slab);
  o.finish();
  if (kind && *kind != Kind::none) {
    c.reader.not_planned(node, "reinforcement is not planned yet: neither its room nor its price");
  }
}

}  // namespace strikeoff
