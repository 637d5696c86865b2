// SPDX-License-Identifier: MIT
#include <initializer_list>

#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Length> small_length{Length{}, Length::m(1), "0 mm and 1 m (39 in)"};
constexpr Range<Length> level_reading{Length{}, Length::m(5), "0 mm and 5 m (16 ft)"};
constexpr Range<Percent> slope{{0}, {0.2}, "0 % and 20 %"};

void read_levels(Context& c, const Node& node) {
  const auto readings = read_list(c.reader, node, "level readings");
  if (!readings) return;
  constexpr auto example = R"({"at": ["0 in", "0 in"], "low": "3 mm"})";
  for (const Node& reading : *readings) {
    Object o(c.reader, reading, "a level reading");
    const Node at = o.need("at", example);
    if (at) (void)read_point(c.reader, at);
    (void)read_quantity(c.reader, o.need("low", example), level_reading);
    o.finish();
  }
  c.reader.not_planned(node, "level readings are not planned yet: the base is planned level");
}

void read_sides(Context& c, const Node& node, const Base& base) {
  const auto sides = read_list(c.reader, node, "sides");
  if (!sides) return;
  for (const Node& side : *sides) (void)read_side(c, side, base);
}

void read_fall(Context& c, const Node& node, const Base& base) {
  if (!node) return;
  Object o(c.reader, node, "a fall");
  constexpr auto example = R"({"percent": "1 %", "towards": "front"})";
  (void)read_quantity(c.reader, o.need("percent", example), slope);
  const Node towards = o.need("towards", example);
  if (towards) (void)read_side(c, towards, base);
  o.finish();
  c.reader.not_planned(node, "a fall is not planned yet: the top is planned level");
}

void read_apron(Context& c, const Node& node, const Base& base) {
  if (!node) return;
  Object o(c.reader, node, "an apron");
  (void)read_quantity(c.reader, o.need("depth", R"({"depth": "3 in", "sides": ["front"]})"),
                      small_length);
  read_sides(c, o.find("sides"), base);
  o.finish();
  c.reader.not_planned(node, "an apron is not planned yet: the slab is planned without it");
}

void read_reinforcement(Context& c, const Node& node, const Base& base) {
  if (!node) return;
  Object o(c.reader, node, "reinforcement");
  enum class Kind { none, mesh, bar, fiber };
  const auto kind = read_choice<Kind>(
      c.reader, o.need("kind", R"("kind": "none", "mesh", "bar" or "fiber")"),
      {{"none", Kind::none}, {"mesh", Kind::mesh}, {"bar", Kind::bar}, {"fiber", Kind::fiber}});
  (void)o.quantity("diameter", small_length);
  (void)o.quantity("spacing", small_length);
  (void)o.quantity("cover", small_length);
  read_sides(c, o.find("brackets"), base);
  o.finish();
  if (kind && *kind != Kind::none) {
    c.reader.not_planned(node, "reinforcement is not planned yet: neither its room nor its price");
  }
}

}  // namespace

void read_unplanned_slab_keys(Context& c, Object& o, const Base& base) {
  read_levels(c, o.find("levels"));
  read_fall(c, o.find("fall"), base);
  read_apron(c, o.find("apron"), base);
  read_reinforcement(c, o.find("reinforcement"), base);
  const Node brackets = o.find("brackets");
  if (brackets) {
    read_sides(c, brackets, base);
    c.reader.not_planned(brackets, "brackets under an overhang are not planned yet");
  }
}

}  // namespace strikeoff
