// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "basis/basis.h"
#include "why/plan_file.h"

namespace strikeoff {

/// An entry of the registry with one of its patterns.
struct BasisPattern {
  const BasisEntry* entry = nullptr;
  Path path;
};

/// A number of the plan, the entry it has, and what the `*` of its pattern are.
struct NumberBasis {
  const PlanFile::Number* number = nullptr;
  const BasisEntry* entry = nullptr;  // null: none
  std::vector<std::size_t> indices;
  std::string name;  // short, or the pointer
};

/// The numbers of a plan with their entries. Keeps references to the file.
class Kinds {
 public:
  explicit Kinds(const PlanFile& file);

  /// Every number, in the order of the file.
  [[nodiscard]] const std::vector<NumberBasis>& numbers() const { return numbers_; }
  /// Those of one entry.
  [[nodiscard]] std::vector<const NumberBasis*> of(const BasisEntry& entry) const;
  /// The number at this pointer, whose elements may be named; null where there is none.
  [[nodiscard]] const NumberBasis* at(std::string_view pointer) const;
  /// The number of this short name; null where there is none.
  [[nodiscard]] const NumberBasis* named(std::string_view name) const;
  /// True when the path of a number, with indices, fits a pattern.
  [[nodiscard]] bool fits(const Path& pattern, const Path& path) const;

 private:
  const PlanFile& file_;
  std::vector<NumberBasis> numbers_;
  void set_entry(const std::vector<BasisPattern>& patterns, NumberBasis& number) const;
  void set_names();
};

/// The patterns of all entries.
[[nodiscard]] std::vector<BasisPattern> basis_patterns();

}  // namespace strikeoff
