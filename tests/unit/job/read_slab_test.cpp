// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <algorithm>

#include "core/outlines.h"
#include "job/read_parts.h"
#include "strikeoff/read_job.h"
#include "support/read.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// A bench of 2000 x 600 mm, 60 mm past its base but at the wall behind it, with these members in
/// its base, its slab and the job.
std::string text_of_bench(const std::string& in_slab, const std::string& in_base = "",
                          const std::string& in_job = "") {
  return R"({"units": "metric", "slabs": [{"base": {
      "rectangle": {"length": "2000 mm", "depth": "600 mm"})" +
         in_base + R"(}, "overhang": {"all": "60 mm"}, "walls": ["back"], "thickness": "40 mm")" +
         in_slab + R"(}], "mix": "fine-20kg")" + in_job + "}";
}

Job job_of_bench(const std::string& in_slab, const std::string& in_base = "",
                 const std::string& in_job = "") {
  return job_of(text_of_bench(in_slab, in_base, in_job));
}

Slab bench(const std::string& in_slab, const std::string& in_base = "") {
  return job_of_bench(in_slab, in_base).slabs.at(0);
}

/// The code of the only problem, or "" when the job is good.
std::string problem(const std::string& in_slab, const std::string& in_base = "") {
  const ReadResult result = read_job(text_of_bench(in_slab, in_base));
  if (result.diagnostics.empty()) return "";
  return result.diagnostics.size() == 1 ? result.diagnostics.front().code : "several";
}

std::string opening(const std::string& members) {
  return R"(, "openings": [{)" + members + "}]";
}

Point at(double x, double y) {
  return {Length::mm(x), Length::mm(y)};
}

std::string assumed(const Job& job, const std::string& path) {
  const auto found = std::find_if(job.assumptions.begin(), job.assumptions.end(),
                                  [&](const Assumption& a) { return a.path == path; });
  return found == job.assumptions.end() ? "" : found->value + ": " + found->reason;
}

}  // namespace

TEST_CASE("a circle is its square rounded by half its side", "[job]") {
  const Opening round =
      bench(opening(R"("circle": "300 mm", "at": ["500 mm", "250 mm"])")).openings.at(0);
  // Centre (500, 250) less the radius of 150.
  CHECK(round.at == Rectangle{at(350, 100), Length::mm(300), Length::mm(300)});
  CHECK(round.corner_radius == Length::mm(150));
  CHECK(round.through);
}

TEST_CASE("a rectangle keeps its corner radius up to half its shorter side", "[job]") {
  const auto rounded = [](const std::string& radius) {
    return opening(R"("rectangle": {"length": "300 mm", "depth": "200 mm"},
                      "at": ["500 mm", "250 mm"], "corner_radius": ")" +
                   radius + "\"");
  };
  CHECK(bench(rounded("20 mm")).openings.at(0).corner_radius == Length::mm(20));
  CHECK(bench(rounded("100 mm")).openings.at(0).corner_radius == Length::mm(100));
  CHECK(problem(rounded("100.1 mm")) == "radius-too-large");
}

// The slab reaches from (-60, -60) to (2060, 600); openings are measured from there. Its panel
// runs 20 mm past the base.
TEST_CASE("a round opening is held to its true edge and not to its square", "[job]") {
  const auto circle = [](const std::string& place, const std::string& more = "") {
    return R"({"circle": "300 mm", "at": [)" + place + "]" + more + "}";
  };
  const auto list = [](const std::string& entries) { return R"(, "openings": [)" + entries + "]"; };
  // The panel's front edge lies 40 mm from the slab's: 190 mm is a circle that touches it.
  CHECK(problem(list(circle(R"("500 mm", "190 mm")"))).empty());
  CHECK(problem(list(circle(R"("500 mm", "189.9 mm")"))) == "opening-outside-panel");
  const char* whole = R"(, "through": false)";
  CHECK(problem(list(circle(R"("500 mm", "151 mm")", whole))).empty());
  CHECK(problem(list(circle(R"("500 mm", "150.9 mm")", whole))) == "opening-at-edge");
  CHECK(problem(list(circle(R"("500 mm", "149 mm")", whole))) == "opening-outside");
  // Two circles on a slope of 3 to 4, 301 mm between centres (240.8, 180.6): a millimetre is left
  // between them. Their squares overlap.
  const std::string first = circle(R"("500 mm", "200 mm")") + ", ";
  CHECK(problem(list(first + circle(R"("740.8 mm", "380.6 mm")"))).empty());
  CHECK(problem(list(first + circle(R"("740.7 mm", "380.6 mm")"))) == "openings-overlap");
  // A small one within the large one.
  CHECK(problem(list(first + R"({"circle": "20 mm", "at": ["500 mm", "200 mm"]})")) ==
        "openings-overlap");
  CHECK(problem(list(R"({"circle": "20 mm", "at": ["500 mm", "200 mm"]}, )" +
                     circle(R"("520 mm", "210 mm")"))) == "openings-overlap");
}

