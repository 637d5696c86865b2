// SPDX-License-Identifier: MIT
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace strikeoff::test {

/// What a program run is expected to do. A section that is not written is not checked, except
/// that without `stderr` nothing may be said there.
struct ExpectedRun {
  std::vector<std::string> arguments;
  std::string input;
  int exit = 0;
  std::vector<std::string> out_whole, err_whole;           // at most one each
  std::vector<std::string> out_contains, err_contains;     // lines
  std::vector<std::pair<std::string, std::string>> files;  // name, whole content afterwards
};

/// A case file, in sections that begin with a line `--- NAME`:
///
///   # what the case shows
///   --- file: job.json        a file in the case's directory
///   --- run: plan job.json    a run; arguments split at spaces, "two words" quoted
///   --- stdin                 what the run reads
///   --- exit: 3               (default 0)
///   --- stdout                the whole output; `--- stdout contains`: each line occurs in it
///   --- stderr                the same
///   --- after: plan.json      the whole content of a file after the run
struct CliCase {
  std::vector<std::pair<std::string, std::string>> files;  // name, content
  std::vector<ExpectedRun> runs;
};

/// Throws std::runtime_error for a section it does not know.
[[nodiscard]] CliCase read_cli_case(const std::filesystem::path& path);

}  // namespace strikeoff::test
