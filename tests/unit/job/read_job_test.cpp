// SPDX-License-Identifier: MIT
#include "strikeoff/read_job.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "core/format.h"
#include "support/read.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// A job with these members added to its only slab and to itself.
Job bench(const std::string& in_slab = "", const std::string& in_job = "") {
  return job_of(R"({"units": "us", "slabs": [{
    "base": {"rectangle": {"length": "76 in", "depth": "24 in"}}, "thickness": "1 3/4 in")" +
                in_slab + R"(}], "mix": "rapid-fine-48lb")" + in_job + "}");
}

Job with_corners(const std::string& corners) {
  return job_of(R"({"slabs": [{"base": {"corners": )" + corners +
                R"(}, "thickness": "40 mm"}], "mix": "fine-20kg"})");
}

const Assumption* assumption(const Job& job, const std::string& path) {
  const auto found = std::find_if(job.assumptions.begin(), job.assumptions.end(),
                                  [&](const Assumption& a) { return a.path == path; });
  return found == job.assumptions.end() ? nullptr : &*found;
}

std::string assumed(const Job& job, const std::string& path) {
  const Assumption* found = assumption(job, path);
  return found == nullptr ? "" : found->value;
}

}  // namespace

TEST_CASE("the shortest job gets every default", "[job]") {
  const Job job = bench(R"(, "overhang": "1 1/8 in")");
  const Slab& slab = job.slabs.at(0);
  CHECK(slab.base == corners_of({{}, Length::inches(76), Length::inches(24)}));
  REQUIRE(slab.sides.size() == 4);
  CHECK(slab.sides[2].name == "back");
  CHECK(slab.sides[2].number == 3);
  CHECK(slab.sides[2].overhang == Length::inches(1.125));
  CHECK(slab.sides[2].panel_overhang == Length::inches(1.125) - Length::mm(12));
  CHECK(slab.panel->id == "backer-34x52");
  CHECK(slab.panel_gap == Length::inches(0.125));
  CHECK(job.waste == 0.10);
  CHECK(job.spare_bags == 1);
  CHECK(job.currency == "USD");
  CHECK(job.forms.strip_stock.at(0).id == "board-13x84");
  CHECK(job.forms.kerf == Length::inches(0.125));
  CHECK(job.forms.screw_spacing == Length::mm(200));
  CHECK(job.crew.people ==
        std::vector<std::vector<Role>>{{Role::mix}, {Role::carry}, {Role::place}, {Role::finish}});
  CHECK(job.crew.times.mix == UsualBad{minutes(3), minutes(4)});
  CHECK(job.crew.times.back == UsualBad{minutes(0.5), minutes(0.9)});
  CHECK(job.site.air == Temperature::fahrenheit(68));
  CHECK(job.site.bag_temperature == job.site.air);
  CHECK(job.site.water_temperature == Temperature::celsius(15));
}

TEST_CASE("every default is an assumption with its place and the heaviest comes first", "[job]") {
  const Job job = bench(R"(, "overhang": "1 1/8 in")");
  CHECK(job.assumptions.front().path == "/slabs/0/panel");
  CHECK(job.assumptions.at(1).path == "/slabs/0/panel/overhang");
  CHECK(assumed(job, "/slabs/0/panel/overhang") == "5/8 in");  // 1 1/8 in less 12 mm
  CHECK(assumed(job, "/mix") == "rapid fine topping, 48 lb bag");
  CHECK(assumed(job, "/mix/water/use") == "3 qt 22.5 fl oz");
  CHECK(assumed(job, "/waste") == "10 %");
  CHECK(assumed(job, "/site/air") == "68 F");
  CHECK(assumed(job, "/crew/times") ==
        "load 1 to 1.6, mix 3 to 4, discharge 0.5 to 0.8, reset 0.5 to 1, carry 0.5 to 0.9, "
        "return 0.5 to 0.9, place 3 to 5 min");
  CHECK(assumed(job, "/forms/kerf") == "1/8 in");
  CHECK(assumed(job, "/prices") == "the catalogue's");
  CHECK(std::is_sorted(job.assumptions.begin(), job.assumptions.end(),
                       [](const auto& a, const auto& b) {
                         return a.weight != b.weight ? a.weight > b.weight : a.path < b.path;
                       }));
  for (const Assumption& a : job.assumptions) {
    INFO(a.path);
    CHECK_FALSE(a.reason.empty());
    CHECK((a.reason.find("assumption") != std::string::npos ||
           a.reason.find("no source") != std::string::npos ||
           a.reason.find("invented") != std::string::npos));
  }
}

