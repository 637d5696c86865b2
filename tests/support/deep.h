// SPDX-License-Identifier: MIT
#pragma once

#include <cstdlib>
#include <vector>

namespace strikeoff::test {

/// The numbers below `all` in a deep run (`ctest -L deep`, which sets STRIKEOFF_DEEP), else the
/// same tenth of them every time.
inline std::vector<int> deep_numbers(int all) {
  const bool is_deep = std::getenv("STRIKEOFF_DEEP") != nullptr;
  std::vector<int> numbers;
  for (int k = 0; k < all; k += is_deep ? 1 : 10) numbers.push_back(k);
  return numbers;
}

}  // namespace strikeoff::test