TEST_CASE("an opening within another runs into it in either order", "[job]") {
  const std::string large =
      R"({"rectangle": {"length": "500 mm", "depth": "300 mm"}, "at": ["500 mm", "150 mm"]})";
  const std::string small =
      R"({"rectangle": {"length": "20 mm", "depth": "20 mm"}, "at": ["700 mm", "300 mm"]})";
  CHECK(problem(R"(, "openings": [)" + large + ", " + small + "]") == "openings-overlap");
  CHECK(problem(R"(, "openings": [)" + small + ", " + large + "]") == "openings-overlap");
}

TEST_CASE("level readings are kept as written", "[job]") {
  const Slab slab = bench(R"(, "levels": [{"at": ["0 mm", "0 mm"], "low": "7 mm"},
      {"at": ["2 m", "-1 m"], "low": "5 mm"}, {"at": ["0 mm", "60 cm"], "low": "1/8 in"}])");
  CHECK(slab.levels == std::vector<LevelReading>{{at(0, 0), Length::mm(7)},
                                                 {at(2000, -1000), Length::mm(5)},
                                                 {at(0, 600), Length::inches(0.125)}});
  CHECK(bench("").levels.empty());
}

TEST_CASE("three readings must say how the base tips each way", "[job]") {
  const auto with_third = [](const std::string& y) {
    return R"(, "levels": [{"at": ["0 mm", "0 mm"], "low": "0 mm"},
        {"at": ["2 m", "0 mm"], "low": "0 mm"}, {"at": ["1 m", ")" +
           y + R"("], "low": "0 mm"}])";
  };
  CHECK(problem(with_third("0.99 mm")) == "readings-in-line");
  CHECK(problem(with_third("1 mm")) == "readings-too-close");
  // A quarter of the base's depth of 600 mm is enough for three.
  CHECK(problem(with_third("149 mm")) == "readings-too-close");
  CHECK(problem(with_third("150 mm")).empty());
  // From five on nothing is gone on beyond the readings.
  CHECK(problem(R"(, "levels": [{"at": ["0 mm", "0 mm"], "low": "0 mm"},
      {"at": ["2 m", "0 mm"], "low": "0 mm"}, {"at": ["1 m", "1 mm"], "low": "0 mm"},
      {"at": ["50 cm", "0 mm"], "low": "0 mm"}, {"at": ["60 cm", "0 mm"], "low": "0 mm"}])")
            .empty());
}

TEST_CASE("readings may differ by a fifth of their distance", "[job]") {
  const auto with_low = [](const std::string& low) {
    return R"(, "levels": [{"at": ["0 mm", "0 mm"], "low": "0 mm"},
        {"at": ["2 m", "0 mm"], "low": "0 mm"}, {"at": ["0 mm", "500 mm"], "low": ")" +
           low + R"("}])";
  };
  CHECK(problem(with_low("100 mm")).empty());
  CHECK(problem(with_low("101 mm")) == "readings-too-steep");
}

// 16.8 m square and 40 mm thick are 11.3 m3. Added are 16.8 x 16.8 x 33.6 m x 2 % = 190 m3 for the
// fall, 4 x 16.8 x 0.9 x 0.9 m = 54 m3 for the apron, 16.8 x 16.8 x 0.9 m = 254 m3 for the hollow;
// 2000 batches of about 12 L are 24 m3.
TEST_CASE("hollow and fall and apron count towards the size of a job", "[job]") {
  const auto hall = [](const std::string& in_slab) {
    const ReadResult result = read_job(R"({"slabs": [{"base": {
        "rectangle": {"length": "15 m", "depth": "15 m"}}, "panel": "none", "thickness": "40 mm",
        "overhang": "900 mm")" + in_slab +
                                       R"(}], "mix": "fine-20kg"})");
    return result.diagnostics.empty() ? "" : result.diagnostics.front().code;
  };
  CHECK(hall("").empty());
  CHECK(hall(R"(, "fall": {"percent": "2 %", "towards": "front"})") == "too-big");
  CHECK(hall(R"(, "apron": {"depth": "900 mm"})") == "too-big");
  CHECK(hall(R"(, "levels": [{"at": ["0 m", "0 m"], "low": "0 mm"},
      {"at": ["15 m", "0 m"], "low": "900 mm"}, {"at": ["0 m", "15 m"], "low": "0 mm"}])") ==
        "too-big");
}

