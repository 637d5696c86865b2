// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <fmt/format.h>

#include <numbers>

#include "core/outlines.h"
#include "strikeoff/read_job.h"

using namespace strikeoff;

namespace {

ReadResult read_with(const std::string& base, const std::string& in_slab) {
  return read_job(R"({"units": "us", "slabs": [{"base": {)" + base +
                  R"(}, "thickness": "1 3/4 in", )" + in_slab + R"(}], "mix": "rapid-fine-48lb"})");
}

Slab slab_of(const std::string& base, const std::string& in_slab) {
  const ReadResult result = read_with(base, in_slab);
  INFO(render_diagnostics(result.diagnostics, "job.json", ""));
  REQUIRE(result.job.has_value());
  return result.job->slabs.at(0);
}

const std::string bench = R"("rectangle": {"length": "76 in", "depth": "24 in"})";

}  // namespace

TEST_CASE("cut corners are kept by the number the job gives", "[job]") {
  const std::string cuts =
      R"("overhang": "1 in",
         "corner_treatment": [{"corner": 4, "radius": "1 in"}, {"corner": 2, "clip": "1/2 in"}])";
  CHECK(slab_of(bench, cuts).corner_cuts ==
        std::vector<CornerCut>{{3, Length::inches(1), true}, {1, Length::inches(0.5), false}});
  // Clockwise, corner 4 is the front right one, where the second side begins.
  const Slab turned = slab_of(
      R"("corners": [["0 in","0 in"],["0 in","24 in"],["76 in","24 in"],["76 in","0 in"]])", cuts);
  CHECK(turned.corner_cuts ==
        std::vector<CornerCut>{{1, Length::inches(1), true}, {3, Length::inches(0.5), false}});
  CHECK(turned.base[1] == Point{Length::inches(76), {}});
}

TEST_CASE("two radii may use up a side", "[job]") {
  const Slab slab = slab_of(bench, R"("support": "ground", "corner_treatment": [
      {"corner": 2, "radius": "12 in"}, {"corner": 3, "radius": "12 in"}])");
  // Half a disc of 12 in stands at the end of 64 in by 24 in.
  const double half_disc = std::numbers::pi * 12 * 12 / 2;
  CHECK(area(slab_edge(slab)).si() / (0.0254 * 0.0254) == Approx(64 * 24 + half_disc));
}

TEST_CASE("a filled inner corner adds concrete", "[job]") {
  const std::string base = R"("corners": [["0 in","0 in"],["60 in","0 in"],["60 in","20 in"],
      ["20 in","20 in"],["20 in","60 in"],["0 in","60 in"]])";
  const Slab slab = slab_of(base, R"("support": "ground", "corner_treatment": [
      {"corner": 4, "clip": "6 in"}])");
  // 60 x 20 + 20 x 40 and the triangle of 6 x 6/2.
  CHECK(area(slab_edge(slab)).si() / (0.0254 * 0.0254) == Approx(2000 + 18));
}

TEST_CASE("a corner is cut exactly as long as the base stays under the slab", "[job]") {
  const std::string square = bench;
  const std::string slanted =
      R"("corners": [["0 in","0 in"],["76 in","0 in"],["56 in","24 in"],["11 in","24 in"]])";
  for (const std::string& base : {square, slanted}) {
    for (const char* overhang : {"\"1 in\"", R"({"all": "1 in", "edges": {"2": "2 1/4 in"}})"}) {
      for (const char* kind : {"radius", "clip"}) {
        for (const int corner : {2, 3}) {
          const std::string in_slab = fmt::format(R"("overhang": {}, "panel": "none")", overhang);
          Slab slab = slab_of(base, in_slab);
          for (int sixteenths = 5; sixteenths <= 160; sixteenths += 5) {
            const ReadResult result = read_with(
                base, fmt::format(R"({}, "corner_treatment": [{{"corner": {}, "{}": "{}/16 in"}}])",
                                  in_slab, corner, kind, sixteenths));
            const auto k = static_cast<std::size_t>(corner - 1);
            slab.corner_cuts = {
                {k, Length::inches(sixteenths / 16.0), std::string(kind) == "radius"}};
            INFO(base << in_slab << kind << corner << ' ' << sixteenths);
            CHECK(result.job.has_value() ==
                  contains(chords(slab_edge(slab), Length::mm(0.0001)), slab.base[k]));
          }
        }
      }
    }
  }
}

TEST_CASE("the largest radius and clip of a square corner are those of the hand", "[job]") {
  const auto reads = [](const char* cut) {
    return read_with(bench, std::string(R"("overhang": "1 in", "panel": "none",
        "corner_treatment": [{"corner": 1, )") +
                                cut + "}]")
        .job.has_value();
  };
  // The base's corner lies 1 in inside both sides. A circle of radius r touches it when
  // (r - 1) sqrt 2 = r, at r = 2 + sqrt 2 = 3.414 in; a straight cut when it begins 2 in back.
  CHECK(reads(R"("radius": "3 3/8 in")"));
  CHECK_FALSE(reads(R"("radius": "3 7/16 in")"));
  CHECK(reads(R"("clip": "2 in")"));
  CHECK_FALSE(reads(R"("clip": "2 1/16 in")"));
}

TEST_CASE("a slab on the ground has no base under its corners", "[job]") {
  CHECK(slab_of(bench, R"("support": "ground", "corner_treatment": [
      {"corner": 1, "radius": "10 in"}])")
            .corner_cuts.size() == 1);
}
