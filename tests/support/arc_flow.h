// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>

#include "cutting/bars.h"

namespace strikeoff::test {

struct ArcFlowAnswer {
  bool finished = false;              // within the time allowed
  std::optional<std::int64_t> least;  // cost, when finished; nothing: no boards do
  int variables = 0;
};

/// The least cost of boards for all pieces, by GLPK's integer program on an arc-flow model: a
/// piece is an arc between the places where it may begin and end along a strip, a strip one across
/// a board (Valerio de Carvalho, Annals of Operations Research 86, 1999; two stages: Macedo, Alves
/// and Valerio de Carvalho, Computers & Operations Research 37, 2010; both from memory). It shares
/// nothing with the solvers of the product.
[[nodiscard]] ArcFlowAnswer arc_flow(const BarProblem& problem, double seconds);

}  // namespace strikeoff::test
