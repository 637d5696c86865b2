// SPDX-License-Identifier: MIT
#include "job/quantity_text.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/ascii.h"
#include "job/suggest.h"
#include "job/units_table.h"

namespace strikeoff {
namespace {

constexpr double largest_number = 1e15;  // far above every limit, far below overflow

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// What people and word processors type, in plain ASCII.
constexpr std::array<std::pair<std::string_view, std::string_view>, 36> plain_forms{{
    {"½", " 1/2"},   {"⅓", " 1/3"},   {"⅔", " 2/3"},   {"¼", " 1/4"}, {"¾", " 3/4"}, {"⅕", " 1/5"},
    {"⅖", " 2/5"},   {"⅗", " 3/5"},   {"⅘", " 4/5"},   {"⅙", " 1/6"}, {"⅚", " 5/6"}, {"⅛", " 1/8"},
    {"⅜", " 3/8"},   {"⅝", " 5/8"},   {"⅞", " 7/8"},   {"⁄", "/"},    {"’", "'"},    {"‘", "'"},
    {"′", "'"},      {"”", "\""},     {"“", "\""},     {"″", "\""},   {"''", "\""},  {"°", ""},
    {"º", ""},       {"²", "2"},      {"³", "3"},      {"^", ""},     {"−", "-"},    {"–", "-"},
    {"\u00A0", " "}, {"\u2009", " "}, {"\u202F", " "}, {"\t", " "},   {"℉", "F"},    {"℃", "C"},
}};

std::string in_plain_form(std::string_view text) {
  std::string plain;
  while (!text.empty()) {
    const auto form = std::find_if(plain_forms.begin(), plain_forms.end(),
                                   [&](const auto& f) { return text.starts_with(f.first); });
    if (form == plain_forms.end()) {
      plain += text.front();
      text.remove_prefix(1);
    } else {
      plain += form->second;
      text.remove_prefix(form->first.size());
    }
  }
  return plain;
}

bool starts_with_any_case(std::string_view text, std::string_view word) {
  return text.size() >= word.size() &&
         std::equal(word.begin(), word.end(), text.begin(),
                    [](char a, char b) { return lower(a) == lower(b); });
}

/// The longest unit the text starts with. Letters decide over case ("Ft", "KG").
const Unit* unit_at(std::string_view text) {
  const Unit* best = nullptr;
  for (const Unit& unit : units_table()) {
    if (!starts_with_any_case(text, unit.name)) continue;
    const char last = unit.name.back();
    const char next = text.size() > unit.name.size() ? text[unit.name.size()] : ' ';
    const bool word = is_letter(last) || is_digit(last);
    if (word && (is_letter(next) || next == '/' || (is_digit(last) && is_digit(next)))) continue;
    if (best == nullptr || unit.name.size() > best->name.size()) best = &unit;
  }
  return best;
}

struct Term {
  double number = 0;
  const Unit* unit = nullptr;
};

/// Reads one quantity text from left to right; the first thing wrong ends it.
class Scanner {
 public:
  Scanner(std::string_view original, Dimension wanted)
      : original_(original), wanted_(wanted), plain_(in_plain_form(original)), rest_(plain_) {}

  /// Terms in falling units, with the sign of the whole; or what is wrong.
  std::variant<std::vector<Term>, TextError> terms() {
    skip_spaces();
    while (!rest_.empty() && rest_.back() == ' ') rest_.remove_suffix(1);
    if (auto comma = decimal_comma()) return *comma;
    const double sign = take_sign();
    std::vector<Term> terms;
    do {
      Term term;
      if (auto error = number(term.number, !terms.empty())) return *error;
      if (auto error = unit(term, !terms.empty())) return *error;
      if (auto error = fits(term, terms)) return *error;
      term.number *= sign;
      terms.push_back(term);
      skip_spaces();
      // A drawing writes 7'-10".
      if (rest_.size() > 1 && rest_[0] == '-' && is_digit(rest_[1])) rest_.remove_prefix(1);
    } while (!rest_.empty());
    return terms;
  }

 private:
  void skip_spaces() {
    while (!rest_.empty() && rest_.front() == ' ') rest_.remove_prefix(1);
  }

  double take_sign() {
    if (rest_.empty() || (rest_[0] != '-' && rest_[0] != '+')) return 1;
    const double sign = rest_[0] == '-' ? -1 : 1;
    rest_.remove_prefix(1);
    skip_spaces();
    return sign;
  }

