// SPDX-License-Identifier: MIT
#include "render/text_words.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/format.h"

namespace strikeoff::text {
namespace {

bool is_upright_rectangle(const Polygon& outline) {
  return outline.size() == 4 && is_right_angled(outline);
}

/// "0:07" or "0:07:30" of a time that is not negative.
std::string hours_minutes(long long seconds, int hour_digits, bool with_seconds) {
  std::string text = fmt::format("{:0{}}:{:02}", seconds / 3600, hour_digits, seconds / 60 % 60);
  return with_seconds ? fmt::format("{}:{:02}", text, seconds % 60) : text;
}

}  // namespace

Length on_tape(Length length, Units units) {
  return units == Units::metric ? Length::mm(std::round(length.in_mm())) : length;
}

std::string size(Length a, Length b, Units units) {
  const std::string first = show(a, units);
  return first.substr(0, first.rfind(' ')) + " x " + show(b, units);
}

std::string size(const Polygon& outline, Units units) {
  const Rectangle box = bounding_box(outline);
  return size(box.length, box.depth, units) + (is_upright_rectangle(outline) ? "" : " over all");
}

std::string range(Length from, Length to, Units units) {
  const std::string first = show(from, units);
  return first.substr(0, first.rfind(' ')) + " to " + show(to, units);
}

std::string bags(double number) {
  return show_number(number, 2) + (number > 1 ? " bags" : " bag");
}

std::string doses(double number, const std::variant<std::monostate, Mass, Volume>& amount,
                  Units units) {
  std::string text = show_number(number, 3) + (number > 1 ? " doses" : " dose");
  if (const Mass* mass = std::get_if<Mass>(&amount)) text += " (" + show(*mass, units) + ")";
  if (const Volume* volume = std::get_if<Volume>(&amount)) {
    text += " (" + show_water(*volume, units) + ")";
  }
  return text;
}

bool has_seconds(Duration from_contact) {
  return std::llround(from_contact.si()) % 60 != 0;
}

std::string stopwatch(Duration from_contact, bool with_seconds) {
  const std::string sign = from_contact < Duration{} ? "-" : "+";
  const Duration size = from_contact < Duration{} ? -from_contact : from_contact;
  if (size >= days(2)) return sign + show(size);
  const long long whole = std::llround(with_seconds ? size.si() : in_minutes(size));
  return sign + hours_minutes(with_seconds ? whole : whole * 60, 1, with_seconds);
}

std::string time_of_day(const std::optional<StartDate>& start, Duration from_contact,
                        bool with_seconds) {
  if (!start || !start->time) return "";
  constexpr long long day = 86400;
  const long long seconds = start->time->count() * 60 + std::llround(from_contact.si());
  return hours_minutes((seconds % day + day) % day, 2, with_seconds);
}

std::string found(const Check& check) {
  constexpr std::array<std::string_view, 8> in_the_title = {"mm", "kPa",     "MPa", "kg",
                                                            "L",  "L a bag", "C",   "kg/m2/h"};
  const bool shown =
      std::find(in_the_title.begin(), in_the_title.end(), check.unit) != in_the_title.end();
  if (!check.value || shown) return "";
  const std::string unit = check.unit.empty() ? "" : " " + check.unit;
  const std::string value = show_number(*check.value, 1) + unit;
  return check.limit ? value + ", limit " + show_number(*check.limit, 1) : value;
}

std::string edge_verdict(const PourPlan& pour) {
  const std::string worst = show(pour.edge_wait_max) + " at worst";
  if (!pour.usable || !pour.margin) {
    return worst +
           "; the bag states no working time, so nobody can say whether that is short "
           "enough: do the bucket test first";
  }
  const bool late = *pour.margin < Duration{};
  const std::string usable = worst + ", " + show(*pour.usable) + " usable: ";
  if (late) return usable + show(-*pour.margin) + " TOO LONG";
  return usable + show(*pour.margin) + " to spare" + (pour.feasible ? "" : ", which is NOT ENOUGH");
}

}  // namespace strikeoff::text
