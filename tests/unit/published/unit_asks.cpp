// SPDX-License-Identifier: MIT
#include <algorithm>

#include "core/format.h"
#include "strikeoff/catalogue.h"
#include "support/published.h"

namespace strikeoff::test {
namespace {

/// The quantity as read, in the other unit.
template <class T>
Answers converted(const PublishedCase& one) {
  return {{"y", one.get<T>("x")}};
}

Answers to_celsius(const PublishedCase& one) {
  return {{"C", one.get<Temperature>("F")}};
}

/// Two points of a scale, so far apart.
Answers difference(const PublishedCase& one) {
  const auto at = [](double f) { return Temperature::fahrenheit(f).in_c(); };
  return {{"dC", at(one.number("dF")) - at(0)}};
}

std::string fraction(Length length, int denominator) {
  std::string text = inch_fraction(length, denominator);
  std::replace(text.begin(), text.end(), ' ', '-');  // the tables write 7-5/16
  return text;
}

Answers to_fraction(const PublishedCase& one) {
  return {{"text", fraction(one.get<Length>("x"), static_cast<int>(one.number("d")))}};
}

Answers to_sixteenths(const PublishedCase& one) {
  const Length exact = one.get<Length>("x");
  const std::string text = fraction(exact, 16);
  return {{"text", text}, {"error", exact - written<Length>(text + " in")}};
}

Answers to_thirty_seconds(const PublishedCase& one) {
  return {{"text", fraction(one.get<Length>("x"), 32)}};
}

Answers cartridge(const PublishedCase& one) {
  return {{"V", one.get<Volume>("cartridge")}};
}

/// The catalogue's rate for 1/4 in beads, which the materials list uses.
Answers quarter_bead(const PublishedCase&) {
  const Supply& sealant = supply(shipped_catalogue(), "sealant");
  return {{"L", Length::m(sealant.pack / sealant.rate)}};
}

/// A cartridge over another bead's section.
Answers other_bead(const PublishedCase& one) {
  return {{"L", written<Volume>("10.1 fl oz") / one.get<Area>("A")}};
}

}  // namespace

Asks unit_asks() {
  Asks asks = {
      {"UN-01", converted<Length>},  {"UN-02", converted<Length>},   {"UN-03", converted<Mass>},
      {"UN-12", converted<Density>}, {"UN-13", converted<Pressure>}, {"UN-14", converted<Pressure>},
      {"UN-15", converted<Speed>},   {"UN-16", converted<Volume>},   {"UN-22", difference},
      {"FR-10", to_sixteenths},      {"FR-11", to_thirty_seconds},   {"SE-01", cartridge},
      {"SE-02", quarter_bead},       {"SE-03", quarter_bead}};
  for (const char* id : {"UN-04", "UN-05", "UN-06", "UN-07", "UN-08", "UN-09", "UN-10", "UN-11"}) {
    asks.emplace(id, converted<Volume>);
  }
  for (const char* id : {"UN-17", "UN-18", "UN-19", "UN-20", "UN-21"}) {
    asks.emplace(id, to_celsius);
  }
  for (const char* id :
       {"FR-01", "FR-02", "FR-03", "FR-04", "FR-05", "FR-06", "FR-07", "FR-08", "FR-09"}) {
    asks.emplace(id, to_fraction);
  }
  for (const char* id : {"SE-04", "SE-05", "SE-06", "SE-07", "SE-08", "SE-09", "SE-10"}) {
    asks.emplace(id, other_bead);
  }
  return asks;
}

}  // namespace strikeoff::test
