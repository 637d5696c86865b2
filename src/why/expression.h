// SPDX-License-Identifier: MIT
#pragma once

#include <limits>
#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace strikeoff {

// The formulas of the registry (basis/basis.h) as numbers.

/// A number or a list of numbers. NaN stands for a value that is not given.
struct FormulaValue {
  std::vector<double> numbers;
  bool is_list = false;

  [[nodiscard]] static FormulaValue of(double number) { return {{number}, false}; }
  [[nodiscard]] static FormulaValue list(std::vector<double> numbers) {
    return {std::move(numbers), true};
  }
};

inline constexpr double not_given = std::numeric_limits<double>::quiet_NaN();

using FormulaSymbols = std::map<std::string, FormulaValue, std::less<>>;

/// A formula that cannot be read, or that asks for a symbol or a function there is not.
struct FormulaError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// The value of an infix formula: + - * / ^ ( ), comparisons (1 where they hold), and the functions
/// that `BasisEntry::formula` names. What takes one number takes a list element by element, beside
/// numbers and lists of its length; sum, max, min and count take any numbers and lists and leave
/// out what is not given; of nothing they are 0. NaN where a value it needs is not given. Throws
/// FormulaError; parentheses go 40 deep at most.
[[nodiscard]] FormulaValue evaluate(std::string_view formula, const FormulaSymbols& symbols);

/// The symbols of a formula, in its order, each once.
[[nodiscard]] std::vector<std::string> symbols_of(std::string_view formula);

/// The formula with these texts in place of its symbols.
[[nodiscard]] std::string put_in(std::string_view formula,
                                 const std::map<std::string, std::string, std::less<>>& texts);

}  // namespace strikeoff
