// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/json.h"
#include "strikeoff/plan.h"

namespace strikeoff {

using Path = std::vector<std::string>;  // the segments of a JSON Pointer

[[nodiscard]] Path path_of(std::string_view pointer);
[[nodiscard]] std::string pointer_of(const Path& path);

/// True for the digits of an index.
[[nodiscard]] bool is_index_text(std::string_view segment);

/// The plan as its file has it, to look up numbers by pointer.
class PlanFile {
 public:
  /// One number of the file.
  struct Number {
    Path path;
    double value = 0;
  };

  explicit PlanFile(const Plan& plan);

  /// Every number, in the order of the file.
  [[nodiscard]] const std::vector<Number>& numbers() const { return numbers_; }
  /// What stands at the path; null where nothing does.
  [[nodiscard]] const Json* find(const Path& path) const;
  /// True when segment `i` of the path is an index.
  [[nodiscard]] bool is_index(const Path& path, std::size_t i) const;
  /// The unit the file has the number in; empty for counts and shares.
  [[nodiscard]] std::string unit(const Path& path) const;
  /// How many of that unit one of `formula_unit` is: a supply's "ft" are metres in formulas.
  [[nodiscard]] double per_formula_unit(const Path& path) const;
  [[nodiscard]] std::string formula_unit(const Path& path) const;

 private:
  Json root_;
  std::vector<Number> numbers_;
  void gather(const Json& node, Path& path);
};

/// A text or number of the file as a word.
[[nodiscard]] std::string word_of(const Json& value);

/// True when a list's element goes by this name: as its name, code, stock, step, number, …
[[nodiscard]] bool goes_by(const Json& element, std::string_view name);

}  // namespace strikeoff
