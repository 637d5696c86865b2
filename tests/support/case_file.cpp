// SPDX-License-Identifier: MIT
#include "support/case_file.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "support/source_dir.h"

namespace strikeoff::test {

std::string CaseFile::section(const std::string& name) const {
  for (const auto& [section, text] : sections) {
    if (section == name) return text;
  }
  return {};
}

void CaseFile::set_section(const std::string& name, std::string text) {
  for (auto& [section, old] : sections) {
    if (section == name) {
      old = std::move(text);
      return;
    }
  }
  sections.emplace_back(name, std::move(text));
}

void CaseFile::save() const {
  std::ofstream file(path, std::ios::binary);
  file << comment;
  for (const auto& [name, text] : sections) file << "--- " << name << '\n' << text;
  if (!file.flush()) throw std::runtime_error("cannot write " + path.string());
}

CaseFile load_case(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path.string());
  CaseFile result{path, {}, {}};
  for (std::string line; std::getline(file, line);) {
    if (line.starts_with("--- ")) {
      result.sections.emplace_back(line.substr(4), "");
    } else if (!result.sections.empty()) {
      result.sections.back().second += line + '\n';
    } else if (line.starts_with('#')) {
      result.comment += line + '\n';
    } else {
      throw std::runtime_error(path.string() + ": a comment or a section must begin the file");
    }
  }
  if (result.comment.empty() || result.sections.empty()) {
    throw std::runtime_error(path.string() + ": a comment and a section are needed");
  }
  return result;
}

std::vector<CaseFile> load_cases(const std::string& directory) {
  std::vector<CaseFile> cases;
  const std::filesystem::path root = source_dir() / "tests/cases";
  for (const auto& entry : std::filesystem::directory_iterator(root / directory)) {
    if (entry.path().extension() == ".case") cases.push_back(load_case(entry.path()));
  }
  std::sort(cases.begin(), cases.end(),
            [](const CaseFile& a, const CaseFile& b) { return a.path < b.path; });
  return cases;
}

bool update_cases() {
  const char* value = std::getenv("STRIKEOFF_UPDATE_CASES");
  return value != nullptr && std::string(value) == "1";
}

}  // namespace strikeoff::test
