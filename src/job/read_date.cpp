// SPDX-License-Identifier: MIT
#include "job/read_parts.h"

namespace strikeoff {
namespace {

/// A number of `digits` digits at the start of `text`, which it shortens.
std::optional<int> take_digits(std::string_view& text, std::size_t digits) {
  if (text.size() < digits) return std::nullopt;
  int value = 0;
  for (const char c : text.substr(0, digits)) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  text.remove_prefix(digits);
  return value;
}

bool take(std::string_view& text, std::string_view word) {
  if (!text.starts_with(word)) return false;
  text.remove_prefix(word.size());
  return true;
}

/// ISO 8601: "2026-05-09", "2026-05-09T08:30"; local, so no zone.
std::optional<StartDate> start_date(std::string_view text) {
  const auto y = take_digits(text, 4);
  const bool first = take(text, "-");
  const auto m = take_digits(text, 2);
  const bool second = take(text, "-");
  const auto d = take_digits(text, 2);
  if (!y || !first || !m || !second || !d) return std::nullopt;
  StartDate date{std::chrono::year{*y} / *m / *d, std::nullopt};
  if (!date.day.ok()) return std::nullopt;
  if (text.empty()) return date;
  if (!take(text, "T") && !take(text, " ")) return std::nullopt;
  date.time = clock_time(text);
  if (!date.time) return std::nullopt;
  return date;
}

}  // namespace

std::optional<std::chrono::minutes> clock_time(std::string_view text) {
  const auto h = take_digits(text, 2);
  const bool colon = take(text, ":");
  const auto m = take_digits(text, 2);
  (void)take(text, ":00");
  if (!h || !colon || !m || *h > 23 || *m > 59 || !text.empty()) return std::nullopt;
  return std::chrono::minutes(*h * 60 + *m);
}

std::optional<StartDate> read_date(Reader& reader, const Node& node) {
  const auto text = read_text(reader, node);
  if (!text) return std::nullopt;
  const auto date = start_date(*text);
  if (!date) {
    reader.error(node.pointer,
                 {"not-a-date", in_quotes(*text) + " is not a date, with or without a time",
                  "write year-month-day, and if you like the start time: "
                  "\"2026-05-09\" or \"2026-05-09T08:30\""});
  }
  return date;
}

}  // namespace strikeoff