  [[nodiscard]] TextError wrong(std::string code, std::string message, std::string help) const {
    return {std::move(code), std::move(message), std::move(help)};
  }
  [[nodiscard]] TextError not_wanted(std::string message) const {
    return wrong(not_a_quantity(wanted_), std::move(message), how_to_write(wanted_));
  }

  [[nodiscard]] TextError bad_fraction() const {
    return wrong("bad-fraction",
                 fmt::format("cannot read the fraction in {}", in_quotes(original_)),
                 "write fractions like \"3/8 in\" or \"2 3/8 in\"");
  }

  [[nodiscard]] std::optional<TextError> decimal_comma() const {
    for (std::size_t i = 1; i + 1 < plain_.size(); ++i) {
      if (plain_[i] != ',' || !is_digit(plain_[i - 1]) || !is_digit(plain_[i + 1])) continue;
      std::string point(original_), none(original_);
      std::replace(point.begin(), point.end(), ',', '.');
      std::erase(none, ',');
      // "1,200 mm" may be a thousand two hundred or one and a fifth: the author decides.
      std::size_t end = i + 1;
      while (end < plain_.size() && is_digit(plain_[end])) ++end;
      const std::string help =
          end - i == 4 ? fmt::format("write {} or {}", in_quotes(none), in_quotes(point))
                       : fmt::format("write {}", in_quotes(point));
      return wrong("decimal-comma", fmt::format("a comma in the number {}", in_quotes(original_)),
                   help);
    }
    return std::nullopt;
  }

  /// Digits with at most one point; false where no digit stands.
  bool decimal(double& value, bool& whole) {
    std::size_t n = 0;
    bool digit = false, point = false;
    for (; n < rest_.size(); ++n) {
      if (is_digit(rest_[n]))
        digit = true;
      else if (rest_[n] == '.' && !point)
        point = true;
      else
        break;
    }
    if (!digit) return false;
    const auto parsed = std::from_chars(rest_.data(), rest_.data() + n, value);
    if (parsed.ec == std::errc::result_out_of_range) value = HUGE_VAL;
    rest_.remove_prefix(n);
    whole = !point;
    return true;
  }

  /// True when "3/8" follows, perhaps after a space or a hyphen: "2 3/8", "2-3/8".
  [[nodiscard]] bool fraction_follows() const {
    std::size_t i = 0;
    while (i < rest_.size() && rest_[i] == ' ') ++i;
    if (i < rest_.size() && rest_[i] == '-') ++i;
    if (i == 0) return false;
    const std::size_t digits = i;
    while (i < rest_.size() && is_digit(rest_[i])) ++i;
    return i > digits && i + 1 < rest_.size() && rest_[i] == '/' && is_digit(rest_[i + 1]);
  }

  std::optional<TextError> number(double& value, bool later) {
    bool whole = false;
    if (!decimal(value, whole)) {
      if (!later) {
        return not_wanted(fmt::format("{} is not {}", in_quotes(original_), a_quantity(wanted_)));
      }
      return not_wanted(
          fmt::format("cannot read {} in {}", in_quotes(rest_), in_quotes(original_)));
    }
    if (whole && fraction_follows()) {
      while (!is_digit(rest_.front())) rest_.remove_prefix(1);
      double top = 0;
      bool ignored = false;
      decimal(top, ignored);
      if (auto error = divide(top, true)) return error;
      value += top;
    } else if (whole && !rest_.empty() && rest_.front() == '/') {
      if (auto error = divide(value, false)) return error;
    }
    if (value > largest_number) {
      return wrong("too-large", fmt::format("the number in {} is too large", in_quotes(original_)),
                   "");
    }
    return std::nullopt;
  }

  /// Divides by what stands after the slash.
  std::optional<TextError> divide(double& top, bool mixed) {
    rest_.remove_prefix(1);
    double bottom = 0;
    bool whole = false;
    const bool found = decimal(bottom, whole);
    if (!found || !whole || bottom == 0 || (mixed && top >= bottom)) {
      return bad_fraction();
    }
    top /= bottom;
    return std::nullopt;
  }

  std::optional<TextError> unit(Term& term, bool later) {
    skip_spaces();
    if (rest_.empty()) {
      TextError bare = bare_number(wanted_, term.number);
      bare.message = fmt::format("{} has no unit", in_quotes(original_));
      if (later)
        bare.message = fmt::format("the last number of {} has no unit", in_quotes(original_));
      if (later || term.number != std::floor(term.number)) bare.help = how_to_write(wanted_);
      return bare;
    }
    if (is_digit(rest_.front()) || rest_.front() == '/') return bad_fraction();
    term.unit = unit_at(rest_);
    if (term.unit == nullptr) return unknown_unit();
    rest_.remove_prefix(term.unit->name.size());
    if (!rest_.empty() && rest_.front() == '.') rest_.remove_prefix(1);  // "in.", "lbs."
    return std::nullopt;
  }

