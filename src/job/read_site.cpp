// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include "core/format.h"
#include "job/read_parts.h"

namespace strikeoff {
namespace {

constexpr Range<Pressure> base_load{kilopascals(0.01), megapascals(10),
                                    "0.01 kPa (0.2 psf) and 10 MPa"};
constexpr Range<Mass> support_load{kilograms(1), kilograms(1e5),
                                   "1 kg (2.2 lb) and 100 t (220000 lb)"};
constexpr Range<Mass> lift{kilograms(0.1), kilograms(1000), "0.1 kg and 1000 kg (2200 lb)"};
constexpr Temperature tap_water = Temperature::celsius(15);  // assumption

/// Of one bag's water, which it is a part of.
Mass read_ice(Context& c, const Node& node, const Mix& mix) {
  constexpr Range<Mass> any_ice{kilograms(0), kilograms(100), "0 kg and 100 kg (220 lb)"};
  const Mass ice = read_quantity(c.reader, node, any_ice).value_or(Mass{});
  // The water in use is chosen later, and never less than this.
  const auto water = mix.water_use ? mix.water_use : mix.water_least;
  if (water && ice.si() > in_litres(*water)) {
    c.reader.error(node.pointer, {"too-much-ice",
                                  fmt::format("the ice of one bag, {}, is more than its water, {}",
                                              show(ice, c.units), show_water(*water, c.units)),
                                  "give the ice for one bag; it is a part of the bag's water"});
  }
  return ice;
}

}  // namespace

Site read_site(Context& c, const Node& node, const Mix& mix, const std::optional<StartDate>& date,
               Open& open) {
  Object o(c.reader, node, "the site");
  const auto temperature = [&](const char* key, Temperature usual, int weight, const char* reason) {
    const Node value = o.find(key);
    if (!value) {
      c.reader.assume(weight, std::string("/site/") + key, show(usual, c.units), reason);
    }
    return read_quantity(c.reader, value, any_temperature).value_or(usual);
  };
  Site site;
  read_weather(c, o, mix.at, date, site);
  site.bags_as_air = !o.find("bag_temperature");
  site.bag_temperature = temperature("bag_temperature", site.air, weight_bag_temperature,
                                     "as the air, when the bags lie there overnight (assumption)");
  site.water_as_it_comes = !o.find("water_temperature");
  open.water_temperature = o.find("water_temperature").is("auto");
  site.water_temperature =
      open.water_temperature ? tap_water
                             : temperature("water_temperature", tap_water, weight_water_temperature,
                                           "cold water from the mains (assumption)");
  const Node ice = o.find("ice");
  open.ice = ice.is("auto");
  if (ice && !open.ice) site.ice = read_ice(c, ice, mix);
  o.finish();
  return site;
}

Limits read_limits(Context& c, const Node& node) {
  Object o(c.reader, node, "the limits");
  Limits limits;
  limits.base_load = o.quantity("base_load", base_load);
  limits.support_load = o.quantity("support_load", support_load);
  limits.lift = o.quantity("lift", lift);
  const Node margin = o.find("margin");
  if (!margin) {
    c.reader.assume(weight_margin, "/limits/margin", show(Duration{}),
                    "time to spare at every fresh edge, beyond the usable share (assumption)");
  }
  limits.margin = read_quantity(c.reader, margin, short_time).value_or(Duration{});
  o.finish();
  return limits;
}

}  // namespace strikeoff
