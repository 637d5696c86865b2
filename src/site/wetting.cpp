// SPDX-License-Identifier: MIT
#include "site/wetting.h"

#include "site/evaporation.h"

namespace strikeoff {
namespace {

constexpr double at_most = 1 + evaporation_band;

/// So deep a film of water evaporates in a time.
Length lost(EvaporationRate rate, Duration time) {
  return Length::mm(in_kilograms_per_m2_h(rate) * in_hours(time));
}

Wetting wetting(std::string cover, Length film, EvaporationRate rate) {
  return {std::move(cover), film, rate, drying_time(film, rate)};
}

}  // namespace

std::optional<Duration> drying_time(Length film, EvaporationRate rate) {
  if (rate <= EvaporationRate{}) return std::nullopt;
  return hours(film / lost(rate * at_most, hours(1)));
}

std::vector<Wetting> wettings(EvaporationRate rate) {
  const EvaporationRate under_sheet = rate / sheet_cuts;
  return {wetting("bare", bare_film, rate), wetting("damp cloth", cloth_film, rate),
          wetting("sheet over the wet top", bare_film, under_sheet),
          wetting("sheet over damp cloth", cloth_film, under_sheet)};
}

Volume cure_water(const Wetting& cover, Area area, Duration time) {
  return area * (cover.film + lost(cover.evaporation * at_most, time));
}

}  // namespace strikeoff