  [[nodiscard]] TextError unknown_unit() const {
    std::size_t end = 0;
    while (end < rest_.size() &&
           !(rest_[end] == ' ' && end + 1 < rest_.size() && !is_letter(rest_[end + 1]))) {
      ++end;
    }
    const std::string_view word = rest_.substr(0, end);
    std::vector<std::string> names;
    for (const Unit& u : units_table()) {
      if (u.dimension == wanted_) names.emplace_back(u.name);
    }
    return wrong("unknown-unit",
                 fmt::format("unknown unit {} in {}", in_quotes(word), in_quotes(original_)),
                 did_you_mean(word, names, how_to_write(wanted_)));
  }

  [[nodiscard]] std::optional<TextError> fits(const Term& term,
                                              const std::vector<Term>& before) const {
    if (term.unit->dimension != wanted_) {
      TextError error =
          not_wanted(fmt::format("{} is {}, not {}", in_quotes(original_),
                                 a_quantity(term.unit->dimension), a_quantity(wanted_)));
      if (wanted_ == Dimension::duration && term.unit->name == "m") {
        error.help = "minutes are written \"min\"";
      }
      if (wanted_ == Dimension::volume && term.unit->dimension == Dimension::mass) {
        error.help = "fluid ounces are written \"fl oz\"; " + error.help;
      }
      return error;
    }
    if (before.empty()) return std::nullopt;
    const bool adds = wanted_ == Dimension::length || wanted_ == Dimension::duration ||
                      wanted_ == Dimension::mass || wanted_ == Dimension::volume;
    if (!adds || term.unit->to_si(1) >= before.back().unit->to_si(1)) {
      return not_wanted(
          fmt::format("{} does not go from the larger unit to the smaller", in_quotes(original_)));
    }
    return std::nullopt;
  }

  std::string_view original_;
  Dimension wanted_;
  std::string plain_;
  std::string_view rest_;
};

template <class T>
T from_si(double si) {
  return T::from_si(si);
}
template <>
Percent from_si<Percent>(double si) {
  return {si};
}
template <>
Temperature from_si<Temperature>(double celsius) {
  return Temperature::celsius(celsius);
}
template <>
Length from_si<Length>(double nm) {
  // Takes out the rounding of a decimal such as 2.39 m; keeps every binary fraction of an inch.
  return Length::nm(std::round(nm * 1024) / 1024);
}

}  // namespace

std::string in_quotes(std::string_view text) {
  std::string shown = "\"";
  std::size_t characters = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool starts = (byte & 0xC0U) != 0x80U;
    if (starts && ++characters > 60) return shown + "...\"";
    // U+0080 to U+009F are control characters as well: C2 80 to C2 9F.
    const bool control = byte < 0x20 || byte == 0x7F;
    if (byte == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0) {
      shown += ' ';
      ++i;
    } else {
      shown += control ? ' ' : text[i];
    }
  }
  return shown + '"';
}

template <class T>
Parsed<T> parse_quantity(std::string_view text) {
  const auto terms = Scanner(text, dimension_of<T>).terms();
  if (const auto* error = std::get_if<TextError>(&terms)) return *error;
  double sum = 0;
  for (const Term& term : std::get<0>(terms)) sum += term.unit->to_si(term.number);
  return from_si<T>(sum);
}

template Parsed<Length> parse_quantity<Length>(std::string_view);
template Parsed<Area> parse_quantity<Area>(std::string_view);
template Parsed<Volume> parse_quantity<Volume>(std::string_view);
template Parsed<Mass> parse_quantity<Mass>(std::string_view);
template Parsed<Temperature> parse_quantity<Temperature>(std::string_view);
template Parsed<Duration> parse_quantity<Duration>(std::string_view);
template Parsed<Pressure> parse_quantity<Pressure>(std::string_view);
template Parsed<Speed> parse_quantity<Speed>(std::string_view);
template Parsed<Density> parse_quantity<Density>(std::string_view);
template Parsed<MolarEnergy> parse_quantity<MolarEnergy>(std::string_view);
template Parsed<Percent> parse_quantity<Percent>(std::string_view);

}  // namespace strikeoff