TEST_CASE("sixty level readings are read and one more is refused", "[job]") {
  const auto grid = [](int count) {
    std::string list;
    for (int i = 0; i < count; ++i) {
      list += std::string(i == 0 ? "" : ", ") + R"({"at": [")" + std::to_string(i % 10 * 200) +
              R"( mm", ")" + std::to_string(i / 10 * 80) + R"( mm"], "low": "1 mm"})";
    }
    return R"(, "levels": [)" + list + "]";
  };
  CHECK(bench(grid(60)).levels.size() == 60);
  CHECK(problem(grid(61)) == "too-many-readings");
}

TEST_CASE("a fall goes to the side named and none at all is no fall", "[job]") {
  const auto fall = [](const std::string& percent) {
    return R"(, "fall": {"percent": ")" + percent + R"(", "towards": "right"})";
  };
  CHECK(bench(fall("1.5 %")).fall == Fall{0.015, 1});
  CHECK_FALSE(bench(fall("0 %")).fall.has_value());
  CHECK_FALSE(bench("").fall.has_value());
}

// Written clockwise from (0, 0), up first: edge 2 runs along the back. Turned anticlockwise from
// corner 1 the sides are the edges 4, 3, 2, 1, so edge 2 is the third of them.
TEST_CASE("a fall towards an edge of a clockwise base finds that edge", "[job]") {
  const Job job = job_of(R"({"slabs": [{"base": {"corners": [["0 m", "0 m"], ["0 m", "1 m"],
      ["2 m", "1 m"], ["2 m", "0 m"]]}, "thickness": "40 mm",
      "fall": {"percent": "2 %", "towards": 2}}], "mix": "fine-20kg"})");
  const Slab& slab = job.slabs.at(0);
  REQUIRE(slab.fall.has_value());
  CHECK(slab.fall->side == 2);
  CHECK(slab.sides[2].number == 2);
  CHECK(slab.base[2] == at(2000, 1000));
  CHECK(slab.base[3] == at(0, 1000));
}

TEST_CASE("an apron marks its sides and keeps the panel on its inner strip", "[job]") {
  const Job job = job_of_bench(R"(, "apron": {"depth": "80 mm", "sides": ["front"]})");
  const Slab& slab = job.slabs.at(0);
  CHECK(slab.apron_depth == Length::mm(80));
  CHECK(slab.sides[0].apron);
  CHECK_FALSE(slab.sides[1].apron);
  // The usual 20 mm elsewhere; at the apron the 16 mm of the usual board.
  CHECK(slab.sides[0].panel_overhang == Length::mm(16));
  CHECK(slab.sides[1].panel_overhang == Length::mm(20));
  CHECK(assumed(job, "/slabs/0/panel/overhang").find("no farther than an apron's inner strip") !=
        std::string::npos);
  CHECK(assumed(job_of_bench(""), "/slabs/0/panel/overhang").find("apron") == std::string::npos);
}

TEST_CASE("an apron without sides hangs wherever there is an overhang", "[job]") {
  const Slab slab = bench(R"(, "apron": {"depth": "80 mm"})");
  for (const Side& side : slab.sides) CHECK(side.apron == !side.wall);
}

// 16 mm of strip, and 30 mm of concrete or three grains of 12 mm.
TEST_CASE("an apron's overhang holds its inner strip and enough concrete", "[job]") {
  const auto apron = [](const std::string& overhang, const std::string& grain) {
    return read_job(R"({"slabs": [{"base": {"rectangle": {"length": "2 m", "depth": "60 cm"}},
        "thickness": "40 mm", "panel": "none", "overhang": ")" +
                    overhang + R"(", "apron": {"depth": "80 mm"}}], "mix": {"name": "bag",
        "bag": "25 kg", "yield": "12 L", "water": {"use": "3 L"}, "aggregate": ")" +
                    grain + R"("}})")
        .job.has_value();
  };
  CHECK(apron("46 mm", "10 mm"));
  CHECK_FALSE(apron("45.9 mm", "10 mm"));
  CHECK(apron("52 mm", "12 mm"));
  CHECK_FALSE(apron("51.9 mm", "12 mm"));
}

