// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <tuple>
#include <vector>

#include "cutting/sheet_dual.h"

namespace strikeoff {

/// What sheets come to; less is better.
struct MixWorth {
  std::int64_t unplaced = 0, cost = 0, sheets = 0;
  friend auto operator<=>(const MixWorth&, const MixWorth&) = default;
};

/// What is searched: the fillings of each stock, and bounds on the cost and on the number of
/// sheets, for all pieces placed.
struct MixProblem {
  const GuillotineProblem& problem;
  const ChoiceCode& code;
  std::vector<std::vector<SheetFilling>> fillings;
  SheetDual cost, number;
};

struct SheetMix {
  std::vector<const SheetFilling*> loads;  // one a sheet
  MixWorth worth;
};

/// The best mix of fillings that beats `known`, or, with `equals`, is as good; among those one that
/// leaves a large rectangle is preferred, but may be missed. By dynamic programming over the
/// choices left to cut: first sheets of which there are few, then in every state a sheet for the
/// last item left (or that piece is left out). States that the bounds rule out are dropped. Takes
/// `steps` off; where they do not suffice `steps` is negative, and the mix one that was met.
[[nodiscard]] std::optional<SheetMix> better_mix(const MixProblem& problem, const MixWorth& known,
                                                 bool equals, long& steps);

}  // namespace strikeoff
