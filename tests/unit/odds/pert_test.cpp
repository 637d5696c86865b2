// SPDX-License-Identifier: MIT
#include "odds/pert.h"

#include <catch2/catch.hpp>

namespace strikeoff {
namespace {

/// Mean and variance over evenly spread shares, which is what random ones come to.
struct Moments {
  double mean = 0, variance = 0;
};

Moments moments_of(const Pert& pert) {
  constexpr int n = 200'000;
  double sum = 0, squares = 0;
  for (int k = 0; k < n; ++k) {
    const double x = pert.at((k + 0.5) / n);
    sum += x;
    squares += x * x;
  }
  return {sum / n, squares / n - sum / n * (sum / n)};
}

// Beta with shapes p and q on (a, b): mean a + (b - a) p/(p + q); variance (mean - a)(b - mean)
// /(p + q + 1); here p + q = 6.
TEST_CASE("a PERT value has the mean and the variance of its beta distribution") {
  const auto agrees = [](double a, double m, double b) {
    const Moments found = moments_of(Pert(a, m, b));
    const double mean = (a + 4 * m + b) / 6;
    CHECK(found.mean == Approx(mean).margin(1e-4 * (b - a)));
    CHECK(found.variance == Approx((mean - a) * (b - mean) / 7).epsilon(1e-3));
  };
  agrees(0, 3, 6);
  agrees(2.7, 3, 4);
  agrees(0.9, 1, 1.6);
  agrees(1, 1, 7);
  agrees(0, 5, 5);
}

// Shapes 3 and 3: density 30 x^2 (1 - x)^2, distribution 10 x^3 - 15 x^4 + 6 x^5.
TEST_CASE("a PERT value is the inverse of its distribution to a 128th of its range") {
  const Pert pert(0, 0.5, 1);
  for (int k = 1; k < 100; ++k) {
    const double x = k / 100.0;
    CHECK(pert.at(x * x * x * (10 - 15 * x + 6 * x * x)) == Approx(x).margin(1.0 / 128));
  }
}

TEST_CASE("a PERT value rises with its share and stays within its range") {
  const Pert pert(2.7, 3, 40);
  double before = 2.7;
  for (int k = 0; k < 100'000; ++k) {
    const double x = pert.at((k + 0.5) / 100'000);
    if (!(x >= before && x <= 40)) FAIL("at share " << (k + 0.5) / 100'000);
    before = x;
  }
  CHECK(pert.at(1 - 1e-10) <= 40);
}

TEST_CASE("a PERT value of no range is always the same") {
  const Pert pert(3, 3, 3);
  CHECK(pert.at(0.001) == 3);
  CHECK(pert.at(0.999) == 3);
}

}  // namespace
}  // namespace strikeoff
