// SPDX-License-Identifier: MIT
#include "mix/fresh_mix.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

namespace {

struct Ingredient {
  double mass, celsius;
};

/// Dry ingredients have one specific heat, so together they act as one of their mean temperature.
double mixed(const std::vector<Ingredient>& dry, const Ingredient& water, double ice = 0) {
  double mass = 0, heat = 0;
  for (const Ingredient& i : dry) {
    mass += i.mass;
    heat += i.mass * i.celsius;
  }
  return fresh_mix_temperature(kilograms(mass), Temperature::celsius(heat / mass),
                               kilograms(water.mass), Temperature::celsius(water.celsius),
                               kilograms(ice))
      .in_c();
}

}  // namespace

TEST_CASE("fresh mix temperature agrees with published worked examples", "[mix]") {
  // PCA EB001, 14th ed., ch. 13, table 13-1 (from memory): 31.8 C with 0.92/4.184.
  CHECK(mixed({{335, 66}, {1839, 27}}, {123, 27}) == Approx(31.8).margin(0.05));
  // Ready-mix worksheet after ACI 305R: 28151.5/702.5 = 40.1 C.
  CHECK(mixed({{2000, 41}, {375, 46.2}}, {180, 35}) == Approx(40.1).margin(0.05));
  // Course notes on hot-weather concreting, after Neville: 77.04 F; masses in lb.
  const auto celsius = [](double f) { return Temperature::fahrenheit(f).in_c(); };
  const double mix = mixed({{3000, celsius(80)}, {564, celsius(100)}}, {282, celsius(60)});
  CHECK(Temperature::celsius(mix).in_f() == Approx(77.04).margin(0.01));
}

TEST_CASE("ice cools the fresh mix as published worked examples say", "[mix]") {
  // PCA EB001, 14th ed., ch. 13, table 13-1 with 44 kg of ice (from memory): 24.1 C.
  CHECK(mixed({{335, 66}, {1839, 27}}, {123, 27}, 44) == Approx(24.1).margin(0.1));
  // Case study of concreting in extreme weather, two mixes with 50 kg of ice: 27.1 and 27.4 C.
  CHECK(mixed({{360, 40}, {1828.2, 37}}, {122.8, 30}, 50) == Approx(27.1).margin(0.1));
  CHECK(mixed({{410, 40}, {1799.9, 37}}, {168.1, 30}, 50) == Approx(27.4).margin(0.1));
  // ACI 305R-99 App. A (from memory): 100 of 282 lb as ice: 60.9 F; 143.5 Btu/lb instead of 144
  // is 0.05 F.
  const auto celsius = [](double f) { return Temperature::fahrenheit(f).in_c(); };
  const double mix = mixed({{3000, celsius(80)}, {564, celsius(100)}}, {182, celsius(60)}, 100);
  CHECK(Temperature::celsius(mix).in_f() == Approx(60.9).margin(0.06));
}

TEST_CASE("a tenth of the water as ice cools a bagged mix by three degrees and a half", "[mix]") {
  // 25 kg + 2.8 kg at 20 C: 0.28 kg of ice takes 0.28 x (79.7 + 20) = 27.9 of heat from 8.3: 3.36
  // C.
  CHECK(mixed({{25, 20}}, {2.52, 20}, 0.28) == Approx(20 - 3.363).margin(0.001));
  // Ice that would freeze the mix stays ice.
  CHECK(mixed({{25, 5}}, {1, 5}, 1.8) == 0);
}

TEST_CASE("the water that brings a mix to a temperature brings it there", "[mix]") {
  const Mass bag = kilograms(25), water = kilograms(2.8);
  const auto bags = Temperature::celsius(33);
  for (const double wanted : {18.0, 22.0, 25.0, 30.0, 38.0}) {
    for (const double ice : {0.0, 0.2}) {
      const auto chill = chill_to(Temperature::celsius(wanted), bag, bags, water, kilograms(ice));
      REQUIRE(chill);
      CHECK(fresh_mix_temperature(bag, bags, water - chill->ice, chill->water, chill->ice).in_c() ==
            Approx(wanted));
      CHECK(chill->water >= coldest_water);
    }
  }
}

TEST_CASE("where the coldest water does not cool enough ice does as far as the equation holds",
          "[mix]") {
  // 25 kg of bags at 33 C and 2.8 kg of water at 2 C: (5.5 x 33 + 2.8 x 2) / 8.3 = 22.54 C. A fifth
  // of it as ice, 0.56 kg: (181.5 + 2.24 x 2 - 79.7 x 0.56) / 8.3 = 17.03 C.
  const Mass bag = kilograms(25), water = kilograms(2.8);
  const auto bags = Temperature::celsius(33);
  const auto to = [&](double c) { return chill_to(Temperature::celsius(c), bag, bags, water, {}); };
  CHECK(to(22.6)->ice == Mass{});
  CHECK(to(22.6)->water.in_c() == Approx(2.2).margin(0.1));
  CHECK(to(22.5)->water == coldest_water);
  CHECK(to(22.5)->ice > Mass{});
  CHECK(to(17.04).has_value());
  CHECK_FALSE(to(17.02).has_value());
  // Water at 60 C: (181.5 + 2.8 x 60) / 8.3 = 42.1 C.
  CHECK(to(42).has_value());
  CHECK_FALSE(to(42.2).has_value());
}

TEST_CASE("colder water cools a bagged mix by its share of the heat", "[mix]") {
  // 25 kg + 2.8 kg of water: 2.8/(0.22 x 25 + 2.8) = 0.337 C for 1 C.
  CHECK(mixed({{25, 20}}, {2.8, 20}) - mixed({{25, 20}}, {2.8, 19}) == Approx(0.3373).margin(1e-4));
}
