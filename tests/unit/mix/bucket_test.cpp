// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "mix/mix.h"

using namespace strikeoff;

namespace {

/// Litres up to this depth by adding thin discs, without the frustum's formula.
double litres_to(const Bucket& bucket, Length depth) {
  const int discs = 20000;
  double sum_mm3 = 0;
  for (int i = 0; i < discs; ++i) {
    const double z = depth.in_mm() * (i + 0.5) / discs;
    const double r =
        (bucket.bottom.in_mm() + (bucket.top - bucket.bottom).in_mm() * z / bucket.height.in_mm()) /
        2;
    sum_mm3 += std::numbers::pi * r * r * depth.in_mm() / discs;
  }
  return sum_mm3 / 1e6;
}

}  // namespace

TEST_CASE("in a straight bucket the mark is volume over area", "[bucket]") {
  // 200 mm across: pi x 1 dm2 = 3.14159 L a dm; 3.14159 L stand 100 mm high.
  const Bucket bucket{Length::mm(200), Length::mm(200), Length::mm(300)};
  const BucketMark mark = bucket_mark(bucket, litres(std::numbers::pi));
  CHECK(mark.depth.in_mm() == Approx(100));
  CHECK(mark.fills == 1);
}

TEST_CASE("the volume up to the mark is the water", "[bucket]") {
  const double top = GENERATE(200.0, 200.0001, 235.0, 300.0, 160.0);
  const double water = GENERATE(0.3, 3.785, 7.5);
  const Bucket bucket{Length::mm(200), Length::mm(top), Length::mm(320)};
  const BucketMark mark = bucket_mark(bucket, litres(water));
  CAPTURE(top, water);
  CHECK(litres_to(bucket, mark.depth) * mark.fills == Approx(water).epsilon(1e-7));
  CHECK(mark.depth <= bucket.height);
}

TEST_CASE("more water than the bucket holds is poured in the fewest equal fills", "[bucket]") {
  // Brim: pi x 0.3/3 (0.1^2 + 0.1 x 0.13 + 0.13^2) m3 = 12.535 L.
  const Bucket bucket{Length::mm(200), Length::mm(260), Length::mm(300)};
  const double brim = 100 * std::numbers::pi * (0.01 + 0.013 + 0.0169);
  CHECK(bucket_mark(bucket, litres(brim)).fills == 1);
  CHECK(bucket_mark(bucket, litres(brim)).depth.in_mm() == Approx(300));
  const BucketMark three = bucket_mark(bucket, litres(2 * brim + 0.1));
  CHECK(three.fills == 3);
  CHECK(3 * litres_to(bucket, three.depth) == Approx(2 * brim + 0.1).epsilon(1e-7));
}

TEST_CASE("no water is one fill to no depth", "[bucket]") {
  const BucketMark mark = bucket_mark({Length::mm(250), Length::mm(290), Length::mm(330)}, {});
  CHECK(mark.fills == 1);
  CHECK(mark.depth == Length{});
}
