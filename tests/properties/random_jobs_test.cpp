// SPDX-License-Identifier: MIT
// Made-up jobs as a person might write them, right and wrong: nothing crashes, every problem has
// its place in the text, and what is planned prints. The fuzzer tries any bytes; this tries sense.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "strikeoff/render.h"
#include "support/random_outlines.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

using Keys = std::vector<std::string>;  // each "key": value

std::string object(const Keys& keys) {
  return "{" + fmt::format("{}", fmt::join(keys, ",\n  ")) + "}";
}

std::string list(const std::vector<std::string>& entries) {
  return "[" + fmt::format("{}", fmt::join(entries, ", ")) + "]";
}

std::string length(Draw& draw, int least_mm, int most_mm) {
  const int value = draw.whole(least_mm, most_mm);
  if (draw.one_in(4)) return fmt::format(R"("{} {}/8 in")", value / 25, draw.whole(1, 7));
  return fmt::format(R"("{} mm")", value);
}

std::string point(const Point& p) {
  return fmt::format(R"(["{} mm", "{} mm"])", p.x.in_mm(), p.y.in_mm());
}

std::string side(Draw& draw) {
  const std::vector<std::string> sides{"front", "right", "back", "left"};
  if (draw.one_in(4)) return std::to_string(draw.whole(1, 6));
  return '"' + sides[static_cast<std::size_t>(draw.whole(0, 3))] + '"';
}

/// A tape's walk round a rectangle or an L, now and then not quite closing.
std::string runs(Draw& draw) {
  const int a = draw.whole(800, 2500), b = draw.whole(400, 900), c = draw.whole(300, 1200);
  const int off = draw.one_in(3) ? draw.whole(-6, 6) : 0;
  if (draw.one_in(2)) {
    return fmt::format(R"(["E {} mm", "N {} mm", "W {} mm", "S {} mm"])", a, b, a + off, b);
  }
  return fmt::format(R"(["E {} mm", "N {} mm", "W {} mm", "N {} mm", "W {} mm", "S {} mm"])", a, b,
                     a - 350, c, 350 + off, b + c);
}

std::string random_base(Draw& draw) {
  if (draw.one_in(4)) return object({"\"runs\": " + runs(draw)});
  if (draw.one_in(2)) {
    std::vector<std::string> corners;
    Polygon polygon = random_outline(draw);
    if (draw.one_in(5)) std::reverse(polygon.begin(), polygon.end());
    if (draw.one_in(20)) std::swap(polygon[0], polygon[1]);
    for (const Point& p : polygon) corners.push_back(point(p));
    return object({"\"corners\": " + list(corners)});
  }
  const int a = draw.whole(400, 3000), b = draw.whole(300, 1200);
  Keys keys{fmt::format(R"("rectangle": {{"length": "{} mm", "depth": "{} mm"}})", a, b)};
  if (draw.one_in(5)) {
    const double across = std::hypot(a, b);
    keys.push_back(fmt::format(R"("diagonals": ["{:.1f} mm", "{:.1f} mm"])",
                               across + draw.whole(-8, 8), across + draw.whole(-8, 8)));
  }
  return object(keys);
}

std::string random_overhang(Draw& draw) {
  if (draw.one_in(2)) return length(draw, 0, 60);
  Keys keys{"\"all\": " + length(draw, 0, 50)};
  if (draw.one_in(2)) keys.push_back("\"front\": " + length(draw, 0, 90));
  if (draw.one_in(4)) keys.push_back("\"edges\": {\"2\": " + length(draw, 0, 60) + "}");
  return object(keys);
}

std::string random_opening(Draw& draw, int number) {
  Keys keys{fmt::format(R"("name": "hole {}")", number)};
  if (draw.one_in(3)) {
    keys.push_back("\"circle\": " + length(draw, 60, 350));
  } else {
    keys.push_back("\"rectangle\": {\"length\": " + length(draw, 100, 500) +
                   ", \"depth\": " + length(draw, 100, 400) + "}");
    if (draw.one_in(4)) keys.push_back("\"corner_radius\": " + length(draw, 5, 60));
  }
  keys.push_back("\"at\": [" + length(draw, 50, 900) + ", " + length(draw, 50, 400) + "]");
  if (draw.one_in(4)) keys.push_back("\"through\": false");
  return object(keys);
}

