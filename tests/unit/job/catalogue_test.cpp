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
  CHECK(mix.id == "rapid-fine-50lb");
  CHECK(mix.bag == pounds(50));
  CHECK(mix.yield == cubic_feet(0.45));
  CHECK(mix.yield_water == quarts(4));
  CHECK(mix.water_least == quarts(3.5));
  CHECK(mix.water_most == quarts(4.5));
  CHECK(mix.working_time == minutes(20));
  CHECK(mix.at == Temperature::fahrenheit(70));
  CHECK(mix.seal_after == hours(24));
  CHECK(mix.binder == 0.45);
  CHECK(mix.price == 24);
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
  CHECK(std::get<Mass>(catalogue.additives.front().item.dose_size) == kilograms(0.03));
  CHECK(supply(catalogue, "strip-screws").pack == 100);
}

// Common practice, no source: a rapid pour is stripped after about an hour and sealed after 16 to
// 24 h.
TEST_CASE("the rapid mixes keep to the times of the trade", "[job]") {
  int rapid = 0;
  for (const auto& entry : shipped_catalogue().mixes) {
    if (entry.item.id.rfind("rapid", 0) != 0) continue;
    ++rapid;
    INFO(entry.item.id);
    CHECK(entry.item.strip_after == hours(1));
    CHECK(entry.item.seal_after >= hours(16));
    CHECK(entry.item.seal_after <= hours(24));
  }
  CHECK(rapid == 2);
}
