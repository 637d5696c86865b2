// SPDX-License-Identifier: MIT
#include "why/us_units.h"

#include <cmath>

#include "core/format.h"

namespace strikeoff {

std::string in_us_units(double value, const std::string& unit, const std::string& pointer,
                        Units units) {
  if (units != Units::us || std::isnan(value)) return "";
  if (unit == "mm") return show(Length::mm(value), units);
  if (unit == "m2") return show(Area::from_si(value), units);
  if (unit == "kg") return show(kilograms(value), units);
  if (unit == "C") return show(Temperature::celsius(value), units);
  if (unit == "kPa") return show(kilopascals(value), units);
  if (unit == "MPa") return show_number(in_psi(megapascals(value)), 0) + " psi";
  if (unit == "L") {
    const bool water = pointer.find("water") != std::string::npos;
    return water ? show_water(litres(value), units) : show_concrete(litres(value), units);
  }
  return "";
}

PlanNumber plan_number(const NumberBasis& number, const PlanFile& file, Units units) {
  PlanNumber shown;
  shown.pointer = pointer_of(number.number->path);
  shown.name = number.name;
  shown.value = number.number->value;
  shown.unit = file.unit(number.number->path);
  shown.in_us = in_us_units(shown.value, shown.unit, shown.pointer, units);
  return shown;
}

}  // namespace strikeoff
