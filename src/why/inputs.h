// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basis/basis.h"
#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "why/expression.h"
#include "why/kinds.h"
#include "why/plan_file.h"

namespace strikeoff {

/// What an input of a formula may ask: a job without open values, its plan, the catalogue.
struct WhyFacts {
  const Job& job;
  const PlanFile& file;
  const Catalogue& catalogue;
};

enum class InputFrom { plan, job, catalogue };

/// An input with its value, and where that stands.
struct FoundInput {
  InputFrom from = InputFrom::plan;
  FormulaValue value;
  std::string unit;
  std::vector<std::string> pointers;  // of the values: one, or a list's; none: there is nothing
};

/// Looks up an input of a number's formula. Throws FormulaError for a pointer that no job and no
/// plan has.
[[nodiscard]] FoundInput find_input(const BasisInput& input, const NumberBasis& number,
                                    const WhyFacts& facts);

/// The value of a number's formula, in the unit the plan has the number in; nothing where there is
/// no formula, or where it needs what is not given. Throws FormulaError.
[[nodiscard]] std::optional<double> formula_result(const NumberBasis& number,
                                                   const WhyFacts& facts);

}  // namespace strikeoff