TEST_CASE("a value the job gives is no assumption", "[job]") {
  const Job job =
      bench(R"(, "overhang": "1 1/8 in", "panel": {"stock": "backer-34x52", "overhang": "1/2 in"})",
            R"(, "waste": "5 %", "spare_bags": 0, "currency": "USD", "tax": "8 %",
      "forms": {"strip_stock": ["board-13x84"], "kerf": "1/8 in", "oversize": "1/8 in",
                "end_trim": "0 in", "reusable": {"length": "2 ft", "width": "2 in"}, "screw_spacing": "8 in", "corner": "mitre"},
      "crew": {"mixers": 1, "roles": [["mix"], ["place", "carry"]], "bags_per_batch": 1,
               "usable": "50 %", "least_advance": "6 in", "times_per": "batch", "times": {"load": "1 min",
               "mix": {"usual": "3 min", "bad": "5 min"}, "discharge": "30 s", "reset": "30 s",
               "carry": "30 s", "return": "30 s", "place": "2 min"}},
      "site": {"air": "60 F", "humidity": "50 %", "wind": "0 mph", "sun": "shade",
               "bag_temperature": "60 F", "water_temperature": "55 F"},
      "limits": {"margin": "2 min"},
      "finish": {"grits": [120], "fill_pits": true, "sealer": "none"})");
  std::vector<std::string> left;
  for (const Assumption& a : job.assumptions) left.push_back(a.path);
  CHECK(left ==
        std::vector<std::string>{"/mix", "/mix/water/use", "/mix/activation_energy", "/prices"});
  CHECK(job.slabs[0].sides[0].panel_overhang == Length::inches(0.5));
  CHECK(job.crew.people == std::vector<std::vector<Role>>{{Role::mix}, {Role::carry, Role::place}});
  CHECK(job.crew.times.load == UsualBad{minutes(1), minutes(1)});
  CHECK(job.crew.usable == 0.5);
  CHECK(job.forms.reusable == Reusable{Length::inches(24), Length::inches(2)});
  CHECK(job.limits.margin == minutes(2));
}

TEST_CASE("default times grow with the bags of a batch and given ones as times_per says", "[job]") {
  const Job two_bags = bench("", R"(, "crew": {"bags_per_batch": 2, "times": {"load": "90 s"}})");
  CHECK(assumed(two_bags, "/crew/times") ==
        "mix 3 to 4, discharge 1 to 1.6, reset 0.5 to 1, carry 0.5 to 0.9, return 0.5 to 0.9, "
        "place 6 to 10 min");
  const Times& batch = two_bags.crew.times;
  CHECK(batch.load.usual == seconds(90));
  CHECK(batch.place == UsualBad{minutes(6), minutes(10)});
  CHECK(batch.discharge == UsualBad{minutes(1), minutes(1.6)});
  CHECK(batch.mix == UsualBad{minutes(3), minutes(4)});
  CHECK(batch.carry == UsualBad{minutes(0.5), minutes(0.9)});
  const Times bag = bench("", R"(, "crew": {"bags_per_batch": 2, "times_per": "bag",
                                 "times": {"load": "90 s", "mix": "2 min"}})")
                        .crew.times;
  CHECK(bag.load.usual == seconds(180));
  CHECK(bag.mix.usual == minutes(2));
}

TEST_CASE("overhangs by side and walls set each side", "[job]") {
  const Slab slab = bench(R"(, "walls": ["back", 4],
      "overhang": {"all": "1 in", "edges": {"2": "2 in"}})")
                        .slabs[0];
  CHECK(slab.sides[0].overhang == Length::inches(1));
  CHECK(slab.sides[1].overhang == Length::inches(2));
  CHECK(slab.sides[1].panel_overhang == Length::mm(20));
  CHECK(slab.sides[2].wall);
  CHECK(slab.sides[2].overhang == Length{});
  CHECK(slab.sides[2].panel_overhang == Length{});
  CHECK(slab.sides[3].wall);
  const Job flush = bench();
  CHECK(flush.slabs[0].sides[0].panel_overhang == Length::mm(-12));
  CHECK(assumed(flush, "/slabs/0/overhang") == "0 in");
}