TEST_CASE("the overhang an apron needs is never shown too small", "[job]") {
  // 5/8 in and 30 mm are 45.88 mm, 1 12.9/16 in; with three grains of 10.1 mm 46.18 mm, which the
  // nearest sixteenth would show as 1 13/16 in (46.04 mm).
  const ReadResult result = read_job(R"({"units": "us", "slabs": [{
      "base": {"rectangle": {"length": "76 in", "depth": "24 in"}}, "overhang": "1 1/8 in",
      "thickness": "1 3/4 in", "panel": "none", "apron": {"depth": "3 in", "sides": ["front"]}}],
      "mix": {"name": "bag", "bag": "48 lb", "yield": "0.44 ft3", "water": {"use": "3.7 qt"},
      "aggregate": "10.1 mm"}})");
  REQUIRE(result.diagnostics.size() == 1);
  CHECK(result.diagnostics[0].message ==
        "the apron of the side \"front\" needs an overhang of 1 7/8 in, it has 1 1/8 in");
}

TEST_CASE("a corner cut may be as long as the apron that ends there is wide", "[job]") {
  Slab slab = bench(R"(, "apron": {"depth": "80 mm", "sides": ["front"]})");
  for (int k = 0; k < 4; ++k) slab.sides[static_cast<std::size_t>(k)].corner = k + 1;
  const auto errors = [&](const CornerCut& cut) {
    slab.corner_cuts = {cut};
    const JsonResult text = read_json("{}");
    Reader reader(*text.json);
    Context c{reader, shipped_catalogue(), Units::metric, Length::mm(19)};
    check_apron(c, "/slabs/0/apron", slab);
    return reader.errors();
  };
  // Front and right: the apron of 60 - 19 = 41 mm ends at corner 2, which is index 1.
  CHECK(errors({1, Length::mm(41), true}) == 0);
  CHECK(errors({1, Length::mm(41.1), true}) == 1);
  CHECK(errors({1, Length::mm(41), false}) == 0);
  CHECK(errors({1, Length::mm(41.1), false}) == 1);
  // Corner 3 lies between two sides without.
  CHECK(errors({2, Length::mm(200), true}) == 0);
  // Both sides of corner 2 with an apron: a straight cut of s passes the inner corner at
  // (2 x 41 - s)/sqrt 2, so 30 mm are left up to s = 82 - 42.4 = 39.6 mm; an arc of radius r at
  // r - (r - 41) sqrt 2 where r > 41, so up to r = (41 sqrt 2 - 30)/(sqrt 2 - 1) = 67.6 mm.
  slab.sides[1].apron = true;
  CHECK(errors({1, Length::mm(39.5), false}) == 0);
  CHECK(errors({1, Length::mm(39.7), false}) == 1);
  CHECK(errors({1, Length::mm(67), true}) == 0);
  CHECK(errors({1, Length::mm(68), true}) == 1);
}

TEST_CASE("a partition is a line from front to back or between two places", "[job]") {
  const Slab slab = bench("", R"(, "partitions": ["0 mm", "1 m",
      {"from": ["1.5 m", "-100 mm"], "to": ["2.5 m", "300 mm"]}])");
  CHECK(slab.partitions == std::vector<Partition>{{at(0, 0), at(0, 600)},
                                                  {at(1000, 0), at(1000, 600)},
                                                  {at(1500, -100), at(2500, 300)}});
  CHECK(problem("", R"(, "partitions": ["2001 mm"])") == "partition-outside");
  // Neither end reaches the base's edge.
  CHECK(problem("", R"(, "partitions": [{"from": ["1 m", "200 mm"], "to": ["1.2 m", "300 mm"]}])")
            .empty());
}

TEST_CASE("gaps of the base lie over it and may reach past it", "[job]") {
  const Slab slab = bench("", R"(, "gaps": [{"rectangle": {"length": "500 mm", "depth": "700 mm"},
      "at": ["-100 mm", "-50 mm"]}])");
  CHECK(slab.gaps == std::vector<Rectangle>{{at(-100, -50), Length::mm(500), Length::mm(700)}});
}

TEST_CASE("brackets stand beside the reinforcement or in it", "[job]") {
  const Slab slab = bench(R"(, "brackets": ["front"],
      "reinforcement": {"kind": "none", "brackets": ["left"]})");
  CHECK(slab.sides[0].bracket);
  CHECK_FALSE(slab.sides[1].bracket);
  CHECK(slab.sides[3].bracket);
}

