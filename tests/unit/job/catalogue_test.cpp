// SPDX-License-Identifier: MIT
#include "strikeoff/catalogue.h"

#include <catch2/catch.hpp>

#include <set>

using namespace strikeoff;

namespace {

const std::set<std::string> origins{
    "invented", "common practice, no source",
    "spacing 8 in: ANSI A108.11 as described in a trade-education article",
    "24.3 ft of 1/4 in square bead a cartridge, by volume"};

template <class Item>
void check_entries(const std::vector<CatalogueEntry<Item>>& entries, std::set<std::string>& ids) {
  CHECK_FALSE(entries.empty());
  for (const auto& entry : entries) {
    INFO(entry.item.id);
    CHECK(ids.insert(entry.item.id).second);
    CHECK(entry.marks.contains(""));  // marks every value not named
    for (const auto& [key, origin] : entry.marks) CHECK(origins.contains(origin));
  }
}

}  // namespace

TEST_CASE("every catalogue entry loads with its own id and says where its values come from",
          "[job]") {
  const Catalogue& catalogue = shipped_catalogue();
  std::set<std::string> ids;
  check_entries(catalogue.mixes, ids);
  check_entries(catalogue.boards, ids);
  check_entries(catalogue.panels, ids);
  check_entries(catalogue.additives, ids);
  check_entries(catalogue.sealers, ids);
  check_entries(catalogue.supplies, ids);
  CHECK(ids.size() == 37);
}

TEST_CASE("the catalogue's first mix is the rapid one of the starter job", "[job]") {
  const Mix& mix = shipped_catalogue().mixes.front().item;
  CHECK(mix.id == "rapid-fine-48lb");
  CHECK(mix.bag == pounds(48));
  CHECK(mix.yield == cubic_feet(0.44));
  CHECK(mix.yield_water == quarts(3.7));
  CHECK(mix.water_least == quarts(3.2));
  CHECK(mix.water_most == quarts(4.2));
  CHECK(mix.working_time == minutes(22));
  CHECK(mix.at == Temperature::fahrenheit(68));
  CHECK(mix.seal_after == hours(36));
  CHECK(mix.binder == 0.42);
  CHECK(mix.price == 27);
}

TEST_CASE("boards and panels say which units they are sold in and nothing else does", "[job]") {
  const Catalogue& catalogue = shipped_catalogue();
  for (const auto* goods : {&catalogue.boards, &catalogue.panels}) {
    for (const auto& entry : *goods) {
      INFO(entry.item.id);
      REQUIRE(entry.units.has_value());
      CHECK((entry.units == Units::us) == (entry.item.name.ends_with(" in")));
    }
  }
  for (const auto& entry : catalogue.supplies) CHECK_FALSE(entry.units.has_value());
}

TEST_CASE("panels keep the gap to their neighbours and additives the size of a dose", "[job]") {
  const Catalogue& catalogue = shipped_catalogue();
  CHECK(catalogue.panels.front().item.gap == Length::inches(0.125));
  CHECK(std::get<Mass>(catalogue.additives.front().item.dose_size) == kilograms(0.025));
  CHECK(supply(catalogue, "strip-screws").pack == 80);
}

TEST_CASE("each invented mix could be real: its times follow one another, its bag its density",
          "[job]") {
  for (const auto& entry : shipped_catalogue().mixes) {
    const Mix& mix = entry.item;
    INFO(mix.id);
    CHECK(mix.working_time < mix.final_set);
    CHECK(mix.final_set < mix.strip_after);
    CHECK(mix.strip_after < mix.sand_after);
    CHECK(mix.sand_after < mix.seal_after);
    CHECK(mix.seal_after <= mix.full_service);
    CHECK(mix.water_least < mix.yield_water);
    CHECK(mix.yield_water < mix.water_most);
    // Of water a litre weighs a kilogram; a bag takes some 8 to 18 % of it, and fresh concrete has
    // some 2000 to 2300 kg/m3 (common practice, no source).
    CHECK(in_litres(*mix.water_least) >= 0.08 * mix.bag.si());
    CHECK(in_litres(*mix.water_most) < 0.185 * mix.bag.si());
    const double density = (mix.bag.si() + in_litres(*mix.yield_water)) / in_litres(mix.yield);
    CHECK(density > 2.0);
    CHECK(density < 2.3);
    for (std::size_t i = 1; i < mix.strength.size(); ++i) {
      CHECK(mix.strength[i - 1].strength < mix.strength[i].strength);
    }
  }
}