TEST_CASE("a slab on the ground has neither panel nor overhang", "[job]") {
  const Job job = bench(R"(, "support": "ground")");
  CHECK(job.slabs[0].support == Support::ground);
  CHECK_FALSE(job.slabs[0].panel.has_value());
  CHECK(assumed(job, "/slabs/0/panel") == "none");
  CHECK(assumption(job, "/slabs/0/overhang") == nullptr);
}

TEST_CASE("corners given clockwise are turned and edges keep the numbers as written", "[job]") {
  const std::string forward =
      R"([["0 m","0 m"],["2 m","0 m"],["2 m","1 m"],["1 m","1 m"],["1 m","2 m"],["0 m","2 m"]])";
  const std::string backward =
      R"([["0 m","0 m"],["0 m","2 m"],["1 m","2 m"],["1 m","1 m"],["2 m","1 m"],["2 m","0 m"]])";
  const Slab a = with_corners(forward).slabs[0], b = with_corners(backward).slabs[0];
  CHECK(a.base == b.base);
  CHECK(signed_area(b.base) > Area{});
  for (std::size_t k = 0; k < 6; ++k) {
    CHECK(a.sides[k].number == static_cast<int>(k) + 1);
    CHECK(b.sides[k].number == 6 - static_cast<int>(k));
  }
  // The first side, from corner 1 along x, is the last edge of the clockwise list.
  CHECK(b.sides[0].name == "edge 6");
}

TEST_CASE("an inline mix says what its label leaves open", "[job]") {
  const Job job = job_of(R"({"slabs": [{"base": {"rectangle": {"length": "1 m", "depth": "60 cm"}},
      "thickness": "40 mm"}], "mix": {"bag": "25 kg", "yield": "12.5 L",
      "water": {"least": "2.4 L", "most": "3.6 L"}, "working_time": "30 min"}})");
  CHECK(job.mix.name == "my mix");
  CHECK(job.mix.at == Temperature::celsius(20));
  CHECK(assumed(job, "/mix/at") == "20 C");
  CHECK(assumed(job, "/mix/yield_water") == "3 L");
  CHECK(assumed(job, "/mix/water/use") == "3 L");
  CHECK(assumption(job, "/mix") == nullptr);
  CHECK(job.units == Units::metric);
  CHECK(job.currency == "EUR");
}

TEST_CASE("a plasticizer lowers the water to the least", "[job]") {
  const Job job = bench("", R"(, "additives": [{"name": "plasticizer-cup", "per_bag": 1}])");
  CHECK(assumed(job, "/mix/water/use") == "3 qt 6.5 fl oz");
  CHECK(job.additives.at(0).kind == AdditiveKind::plasticizer);
  CHECK(job.additives.at(0).per_bag == 1);
}

TEST_CASE("a plasticizer of which nothing is added leaves the water as it is", "[job]") {
  const Job job = bench("", R"(, "additives": [{"name": "plasticizer-cup", "per_bag": 0}])");
  CHECK(assumed(job, "/mix/water/use") == "3 qt 22.5 fl oz");
}

TEST_CASE("an additive named by its catalogue id alone says what is assumed", "[job]") {
  const Job job = bench("", R"(, "additives": ["retarder-scoop"])");
  CHECK(assumed(job, "/additives/0") == "set retarder powder, one scoop a dose");
  CHECK(assumed(job, "/additives/0/per_bag") == "auto");
}

TEST_CASE("an auto dose has an end even when the label gives none", "[job]") {
  const Job job = bench("", R"(, "additives": [{"name": "r", "kind": "retarder",
      "per_bag": "auto", "extends": "9 min"}])");
  CHECK_FALSE(job.additives.at(0).per_bag.has_value());
  CHECK(job.additives.at(0).most == 4);
  CHECK(assumed(job, "/additives/0/most") == "4");
  const Job table = bench("", R"(, "additives": [{"name": "r", "kind": "retarder",
      "per_bag": "auto", "factors": [[1, 1.5], [2.5, 2]]}])");
  CHECK(table.additives.at(0).most == 2.5);
}

TEST_CASE("an additive given by its id alone is an auto dose and says so", "[job]") {
  const Job job = bench("", R"(, "additives": ["retarder-scoop"])");
  CHECK_FALSE(job.additives.at(0).per_bag.has_value());
  CHECK(assumed(job, "/additives/0/per_bag") == "auto");
  CHECK(assumed(bench("", R"(, "additives": [{"name": "retarder-scoop", "per_bag": 1}])"),
                "/additives/0/per_bag")
            .empty());
}

