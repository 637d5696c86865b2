// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "render/html_blocks.h"
#include "render/text_sections.h"
#include "strikeoff/render.h"
#include "support/render_sample.h"

using namespace strikeoff;
using Catch::Matchers::Contains;

namespace {

text::Table table_of(std::vector<std::string> cells) {
  text::Table table({{"What"}, {"Long", text::Align::right}});
  table.add(std::move(cells));
  return table;
}

}  // namespace

TEST_CASE("words of the job are escaped in every kind of block", "[render]") {
  const std::string hostile = "<i a=\"b\">&'";
  const std::string safe = "&lt;i a=&quot;b&quot;&gt;&amp;&#39;";
  CHECK(html::blocks(text::paragraph("  ", hostile)) == "<p>" + safe + "</p>\n");
  CHECK_THAT(html::blocks(text::paragraph("  " + hostile + " ", "x")), Contains(safe + "</b> x"));
  CHECK_THAT(html::blocks(text::placed(table_of({hostile, hostile}))),
             Contains(">" + safe + "</th>") && Contains(">" + safe + "</td>"));
  CHECK(html::blocks(text::Text(text::Heading{hostile, '='})) == "<h1>" + safe + "</h1>\n");
}

TEST_CASE("control characters of a plan do not reach the sheet", "[render]") {
  Plan plan = test::printed_bench_plan();
  plan.name = "bell\x07 escape\x1b[31m\nline\xff\xE2\x80\xAE";
  const std::string text = render_html(plan);
  CHECK(text.find('\x07') == std::string::npos);
  CHECK(text.find('\x1b') == std::string::npos);
  CHECK(text.find('\xff') == std::string::npos);
  CHECK(text.find("\xE2\x80\xAE") == std::string::npos);
}

TEST_CASE("the first column names its row and the title its column", "[render]") {
  const std::string text = html::blocks(text::placed(table_of({"board", "2 m"})));
  CHECK_THAT(text, Contains("<th scope=\"col\">What</th><th scope=\"col\" class=\"right\">Long"));
  CHECK_THAT(text, Contains("<th scope=\"row\" class=\"narrow\">board</th>"));
}

TEST_CASE("a row has a box to tick where it is asked for", "[render]") {
  const text::Text table = text::placed(table_of({"board", "2 m"}));
  CHECK_THAT(html::blocks(table, html::Ticks::rows), Contains("class=\"box\""));
  CHECK_THAT(html::blocks(table), !Contains("class=\"box\""));
}

TEST_CASE("a word of 20 letters stays whole and a longer one may break", "[render]") {
  const std::string twenty(20, 'x');
  CHECK(html::blocks(text::paragraph("", std::string(19, 'x') + " y")) ==
        "<p>" + std::string(19, 'x') + " y</p>\n");
  CHECK(html::blocks(text::paragraph("", twenty + "y")) == "<p>" + twenty + "<wbr>y</p>\n");
  CHECK(html::blocks(text::paragraph("", "/site/wind")) == "<p>/site/<wbr>wind</p>\n");
}

TEST_CASE("a plan with nothing in it is still a whole page", "[render]") {
  const std::string text = render_html({});
  CHECK_THAT(text, Contains("<h1>slab</h1>") && Contains("</html>\n") && !Contains("<section"));
}

TEST_CASE("the card has a column only for what the batches have", "[render]") {
  Plan plan = test::printed_bench_plan();
  for (Batch& batch : plan.batches) {
    batch.ice = Mass{};
    batch.doses.clear();
    batch.bucket_mark.reset();
  }
  CHECK_THAT(text::batch_rows(plan).str(),
             !Contains("Ice") && !Contains("Doses") && !Contains("Bucket mark"));
  plan.batches.front().ice = Mass::from_si(1);
  plan.batches.front().bucket_mark = Length::mm(70);
  plan.batches.front().bucket_fills = 2;
  CHECK_THAT(text::batch_rows(plan).str(), Contains("Ice") && Contains("2 times"));
}
