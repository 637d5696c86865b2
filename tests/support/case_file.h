// SPDX-License-Identifier: MIT
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

namespace strikeoff::test {

/// A case: comment lines (`# …`) that say what it shows, then sections, each after a line
/// `--- NAME` and up to the next such line.
struct CaseFile {
  std::filesystem::path path;
  std::string comment;
  std::vector<std::pair<std::string, std::string>> sections;

  /// The text of a section; empty where there is none.
  [[nodiscard]] std::string section(const std::string& name) const;
  void set_section(const std::string& name, std::string text);
  /// Writes the file back.
  void save() const;
};

/// Throws std::runtime_error with the file's name when it cannot be read or is no case file.
[[nodiscard]] CaseFile load_case(const std::filesystem::path& path);

/// The case files of a directory under tests/cases, by name.
[[nodiscard]] std::vector<CaseFile> load_cases(const std::string& directory);

/// True when STRIKEOFF_UPDATE_CASES=1: the tests then write what they find into the cases, to be
/// read by eye before it is committed.
[[nodiscard]] bool update_cases();

}  // namespace strikeoff::test
