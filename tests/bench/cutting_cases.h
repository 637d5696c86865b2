// SPDX-License-Identifier: MIT
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cutting/bars.h"
#include "cutting/guillotine.h"

namespace strikeoff::bench {

/// What is known of the optimum: at least the one, at most the other.
struct Known {
  std::int64_t least = 0, most = 0;
};

/// One problem of a published or generated set: bars and ripped boards, or sheets.
struct CuttingCase {
  std::string id;
  std::string set;  // cases counted together
  std::optional<BarProblem> bars;
  std::optional<GuillotineProblem> sheets;  // when not bars
  std::optional<Known> known;
};

/// Every problem in a file of the formats that README.md beside the data describes. Kerfs are added
/// to pieces and stock. A file of sheets gives several cases an instance: in two stages with the
/// first cuts along and across, exact and trimmed, and in any number of stages. Throws when the
/// file cannot be read.
[[nodiscard]] std::vector<CuttingCase> read_cases(const std::string& file);

/// Made-up jobs with `parts` pieces of at most 15 lengths, from 1 to 4 lengths at a price and up to
/// two kinds of offcuts on hand, in sixteenths of an inch with a kerf of 1/8 in.
[[nodiscard]] CuttingCase random_case(int number, int least_parts, int most_parts,
                                      std::uint64_t seed);

}  // namespace strikeoff::bench
