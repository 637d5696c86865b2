// SPDX-License-Identifier: MIT
#include "job/units_table.h"

#include <fmt/core.h>

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "job/suggest.h"

namespace strikeoff {
namespace {

using enum Dimension;

// Exact definitions: NIST Handbook 44, appendix C; NIST SP 811, appendix B.
double inch(double v) {
  return Length::inches(v).in_nm();
}
double foot(double v) {
  return Length::inches(12 * v).in_nm();
}
double yard(double v) {
  return Length::inches(36 * v).in_nm();
}
double mm(double v) {
  return Length::mm(v).in_nm();
}
double cm(double v) {
  return Length::mm(10 * v).in_nm();
}
double metre(double v) {
  return Length::m(v).in_nm();
}
double square_inch(double v) {
  return square_feet(v / 144).si();
}
double square_foot(double v) {
  return square_feet(v).si();
}
double square_metre(double v) {
  return v;
}
double square_cm(double v) {
  return v / 1e4;
}
double cubic_inch(double v) {
  return litres(v * 0.016387064).si();
}
double cubic_foot(double v) {
  return cubic_feet(v).si();
}
double cubic_yard(double v) {
  return cubic_yards(v).si();
}
double cubic_metre(double v) {
  return v;
}
double litre(double v) {
  return litres(v).si();
}
double millilitre(double v) {
  return litres(v / 1000).si();
}
double gallon(double v) {
  return gallons(v).si();
}
double quart(double v) {
  return quarts(v).si();
}
double pint(double v) {
  return quarts(v / 2).si();
}
double fluid_ounce(double v) {
  return fluid_ounces(v).si();
}
double pound(double v) {
  return pounds(v).si();
}
double ounce(double v) {
  return ounces(v).si();
}
double kilogram(double v) {
  return kilograms(v).si();
}
double gram(double v) {
  return kilograms(v / 1000).si();
}
double fahrenheit(double v) {
  return Temperature::fahrenheit(v).in_c();
}
double celsius(double v) {
  return v;
}
double second(double v) {
  return seconds(v).si();
}
double minute(double v) {
  return minutes(v).si();
}
double hour(double v) {
  return hours(v).si();
}
double day(double v) {
  return days(v).si();
}
double pound_per_square_inch(double v) {
  return psi(v).si();
}
double pound_per_square_foot(double v) {
  return psf(v).si();
}
double pascal(double v) {
  return v;
}
double kilopascal(double v) {
  return kilopascals(v).si();
}
double megapascal(double v) {
  return megapascals(v).si();
}
double mile_per_hour(double v) {
  return miles_per_hour(v).si();
}
double metre_per_second(double v) {
  return metres_per_second(v).si();
}
double kilometre_per_hour(double v) {
  return kilometres_per_hour(v).si();
}
double pound_per_cubic_foot(double v) {
  return pounds_per_ft3(v).si();
}
double kilogram_per_cubic_metre(double v) {
  return kilograms_per_m3(v).si();
}
double kilojoule_per_mole(double v) {
  return kilojoules_per_mole(v).si();
}
double joule_per_mole(double v) {
  return v;
}
double hundredth(double v) {
  return v / 100;
}

constexpr std::array units{
    Unit{"in", length, inch},
    Unit{"\"", length, inch},
    Unit{"inch", length, inch},
    Unit{"inches", length, inch},
    Unit{"ft", length, foot},
    Unit{"'", length, foot},
    Unit{"foot", length, foot},
    Unit{"feet", length, foot},
    Unit{"yd", length, yard},
    Unit{"yard", length, yard},
    Unit{"yards", length, yard},
    Unit{"mm", length, mm},
    Unit{"millimetres", length, mm},
    Unit{"millimeters", length, mm},
    Unit{"cm", length, cm},
    Unit{"centimetres", length, cm},
    Unit{"centimeters", length, cm},
    Unit{"m", length, metre},
    Unit{"metre", length, metre},
    Unit{"meter", length, metre},
    Unit{"metres", length, metre},
    Unit{"meters", length, metre},

    Unit{"in2", area, square_inch},
    Unit{"sq in", area, square_inch},
    Unit{"ft2", area, square_foot},
    Unit{"sq ft", area, square_foot},
    Unit{"sqft", area, square_foot},
    Unit{"m2", area, square_metre},
    Unit{"sq m", area, square_metre},
    Unit{"cm2", area, square_cm},

    Unit{"in3", volume, cubic_inch},
    Unit{"cu in", volume, cubic_inch},
    Unit{"ft3", volume, cubic_foot},
    Unit{"cu ft", volume, cubic_foot},
    Unit{"cuft", volume, cubic_foot},
    Unit{"yd3", volume, cubic_yard},
    Unit{"cu yd", volume, cubic_yard},
    Unit{"m3", volume, cubic_metre},
    Unit{"L", volume, litre},
    Unit{"litre", volume, litre},
    Unit{"litres", volume, litre},
    Unit{"liter", volume, litre},
    Unit{"liters", volume, litre},
    Unit{"mL", volume, millilitre},
    Unit{"gal", volume, gallon},
    Unit{"gallon", volume, gallon},
    Unit{"gallons", volume, gallon},
    Unit{"qt", volume, quart},
    Unit{"qts", volume, quart},
    Unit{"quart", volume, quart},
    Unit{"quarts", volume, quart},
    Unit{"pt", volume, pint},
    Unit{"pint", volume, pint},
    Unit{"pints", volume, pint},
    Unit{"fl oz", volume, fluid_ounce},
    Unit{"floz", volume, fluid_ounce},
    Unit{"fl. oz", volume, fluid_ounce},
    Unit{"fluid ounce", volume, fluid_ounce},
    Unit{"fluid ounces", volume, fluid_ounce},

    Unit{"lb", mass, pound},
    Unit{"lbs", mass, pound},
    Unit{"pound", mass, pound},
    Unit{"pounds", mass, pound},
    Unit{"oz", mass, ounce},
    Unit{"ounce", mass, ounce},
    Unit{"ounces", mass, ounce},
    Unit{"kg", mass, kilogram},
    Unit{"kilogram", mass, kilogram},
    Unit{"kilograms", mass, kilogram},
    Unit{"g", mass, gram},
    Unit{"gram", mass, gram},
    Unit{"grams", mass, gram},

    Unit{"F", temperature, fahrenheit},
    Unit{"deg F", temperature, fahrenheit},
    Unit{"Fahrenheit", temperature, fahrenheit},
    Unit{"C", temperature, celsius},
    Unit{"deg C", temperature, celsius},
    Unit{"Celsius", temperature, celsius},

    Unit{"s", duration, second},
    Unit{"sec", duration, second},
    Unit{"second", duration, second},
    Unit{"seconds", duration, second},
    Unit{"min", duration, minute},
    Unit{"mins", duration, minute},
    Unit{"minute", duration, minute},
    Unit{"minutes", duration, minute},
    Unit{"h", duration, hour},
    Unit{"hr", duration, hour},
    Unit{"hrs", duration, hour},
    Unit{"hour", duration, hour},
    Unit{"hours", duration, hour},
    Unit{"d", duration, day},
    Unit{"day", duration, day},
    Unit{"days", duration, day},

    Unit{"psi", pressure, pound_per_square_inch},
    Unit{"psf", pressure, pound_per_square_foot},
    Unit{"Pa", pressure, pascal},
    Unit{"kPa", pressure, kilopascal},
    Unit{"MPa", pressure, megapascal},
    Unit{"N/mm2", pressure, megapascal},

    Unit{"mph", speed, mile_per_hour},
    Unit{"m/s", speed, metre_per_second},
    Unit{"km/h", speed, kilometre_per_hour},
    Unit{"kph", speed, kilometre_per_hour},

    Unit{"pcf", density, pound_per_cubic_foot},
    Unit{"lb/ft3", density, pound_per_cubic_foot},
    Unit{"kg/m3", density, kilogram_per_cubic_metre},

    Unit{"kJ/mol", energy, kilojoule_per_mole},
    Unit{"J/mol", energy, joule_per_mole},

    Unit{"%", percent, hundredth},
    Unit{"percent", percent, hundredth},
    Unit{"per cent", percent, hundredth},
};

struct Words {
  std::string_view a, code, example;
  std::array<std::string_view, 5> usual;  // units a bare number is shown with; the rest empty
};

/// In the order of Dimension.
constexpr std::array<Words, 11> words{{
    {"a length",
     "not-a-length",
     "\"6 ft 4 in\", \"2 1/4 in\" or \"1930 mm\"",
     {"in", "ft", "mm", "cm", "m"}},
    {"an area", "not-an-area", "\"12 ft2\" or \"1.1 m2\"", {"ft2", "m2"}},
    {"a volume", "not-a-volume", "\"0.44 ft3\", \"3.7 qt\" or \"12.5 L\"", {"qt", "ft3", "L"}},
    {"a mass", "not-a-mass", "\"48 lb\" or \"25 kg\"", {"lb", "kg"}},
    {"a temperature", "not-a-temperature", "\"68 F\" or \"20 C\"", {"F", "C"}},
    {"a duration",
     "not-a-duration",
     "\"90 s\", \"15 min\", \"1 h 30 min\" or \"28 d\"",
     {"s", "min", "h", "d"}},
    {"a pressure",
     "not-a-pressure",
     "\"40 psf\", \"3000 psi\" or \"20 MPa\"",
     {"psf", "psi", "kPa", "MPa"}},
    {"a speed", "not-a-speed", "\"5 mph\", \"8 km/h\" or \"2 m/s\"", {"mph", "km/h", "m/s"}},
    {"a density", "not-a-density", "\"150 pcf\" or \"2400 kg/m3\"", {"pcf", "kg/m3"}},
    {"an energy", "not-an-energy", "\"40 kJ/mol\"", {"kJ/mol"}},
    {"a percent", "not-a-percent", "\"10 %\"", {"%"}},
}};

const Words& words_of(Dimension dimension) {
  return words[static_cast<std::size_t>(dimension)];
}

}  // namespace

std::span<const Unit> units_table() {
  return units;
}

std::string a_quantity(Dimension dimension) {
  return std::string(words_of(dimension).a);
}

std::string not_a_quantity(Dimension dimension) {
  return std::string(words_of(dimension).code);
}

std::string how_to_write(Dimension dimension) {
  const Words& w = words_of(dimension);
  return fmt::format("write {} like {}", w.a, w.example);
}

TextError bare_number(Dimension dimension, double number) {
  const Words& w = words_of(dimension);
  const std::string message = fmt::format("{} has no unit", number);
  if (dimension == percent) {
    // 0.1 most likely means ten in a hundred.
    const double hundredths = std::abs(number) < 1 ? number * 100 : number;
    return {"no-unit", message, fmt::format("write \"{} %\"", hundredths)};
  }
  std::vector<std::string> texts;
  for (const std::string_view unit : w.usual) {
    if (!unit.empty()) texts.push_back(fmt::format("{} {}", number, unit));
  }
  return {"no-unit", message, "write it as a text with its unit: " + quoted_list(texts, "or")};
}

}  // namespace strikeoff
