// SPDX-License-Identifier: MIT
#include "render/csv.h"

#include <catch2/catch.hpp>
#include <limits>

#include "strikeoff/render.h"
#include "support/render_sample.h"

using namespace strikeoff;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

TEST_CASE("a cell is quoted where RFC 4180 asks for it and a row ends with CRLF", "[render]") {
  csv::CsvSheet sheet({"plain", "comma", "quote", "break"});
  sheet.add({"a b", "a,b", "5\" pipe", "a\r\nb"});
  CHECK(sheet.str() == "plain,comma,quote,break\r\na b,\"a,b\",\"5\"\" pipe\",\"a\r\nb\"\r\n");
}

TEST_CASE("a text that a spreadsheet would calculate has an apostrophe before it", "[render]") {
  CHECK(csv::cell("=1+1") == "'=1+1");
  CHECK(csv::cell("+1") == "'+1");
  CHECK(csv::cell("-1") == "'-1");
  CHECK(csv::cell("@sum") == "'@sum");
  CHECK(csv::cell(" \t=1") == "'  =1");
  CHECK(csv::cell("\r=1") == "' =1");
  CHECK(csv::cell("a=1") == "a=1");
  CHECK(csv::cell("") == "");
}

TEST_CASE("control characters and wrong bytes do not reach a cell", "[render]") {
  CHECK(csv::cell("a\x1b[31m\nb") == "a [31m b");
  CHECK(csv::cell("a\xff") == "a?");
  CHECK(csv::cell("\xE2\x80\xAEx") == " x");  // U+202E
}

TEST_CASE("a number is the shortest that reads back and never minus nothing", "[render]") {
  CHECK(csv::cell(0.1) == "0.1");
  CHECK(csv::cell(2387.6) == "2387.6");
  CHECK(csv::cell(-0.0) == "0");
  CHECK(csv::cell(1.0 / 3) == "0.3333333333333333");
  CHECK(csv::cell(-12) == "-12");
  CHECK_THROWS_AS(csv::cell(std::numeric_limits<double>::quiet_NaN()), std::logic_error);
  CHECK_THROWS_AS(csv::cell(std::numeric_limits<double>::infinity()), std::logic_error);
}

TEST_CASE("without another wish the table is the cut list", "[render]") {
  const Plan plan = test::printed_bench_plan();
  CHECK(render_csv(plan) == render_csv(plan, CsvTable::parts));
  CHECK_THAT(render_csv(plan), StartsWith("mark,slab,role,place,stock,width_mm,length_mm,"));
}

TEST_CASE("a size that is found on site is an empty cell", "[render]") {
  Plan plan;
  plan.cut_list.parts.resize(1);
  plan.cut_list.parts.front().mark = "C1";
  CHECK_THAT(render_csv(plan), Contains("\r\nC1,,,,,,,,1,0,0\r\n"));
}

TEST_CASE("a plan with nothing to cut is a header alone", "[render]") {
  for (const CsvTable table : {CsvTable::parts, CsvTable::boards, CsvTable::materials,
                               CsvTable::batches, CsvTable::schedule}) {
    const std::string text = render_csv({}, table);
    CHECK(text.find("\r\n") == text.size() - 2);
  }
}