std::string random_levels(Draw& draw) {
  std::vector<std::string> readings;
  for (int k = draw.whole(1, 6); k > 0; --k) {
    readings.push_back("{\"at\": [" + length(draw, 0, 1500) + ", " + length(draw, 0, 800) +
                       "], \"low\": " + length(draw, 0, 14) + "}");
  }
  return list(readings);
}

std::string random_slab(Draw& draw, int number) {
  Keys keys{fmt::format(R"("name": "slab {}")", number), "\"base\": " + random_base(draw),
            "\"thickness\": " + length(draw, 30, 90)};
  if (draw.one_in(6)) {
    keys.emplace_back(R"("support": "ground")");
  } else if (!draw.one_in(5)) {
    keys.push_back("\"overhang\": " + random_overhang(draw));
  }
  if (draw.one_in(4)) keys.push_back("\"walls\": [" + side(draw) + "]");
  if (draw.one_in(4)) keys.emplace_back(R"("panel": "none")");
  if (draw.one_in(3)) {
    std::vector<std::string> openings;
    for (int k = draw.whole(1, 3); k > 0; --k) openings.push_back(random_opening(draw, k));
    keys.push_back("\"openings\": " + list(openings));
  }
  if (draw.one_in(5)) keys.push_back("\"levels\": " + random_levels(draw));
  if (draw.one_in(6)) {
    keys.push_back(fmt::format(R"("fall": {{"percent": "{} %", "towards": {}}})",
                               draw.whole(0, 30) / 10.0, side(draw)));
  }
  if (draw.one_in(6)) {
    keys.push_back("\"apron\": {\"depth\": " + length(draw, 20, 120) + ", \"sides\": [" +
                   side(draw) + "]}");
  }
  if (draw.one_in(5)) {
    keys.push_back(fmt::format(R"("corner_treatment": [{{"corner": {}, "{}": {}}}])",
                               draw.whole(1, 6), draw.one_in(3) ? "clip" : "radius",
                               length(draw, 5, 200)));
  }
  return object(keys);
}

std::string random_job(Draw& draw) {
  std::vector<std::string> slabs;
  for (int k = draw.whole(1, 3); k > 0; --k) slabs.push_back(random_slab(draw, k));
  Keys keys{draw.one_in(2) ? R"("units": "us")" : R"("units": "metric")",
            "\"slabs\": " + list(slabs),
            draw.one_in(2) ? R"("mix": "rapid-fine-48lb")" : R"("mix": "rapid-fine-24kg")"};
  if (draw.one_in(3)) {
    keys.push_back(fmt::format(R"("crew": {{"mixers": {}, "bags_per_batch": {}}})",
                               draw.whole(1, 3), draw.whole(1, 3)));
  }
  if (draw.one_in(3)) {
    keys.push_back("\"forms\": {\"oversize\": " + length(draw, 0, 6) + "}");
  }
  if (draw.one_in(4)) keys.emplace_back(R"("date": "2026-05-16T09:00")");
  return object(keys);
}

/// A place is a line of the text and a character of it, or its end.
bool is_in(const Diagnostic& d, const std::string& text) {
  const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
  return 1 <= d.line && d.line <= lines && d.column >= 1 && d.width >= 1;
}

}  // namespace

TEST_CASE("jobs of any shape are planned and printed or told what is wrong and where",
          "[random-jobs]") {
  const int jobs = 600;
  int planned = 0;
  Draw draw(7);
  for (int number = 0; number < jobs; ++number) {
    const std::string text = random_job(draw);
    CAPTURE(number, text);
    const ReadResult read = read_job(text);
    CHECK(read.job.has_value() == read.diagnostics.empty());
    for (const Diagnostic& d : read.diagnostics) {
      CAPTURE(d.code, d.message, d.line, d.column);
      CHECK(is_in(d, text));
      CHECK_FALSE(d.pointer.empty());
      CHECK_FALSE(d.message.empty());
      CHECK(d.code != "syntax");
    }
    if (!read.job) CHECK_FALSE(render_diagnostics(read.diagnostics, "job.json", text).empty());
    if (!read.job) continue;
    ++planned;
    const Plan plan = make_plan(*read.job);
    CHECK_FALSE(render_text(plan).empty());
    CHECK(render_json(plan) == render_json(make_plan(*read.job)));
  }
  CHECK(planned > jobs / 12);  // most have something wrong on purpose
}
