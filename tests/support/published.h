// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "job/quantity_text.h"
#include "strikeoff/quantity.h"

namespace strikeoff::test {

/// A unit by the word a person writes; words of the tables that the program does not read ("US
/// gal") become those it does.
[[nodiscard]] std::string written_unit(const std::string& unit);

/// A quantity by the program's own reader. The test fails where that cannot read it.
template <class T>
[[nodiscard]] T written(const std::string& text) {
  const Parsed<T> parsed = parse_quantity<T>(text);
  if (const TextError* error = std::get_if<TextError>(&parsed)) {
    throw std::runtime_error(text + ": " + error->message);
  }
  return std::get<T>(parsed);
}

/// One row of tests/published/cases.json: a value that somebody published or that a published
/// formula gives.
class PublishedCase {
 public:
  explicit PublishedCase(const nlohmann::json& row);
  [[nodiscard]] std::string id() const;
  [[nodiscard]] std::string topic() const;
  [[nodiscard]] bool was_read() const;
  /// "EV-01 [from memory] ACI 305R …", as the test's name.
  [[nodiscard]] std::string title() const;
  [[nodiscard]] const nlohmann::json& row() const { return *row_; }

  [[nodiscard]] bool has_input(const std::string& name) const;
  [[nodiscard]] bool expects(const std::string& value) const;
  [[nodiscard]] double expected(const std::string& value) const;
  [[nodiscard]] double number(const std::string& input) const;
  [[nodiscard]] std::string text(const std::string& input) const;
  [[nodiscard]] std::string unit(const std::string& input) const;
  /// All the numbers in an input's text, in order: "30 x 60".
  [[nodiscard]] std::vector<double> numbers(const std::string& input) const;
  /// An input with its unit.
  template <class T>
  [[nodiscard]] T get(const std::string& input) const {
    return written<T>(written_number(number(input)) + " " + written_unit(unit(input)));
  }
  /// Relative humidity and the like, as a fraction.
  [[nodiscard]] double fraction(const std::string& input) const { return number(input) / 100; }

 private:
  [[nodiscard]] static std::string written_number(double number);
  std::shared_ptr<const nlohmann::json> row_;
};

/// What the program says: a text, a plain number in the published unit, or a quantity, which is
/// compared in the published unit by the program's own reading of that unit.
using Said = std::variant<std::string, double, Length, Area, Volume, Mass, Temperature, Duration,
                          Pressure, Speed, Density, EvaporationRate>;

struct Answer {
  Said said;
  /// Beyond the published tolerance, as a share of the published value: where the program uses
  /// another form of the same formula.
  double another_form = 0;
  template <class T>
  Answer(T value, double share = 0) : said(std::move(value)), another_form(share) {}
};

/// By the names of the published values.
using Answers = std::map<std::string, Answer>;
using Ask = Answers (*)(const PublishedCase&);
using Asks = std::map<std::string, Ask, std::less<>>;

// Who answers, by case id; one file a subject.
[[nodiscard]] Asks air_asks();
[[nodiscard]] Asks fresh_mix_asks();
[[nodiscard]] Asks setting_asks();
[[nodiscard]] Asks mix_asks();
[[nodiscard]] Asks strength_asks();
[[nodiscard]] Asks unit_asks();
[[nodiscard]] Asks cutting_asks();
[[nodiscard]] Asks handling_asks();
[[nodiscard]] Asks geometry_asks();

/// Cases ("EV-T15") and single values of cases that are run ("EV-10/E_raw") that the program is
/// not held against, and why.
[[nodiscard]] const std::map<std::string, std::string, std::less<>>& set_aside();

[[nodiscard]] const std::vector<PublishedCase>& published_cases();
[[nodiscard]] const Asks& all_asks();

/// The answer in the published unit.
[[nodiscard]] double in_unit(const Said& said, const std::string& unit);

}  // namespace strikeoff::test
