// SPDX-License-Identifier: MIT
#include "odds/statistics.h"

#include <catch2/catch.hpp>
#include <cmath>

namespace strikeoff {
namespace {

TEST_CASE("the normal quantile undoes the normal distribution") {
  for (const double z : {-6.0, -4.0, -2.5, -1.96, -1.0, -0.1, 0.0, 0.5, 1.5, 2.0, 3.0, 5.0}) {
    const double p = 0.5 * std::erfc(-z / std::sqrt(2.0));
    CHECK(normal_quantile(p) == Approx(z).margin(2e-8));
  }
  CHECK(normal_quantile(0.3) == Approx(-normal_quantile(0.7)).epsilon(1e-12));
}

// Newcombe, Statistics in Medicine 17 (1998) 857, table I, score method without continuity
// correction, from memory.
TEST_CASE("the interval of a chance agrees with Newcombe's examples of the Wilson interval") {
  const auto agrees = [](std::int64_t times, std::int64_t runs, double low, double high) {
    const Chance chance = chance_of(times, runs);
    CHECK(chance.low == Approx(low).margin(0.00005));
    CHECK(chance.high == Approx(high).margin(0.00005));
  };
  agrees(81, 263, 0.2553, 0.3662);
  agrees(15, 148, 0.0624, 0.1605);
  agrees(0, 20, 0.0000, 0.1611);
  agrees(1, 29, 0.0061, 0.1718);
}

TEST_CASE("an interval reaches 0 and 1 exactly when nothing or everything happened") {
  CHECK(chance_of(0, 20000).low == 0);
  CHECK(chance_of(20000, 20000).high == 1);
  CHECK(chance_of(1, 1).low > 0);
}

TEST_CASE("a quantile is the least value that enough of the values do not exceed") {
  std::vector<double> values;
  for (int k = 20; k >= 1; --k) values.push_back(k);
  CHECK(quantile(values, 0.05) == 1);
  CHECK(quantile(values, 0.5) == 10);
  CHECK(quantile(values, 1 - 0.05) == 19);
  CHECK(quantile(values, 0.951) == 20);
  CHECK(quantile(values, 0) == 1);
  CHECK(quantile(values, 1) == 20);
}

}  // namespace
}  // namespace strikeoff