TEST_CASE("board and panel are the first of the catalogue for the units of the job", "[job]") {
  const std::string rest = R"("slabs": [{"base": {"rectangle": {"length": "1 m", "depth": "60 cm"}},
      "thickness": "40 mm"}], "mix": "fine-20kg"})";
  for (const std::string& text : {"{" + rest, R"({"units": "metric", )" + rest}) {
    const Job metric = job_of(text);
    CHECK(metric.slabs[0].panel->id == "backer-850x1300");
    CHECK(metric.forms.strip_stock.at(0).id == "board-340x2150");
    CHECK(metric.forms.kerf == Length::inches(0.125));
    CHECK(assumption(metric, "/forms/strip_stock")->reason ==
          "the catalogue's first board for metric jobs, its price invented (assumption)");
  }
  const Job us = job_of(R"({"units": "us", )" + rest);
  CHECK(us.slabs[0].panel->id == "backer-34x52");
  CHECK(us.forms.strip_stock.at(0).id == "board-13x84");
  CHECK(assumption(us, "/slabs/0/panel")->reason.find("first sheet for US jobs") !=
        std::string::npos);
}

TEST_CASE("a size far from its partner and in the other units is remarked on", "[job]") {
  const auto rectangle = [](const std::string& units, const std::string& sizes) {
    return job_of(R"({"units": ")" + units + R"(", "slabs": [{"base": {"rectangle": {)" + sizes +
                  R"(}}, "thickness": "40 mm", "panel": "none"}], "mix": "fine-20kg"})");
  };
  const Job us = rectangle("us", R"("length": "50 mm", "depth": "24 in")");
  CHECK(us.assumptions.front() ==
        Assumption{"/slabs/0/base/rectangle/length", "1 15/16 in",
                   "the job says \"50 mm\" beside a depth of \"24 in\": look whether the unit is a "
                   "slip (assumption: it is meant)",
                   110});
  CHECK(rectangle("metric", R"("length": "2.4 m", "depth": "6 in")").assumptions.front().path ==
        "/slabs/0/base/rectangle/depth");
  // Two tapes are no slip, nor is a long and narrow slab by one tape.
  CHECK(rectangle("us", R"("length": "1930 mm", "depth": "24 in")").assumptions.front().weight <
        110);
  CHECK(rectangle("us", R"("length": "20 ft", "depth": "6 in")").assumptions.front().weight < 110);
}

TEST_CASE("prices reach the goods by id and by name", "[job]") {
  const Job job = bench("", R"(, "prices": {"rapid-fine-48lb": 20, "strip-screws": 8,
      "coated shelf board, 5/8 x 13 1/2 x 84 in": 17, "backer-34x52": 12, "x-note": "ours"})");
  CHECK(job.mix.price == 20);
  CHECK(job.forms.strip_stock[0].price == 17);
  CHECK(job.slabs[0].panel->price == 12);
  CHECK(job.prices.at("strip-screws") == 8);
  CHECK(job.prices.size() == 4);
}

TEST_CASE("what is auto is open and has a stand-in", "[job]") {
  CHECK_FALSE(bench().open.any());
  const Job job = bench("", R"(, "crew": {"mixers": "auto", "mixing": "auto", "carrying": 2,
      "placing": "auto", "finishing": "auto", "bags_per_batch": "auto", "times_per": "bag",
      "times": {"load": "90 s"}}, "site": {"water_temperature": "auto", "ice": "auto"})");
  CHECK(job.open == Open{true, true, {Role::mix, Role::place, Role::finish}, false, true, true});
  CHECK(job.crew.mixers == 1);
  CHECK(job.crew.bags_per_batch == 1);
  CHECK(job.crew.people.size() == 5);
  CHECK(job.crew.times.load.usual == seconds(90));
  CHECK(job.site.water_temperature == Temperature::celsius(15));
  CHECK(job.site.ice == Mass{});
  const Job shared = bench("", R"(, "crew": {"roles": "auto", "people": 3})");
  CHECK(shared.open.sharing);
  CHECK(shared.crew.people.size() == 3);
}

