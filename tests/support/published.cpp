// SPDX-License-Identifier: MIT
#include "support/published.h"

#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <type_traits>

#include "support/source_dir.h"

namespace strikeoff::test {
namespace {

template <class T>
double in(T value, const std::string& unit) {
  return value / written<T>("1 " + written_unit(unit));
}

/// A rate over a surface has no word of its own: mass over area over time.
double in(EvaporationRate rate, const std::string& unit) {
  if (unit == "kg/m2/h") return in_kilograms_per_m2_h(rate);
  if (unit != "lb/ft2/h") throw std::runtime_error("no rate: " + unit);
  return rate.si() * written<Area>("1 ft2").si() * written<Duration>("1 h").si() /
         written<Mass>("1 lb").si();
}

double in(Temperature temperature, const std::string& unit) {
  if (unit == "C") return temperature.in_c();
  if (unit == "F") return temperature.in_f();
  throw std::runtime_error("no temperature: " + unit);
}

double in(double number, const std::string&) {
  return number;
}

double in(const std::string& text, const std::string&) {
  throw std::runtime_error("no number: " + text);
}

}  // namespace

std::string written_unit(const std::string& unit) {
  static const std::map<std::string, std::string> words = {{"US gal", "gal"},
                                                           {"US gallon", "gal"},
                                                           {"US qt", "qt"},
                                                           {"US liquid quart", "quart"},
                                                           {"US fluid ounce", "fluid ounce"},
                                                           {"cubic foot", "cu ft"},
                                                           {"cubic yard", "cu yd"},
                                                           {"cubic inch", "cu in"},
                                                           {"lb (avoirdupois)", "lb"}};
  const auto found = words.find(unit);
  return found == words.end() ? unit : found->second;
}

PublishedCase::PublishedCase(const nlohmann::json& row)
    : row_(std::make_shared<const nlohmann::json>(row)) {}

std::string PublishedCase::id() const {
  return row_->at("id");
}

std::string PublishedCase::topic() const {
  return row_->at("topic");
}

bool PublishedCase::was_read() const {
  return row_->at("status") == "read";
}

bool PublishedCase::has_input(const std::string& name) const {
  return row_->at("inputs").contains(name);
}

bool PublishedCase::expects(const std::string& value) const {
  return row_->at("expected").contains(value);
}

double PublishedCase::expected(const std::string& value) const {
  return row_->at("expected").at(value).at("value").get<double>();
}

std::string PublishedCase::title() const {
  return fmt::format("{} [{}] {}", id(), was_read() ? "read" : "from memory",
                     row_->at("source").get<std::string>());
}

double PublishedCase::number(const std::string& input) const {
  return row_->at("inputs").at(input).at("value").get<double>();
}

std::string PublishedCase::text(const std::string& input) const {
  return row_->at("inputs").at(input).at("value").get<std::string>();
}

std::string PublishedCase::unit(const std::string& input) const {
  return row_->at("inputs").at(input).at("unit").get<std::string>();
}

std::vector<double> PublishedCase::numbers(const std::string& input) const {
  const std::string all = text(input);
  std::vector<double> found;
  for (const char* at = all.c_str(); *at != '\0';) {
    char* end = nullptr;
    const double number = std::strtod(at, &end);
    if (end == at) {
      ++at;
    } else {
      found.push_back(number);
      at = end;
    }
  }
  return found;
}

std::string PublishedCase::written_number(double number) {
  return fmt::format("{:.12f}", number);
}

double in_unit(const Said& said, const std::string& unit) {
  return std::visit([&](const auto& value) { return in(value, unit); }, said);
}

const std::vector<PublishedCase>& published_cases() {
  static const std::vector<PublishedCase> cases = [] {
    std::ifstream file(source_dir() / "tests/published/cases.json");
    std::vector<PublishedCase> all;
    for (const auto& row : nlohmann::json::parse(file)) all.emplace_back(row);
    return all;
  }();
  return cases;
}

const Asks& all_asks() {
  static const Asks asks = [] {
    Asks all;
    for (auto part : {air_asks(), fresh_mix_asks(), setting_asks(), mix_asks(), strength_asks(),
                      unit_asks(), cutting_asks(), handling_asks(), geometry_asks()}) {
      all.merge(part);
      if (!part.empty()) throw std::logic_error("two asks for " + part.begin()->first);
    }
    return all;
  }();
  return asks;
}

}  // namespace strikeoff::test
