// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> bar_diameter{Length::mm(1), Length::mm(40),
                                     "1 mm (1/16 in) and 40 mm (1 1/2 in)"};
constexpr Range<Length> bar_spacing{Length::mm(20), Length::m(1), "20 mm (3/4 in) and 1 m (39 in)"};
constexpr Range<Length> bar_cover{Length{}, Length::mm(500), "0 mm and 500 mm (20 in)"};

/// Sizes of bars where there are none.
void check_has_bars(Reader& reader, const Object& o, const Reinforcement& given) {
  using Kind = ReinforcementKind;
  if (given.kind == Kind::mesh || given.kind == Kind::bar) return;
  const char* key = given.diameter ? "diameter" : given.spacing ? "spacing" : "cover";
  if (!given.diameter && !given.spacing && !given.cover) return;
  reader.error(o.path(key),
               {"size-of-no-bars",
                given.kind == Kind::fiber ? "fiber has no bars that this could be the size of"
                                          : "without reinforcement there are no bars to size",
                R"("kind": "mesh" or "bar" has them; leave this out for any other)"},
               Reader::Mark::key);
}

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
  using Kind = ReinforcementKind;
  const auto kind = read_choice<Kind>(
      c.reader, o.need("kind", R"("kind": "none", "mesh", "bar" or "fiber")"),
      {{"none", Kind::none}, {"mesh", Kind::mesh}, {"bar", Kind::bar}, {"fiber", Kind::fiber}});
  Reinforcement& given = slab.reinforcement;
  given.kind = kind.value_or(Kind::none);
  given.diameter = o.quantity("diameter", bar_diameter);
  given.spacing = o.quantity("spacing", bar_spacing);
  given.cover = o.quantity("cover", bar_cover);
  if (kind) check_has_bars(c.reader, o, given);
  read_brackets(c, o.find("brackets"), base, slab);
  o.finish();
}

}  // namespace strikeoff