TEST_CASE("dates are days of the calendar with an optional local time", "[job]") {
  using std::chrono::year;
  CHECK(bench("", R"(, "date": "2028-02-29")").date->day == year{2028} / 2 / 29);
  CHECK(bench("", R"(, "date": "2026-05-09T08:30")").date->time == std::chrono::minutes{510});
  for (const char* wrong : {"2026-02-29", "2026-13-01", "2026-5-9", "2026-05-09T8:30",
                            "2026-05-09T24:00", "2026-05-09T08:30Z", "-026-05-09", ""}) {
    INFO(wrong);
    const std::string text = std::string(R"({"date": ")") + wrong + R"("})";
    const ReadResult result = read_job(text);
    CHECK(std::any_of(result.diagnostics.begin(), result.diagnostics.end(),
                      [](const Diagnostic& d) { return d.pointer == "/date"; }));
  }
}

TEST_CASE("keys that begin with x- are the user's own at every level", "[job]") {
  const Job plain = bench();
  CHECK(bench(R"(, "x-note": [1])", R"(, "x-shop": {"a": null})") == plain);
}

TEST_CASE("the starter job is a job", "[job]") {
  const Job job = job_of(std::string(starter_job()));
  CHECK(job.name == "my bench");
  CHECK(job.slabs.size() == 1);
}

TEST_CASE("any single value replaced by another kind is refused in words or read", "[job]") {
  // Follow-on failures (an empty list read as full, a missing corner) would crash here.
  const std::string text = R"({"slabs": [{"base": {"rectangle": {"length": "1 m", "depth": "1 m"},
 "partitions": ["20 cm", {"from": ["0 m", "0 m"], "to": ["1 m", "1 m"]}],
 "gaps": [{"rectangle": {"length": "20 cm", "depth": "1 m"}, "at": ["30 cm", "0 m"]}]},
 "overhang": {"all": "60 mm", "edges": {"1": "10 mm"}}, "walls": ["back"], "thickness": "40 mm",
 "panel": {"stock": "backer-34x52", "overhang": "5 mm"},
 "openings": [{"rectangle": {"length": "20 cm", "depth": "20 cm"}, "at": ["30 cm", "30 cm"],
 "corner_radius": "2 cm"}, {"circle": "20 cm", "at": ["70 cm", "70 cm"]}],
 "levels": [{"at": ["0 m", "0 m"], "low": "0 mm"}, {"at": ["1 m", "0 m"], "low": "3 mm"},
 {"at": ["0 m", "1 m"], "low": "2 mm"}], "fall": {"percent": "1 %", "towards": "front"},
 "apron": {"depth": "5 cm", "sides": ["left"]}, "brackets": ["right"]}],
 "mix": {"bag": "25 kg", "yield": "12 L", "water": {"use": "3 L"}, "strength": [["1 d", "9 MPa"]],
 "price_breaks": [{"from": 2, "price": 3}]},
 "additives": [{"name": "r", "kind": "retarder", "per_bag": 1, "factors": [[1, 2]]}],
 "forms": {"strip_stock": ["board-13x84"], "bend_stock": {"name": "b", "length": "1 m",
 "width": "1 m", "thickness": "2 mm", "bends_to": "5 cm"}}, "crew": {"roles": [["mix"], ["carry", "place"]],
  "times": {"mix": {"usual": "3 min"}}}, "site": {"hours":
  [{"time": "09:00", "air": "20 C"}, {"time": "10:00", "air": "20 C"}], "protection": ["tent"]},
  "on_hand": [{"item": "film-sealer", "quantity": 1}], "prices": {"film-sealer": 3},
  "finish": {"grits": [80, 120], "sealer": {"name": "oil", "covers": "9 m2", "pack": "1 L"}}})";
  REQUIRE(read_job(text).job);
  for (const char* other : {"null", "true", "-1", "1e300", "\"\"", "\"x\"", "[]", "{}", "[[]]",
                            "[{}]", "{\"all\": 1}"}) {
    for (std::size_t i = 0; i < text.size(); ++i) {
      if (text[i] != '"' && text[i] != '[' && text[i] != '{') continue;
      // Replace the text, list or object that begins here.
      std::size_t end = i + 1;
      if (text[i] == '"') {
        end = text.find('"', end) + 1;
      } else {
        for (int open = 1; open > 0; ++end) {
          open += (text[end] == '[' || text[end] == '{') - (text[end] == ']' || text[end] == '}');
        }
      }
      const std::string changed = text.substr(0, i) + other + text.substr(end);
      const ReadResult result = read_job(changed);
      CHECK(result.job.has_value() == result.diagnostics.empty());
      for (const Diagnostic& d : result.diagnostics) CHECK_FALSE(d.message.empty());
    }
  }
}
