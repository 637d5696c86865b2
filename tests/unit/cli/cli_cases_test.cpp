// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <sstream>

#include "cli/run.h"
#include "support/cli_case.h"
#include "support/source_dir.h"
#include "support/temporary_directory.h"

using namespace strikeoff;

namespace {

std::vector<std::filesystem::path> case_files() {
  std::vector<std::filesystem::path> files;
  const std::filesystem::path directory = test::source_dir() / "tests/cases/cli";
  for (const auto& entry : std::filesystem::directory_iterator(directory)) {
    if (entry.path().extension() == ".case") files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

void check_run(const test::ExpectedRun& expected, const test::TemporaryDirectory& directory) {
  std::istringstream in(expected.input);
  std::ostringstream out;
  std::ostringstream err;
  const int exit = cli::run(expected.arguments, in, out, err);
  CAPTURE(expected.arguments, out.str(), err.str());
  CHECK(exit == expected.exit);
  for (const std::string& text : expected.out_whole) CHECK(out.str() == text);
  for (const std::string& text : expected.err_whole) CHECK(err.str() == text);
  for (const std::string& line : expected.out_contains) {
    CHECK_THAT(out.str(), Catch::Matchers::Contains(line));
  }
  for (const std::string& line : expected.err_contains) {
    CHECK_THAT(err.str(), Catch::Matchers::Contains(line));
  }
  if (expected.err_whole.empty() && expected.err_contains.empty()) CHECK(err.str().empty());
  for (const auto& [name, content] : expected.files) CHECK(directory.read(name) == content);
}

}  // namespace

TEST_CASE("the program does what each case file says") {
  const auto files = case_files();
  REQUIRE(files.size() >= 10);  // fail loudly rather than run nothing
  for (const std::filesystem::path& file : files) {
    DYNAMIC_SECTION(file.stem().string()) {
      const test::CliCase one = test::read_cli_case(file);
      REQUIRE_FALSE(one.runs.empty());
      const test::TemporaryDirectory directory;
      for (const auto& [name, content] : one.files) directory.write(name, content);
      const test::WorkingDirectory here(directory.path());
      for (const test::ExpectedRun& run : one.runs) check_run(run, directory);
    }
  }
}
