// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "strikeoff/read_job.h"
#include "support/case_file.h"

using namespace strikeoff;

// One wrong job a file: tests/cases/wrong-jobs/NAME.case holds the job and the whole message.
TEST_CASE("every wrong job gets exactly its message", "[job]") {
  auto cases = test::load_cases("wrong-jobs");
  CHECK(cases.size() >= 65);
  for (test::CaseFile& wrong : cases) {
    INFO(wrong.path.filename().string());
    const std::string text = wrong.section("job.json");
    const ReadResult result = read_job(text);
    CHECK_FALSE(result.job.has_value());
    CHECK_FALSE(result.diagnostics.empty());
    const std::string message = render_diagnostics(result.diagnostics, "job.json", text);
    if (test::update_cases()) {
      wrong.set_section("stderr", message);
      wrong.save();
    }
    CHECK(wrong.section("stderr") == message);
  }
}
