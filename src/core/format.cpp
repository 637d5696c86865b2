// SPDX-License-Identifier: MIT
#include "core/format.h"

#include <fmt/core.h>

#include <cmath>

namespace strikeoff {
namespace {

/// Rounds half to even, as std::nearbyint does in the default rounding mode, which the library
/// never changes (NIST SP 811 B.7, ASTM E29, from memory).
double round_even(double value) {
  return std::nearbyint(value);
}

/// So many parts of a whole as a reduced fraction: 9 quarters are "2 1/4". `parts` is a whole
/// number, not negative.
std::string fraction(double parts, int denominator) {
  const double whole = std::floor(parts / denominator);
  int numerator = static_cast<int>(parts - whole * denominator);
  while (numerator != 0 && numerator % 2 == 0 && denominator % 2 == 0) {
    numerator /= 2;
    denominator /= 2;
  }
  if (numerator == 0) return show_number(whole, 0);
  if (whole == 0) return fmt::format("{}/{}", numerator, denominator);
  return fmt::format("{:.0f} {}/{}", whole, numerator, denominator);
}

/// "5 qt", "3 1/2 qt", "2 qt 5.5 fl oz": quarts in quarters, which a measure shows, else whole
/// quarts and the rest in fluid ounces to 1/2.
std::string quarts_and_ounces(Volume volume) {
  const double half_ounces = round_even(in_fluid_ounces(volume) * 2);
  if (half_ounces >= 64 && std::fmod(half_ounces, 16) == 0) {
    return fraction(half_ounces / 16, 4) + " qt";
  }
  const double whole_quarts = std::floor(half_ounces / 64);
  const double ounces = (half_ounces - whole_quarts * 64) / 2;
  if (whole_quarts == 0) return fmt::format("{} fl oz", show_number(ounces, 1));
  return fmt::format("{} qt {} fl oz", show_number(whole_quarts, 0), show_number(ounces, 1));
}

}  // namespace

std::string show_number(double value, int decimals) {
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

std::string inch_fraction(Length length, int denominator) {
  const double parts = round_even(std::abs(length.in_in()) * denominator);
  const bool negative = length < Length{} && parts != 0;
  return (negative ? "-" : "") + fraction(parts, denominator);
}

std::string show(Length length, Units units) {
  if (units == Units::us) return inch_fraction(length, 16) + " in";
  const double mm = length.in_mm();
  const bool whole = std::abs(mm - std::round(mm)) < 0.05;
  return show_number(mm, whole ? 0 : 1) + " mm";
}

std::string show(Area area, Units units) {
  if (units == Units::us) return fmt::format("{:.1f} ft2", in_square_feet(area));
  return fmt::format("{:.2f} m2", area.si());
}

std::string show_concrete(Volume volume, Units units) {
  if (units == Units::us) return fmt::format("{:.2f} ft3", in_cubic_feet(volume));
  return fmt::format("{:.1f} L", in_litres(volume));
}

std::string show_water(Volume volume, Units units) {
  if (units == Units::us) return quarts_and_ounces(volume);
  return fmt::format("{} L", show_number(in_litres(volume), 2));
}

std::string show(Mass mass, Units units) {
  const bool us = units == Units::us;
  const double large = us ? in_pounds(mass) : mass.si();
  if (large >= 1) return show_number(large, 1) + (us ? " lb" : " kg");
  return us ? show_number(in_ounces(mass), 1) + " oz" : show_number(mass.si() * 1000, 0) + " g";
}

std::string show(Temperature temperature, Units units) {
  const bool us = units == Units::us;
  return show_number(us ? temperature.in_f() : temperature.in_c(), 0) + (us ? " F" : " C");
}

std::string show_at_most(Temperature temperature, Units units) {
  const bool us = units == Units::us;
  const double value = us ? temperature.in_f() : temperature.in_c();
  return show_number(std::floor(value + 1e-9), 0) + (us ? " F" : " C");
}

std::string show_at_least(Temperature temperature, Units units) {
  const bool us = units == Units::us;
  const double value = us ? temperature.in_f() : temperature.in_c();
  return show_number(std::ceil(value - 1e-9), 0) + (us ? " F" : " C");
}

std::string show_strength(Pressure strength, Units units) {
  return units == Units::us ? show_number(in_psi(strength), 0) + " psi"
                            : show_number(in_megapascals(strength), 1) + " MPa";
}

std::string show(Pressure pressure, Units units) {
  if (pressure >= megapascals(1)) return show_strength(pressure, units);
  return units == Units::us ? show_number(in_psf(pressure), 1) + " psf"
                            : fmt::format("{:.2f} kPa", in_kilopascals(pressure));
}

std::string show(Speed speed, Units units) {
  if (units == Units::us) return show_number(in_miles_per_hour(speed), 0) + " mph";
  return show_number(speed / kilometres_per_hour(1), 0) + " km/h";
}

std::string show(EvaporationRate rate, Units units) {
  const double si = in_kilograms_per_m2_h(rate);
  if (units == Units::us) {
    return show_number(si * in_pounds(kilograms(1)) * square_feet(1).si(), 2) + " lb/ft2/h";
  }
  return show_number(si, 2) + " kg/m2/h";
}

std::string show_roughly(Volume volume, Units units) {
  if (units == Units::us) return show_number(volume / gallons(1), 1) + " gal";
  const double l = in_litres(volume);
  return show_number(l, l < 10 ? 1 : 0) + " L";
}

std::string show_buckets(double buckets, Volume each, Units units) {
  const std::string of = show_roughly(each, units);
  const std::string number = show_number(buckets, 1);
  if (buckets < 1 && number != "1") return "less than a bucket of " + of;
  return fmt::format("{} {} of {}", number, number == "1" ? "bucket" : "buckets", of);
}

std::string show_at_most(Duration duration) {
  const double value = in_minutes(duration);
  const double step = value < 10 ? 1 : value < 120 ? 5 : 30;
  // Under a minute there is nothing to round to.
  return show(value < 1 ? duration : minutes(std::floor(value / step + 1e-9) * step));
}

std::string show(Duration duration) {
  const double value = in_minutes(duration);
  const std::string sign = value < 0 ? "-" : "";
  const double size = std::abs(value);
  if (size < 1 && size > 0)
    return fmt::format("{}{} s", sign, show_number(std::abs(duration.si()), 0));
  if (size < 120) {
    // 60 to 119 min reads better as hours when it is whole; a timetable minute stays a minute.
    if (size >= 60 && std::abs(size - 60) < 0.05) return sign + "1 h";
    return fmt::format("{}{} min", sign, show_number(size, 1));
  }
  if (size < 48 * 60) {
    const double whole = round_even(size);
    const double rest = std::fmod(whole, 60);
    const std::string hours_text = fmt::format("{}{} h", sign, show_number((whole - rest) / 60, 0));
    return rest == 0 ? hours_text : fmt::format("{} {} min", hours_text, show_number(rest, 0));
  }
  return fmt::format("{}{} d", sign, show_number(size / 1440, 1));
}

std::string show_clock(Duration from_contact) {
  const long long seconds = std::llround(from_contact.si()), size = std::abs(seconds);
  const std::string text =
      fmt::format("{}{}:{:02}", seconds < 0 ? '-' : '+', size / 3600, size / 60 % 60);
  return size % 60 == 0 ? text : fmt::format("{}:{:02}", text, size % 60);
}

std::string show_deadline(Duration from_contact) {
  return show_clock(minutes(std::floor(in_minutes(from_contact) + 1e-9)));
}

std::string show_percent(double fraction) {
  return show_number(fraction * 100, 1) + " %";
}

std::string the_side(const std::string& name) {
  return name.starts_with("edge ") ? name : "the " + name;
}

std::string show_money(Money money, const std::string& currency) {
  return fmt::format("{:.2f} {}", money.si() == 0 ? 0.0 : money.si(), currency);
}

std::string count(int n, const std::string& one, const std::string& many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string capital(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] -= 'a' - 'A';
  return text;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string all;
  for (const std::string& part : parts) {
    if (&part != &parts.front()) all += between;
    all += part;
  }
  return all;
}

std::string iso(const StartDate& start) {
  std::string day =
      fmt::format("{:04}-{:02}-{:02}", static_cast<int>(start.day.year()),
                  static_cast<unsigned>(start.day.month()), static_cast<unsigned>(start.day.day()));
  if (!start.time) return day;
  return fmt::format("{}T{:02}:{:02}", day, start.time->count() / 60, start.time->count() % 60);
}

std::string readable(std::string_view iso) {
  std::string text(iso);
  if (const auto t = text.find('T'); t != std::string::npos) text[t] = ' ';
  constexpr std::size_t with_seconds = std::string_view("2026-05-09 09:00:00").size();
  if (text.size() == with_seconds && text.ends_with(":00")) text.erase(text.size() - 3);
  return text;
}

}  // namespace strikeoff