TEST_CASE("reinforcement is read with its sizes", "[job]") {
  const Slab slab = bench(R"(, "reinforcement": {"kind": "bar", "diameter": "8 mm",
      "spacing": "150 mm", "cover": "20 mm"})");
  CHECK(slab.reinforcement ==
        Reinforcement{ReinforcementKind::bar, Length::mm(8), Length::mm(150), Length::mm(20)});
  CHECK(bench(R"(, "reinforcement": {"kind": "mesh"})").reinforcement ==
        Reinforcement{ReinforcementKind::mesh, {}, {}, {}});
  CHECK(bench("").reinforcement.kind == ReinforcementKind::none);
  CHECK(problem(R"(, "reinforcement": {"kind": "fiber", "spacing": "150 mm"})") ==
        "size-of-no-bars");
  CHECK(problem(R"(, "reinforcement": {"kind": "none", "cover": "20 mm"})") == "size-of-no-bars");
  CHECK(problem(R"(, "reinforcement": {"kind": "fiber"})").empty());
}

TEST_CASE("legs stand under the base each in its own place", "[job]") {
  const Slab slab = bench("", R"(, "legs": [["0 mm", "0 mm"], ["2 m", "600 mm"]])");
  CHECK(slab.legs == std::vector<Point>{at(0, 0), at(2000, 600)});
  CHECK(problem("", R"(, "legs": [["2001 mm", "0 mm"]])") == "leg-outside");
  CHECK(problem("", R"(, "legs": [["0 mm", "0 mm"], ["0.5 mm", "0 mm"]])") == "legs-at-one-place");
  CHECK(problem("", R"(, "legs": [["0 mm", "0 mm"], ["1 mm", "0 mm"]])").empty());
  CHECK(problem("", R"(, "legs": ["0 mm"])") != "");
}

TEST_CASE("the usual bendable board is the catalogue's and never a strip's", "[job]") {
  const Job job = job_of_bench("");
  REQUIRE(job.forms.bend_stock.has_value());
  CHECK(job.forms.bend_stock->id == "bend-ply-1250x2500");
  CHECK(job.forms.bend_stock->bends_to == Length::mm(100));
  CHECK(assumed(job, "/forms/bend_stock").empty());  // nothing of this slab is rounded
  const Catalogue& shipped = shipped_catalogue();
  for (const Units units : {Units::us, Units::metric}) {
    CHECK_FALSE(default_stock(shipped.boards, units).bends_to.has_value());
    const auto found = std::find_if(shipped.boards.begin(), shipped.boards.end(), [&](auto& board) {
      return board.units == units && board.item.bends_to.has_value();
    });
    CHECK(&found->item == default_bend_stock(shipped.boards, units));
  }
  // Whatever stands first.
  std::vector<CatalogueEntry<Stock>> boards(shipped.boards.rbegin(), shipped.boards.rend());
  CHECK_FALSE(default_stock(boards, Units::us).bends_to.has_value());
  boards.resize(1);
  CHECK(default_bend_stock(boards, Units::us) == &boards[0].item);
}

TEST_CASE("the bendable board is an assumption where a corner is rounded", "[job]") {
  Job job;
  job.slabs.resize(1);
  const auto assumptions = [&](bool round) {
    job.forms.bend_stock.reset();
    job.slabs[0].corner_cuts = {{0, Length::mm(120), round}};
    const JsonResult text = read_json("{}");
    Reader reader(*text.json);
    Context c{reader, shipped_catalogue(), Units::us};
    set_bend_stock(c, job);
    CHECK(job.forms.bend_stock->id == "bend-ply-48x96");
    return reader.assumptions();
  };
  CHECK(assumptions(false).empty());
  REQUIRE(assumptions(true).size() == 1);
  CHECK(assumptions(true)[0].path == "/forms/bend_stock");
}

TEST_CASE("a job may bring its own bendable board and its price", "[job]") {
  const Job job = job_of_bench("", "", R"(, "prices": {"veneer sheet": 12}, "forms": {"bend_stock":
      {"name": "veneer sheet", "length": "2 m", "width": "60 cm", "thickness": "2 mm",
       "bends_to": "50 mm"}})");
  CHECK(job.forms.bend_stock->bends_to == Length::mm(50));
  CHECK(job.forms.bend_stock->price == 12);
}
