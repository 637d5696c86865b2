// SPDX-License-Identifier: MIT
#include "support/cli_case.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace strikeoff::test {
namespace {

struct Section {
  std::string name, value, body;  // "--- name: value"
};

std::vector<Section> sections(std::istream& in) {
  std::vector<Section> result;
  for (std::string line; std::getline(in, line);) {
    if (line.starts_with("--- ")) {
      const std::size_t colon = line.find(": ");
      Section section;
      section.name = line.substr(4, colon == std::string::npos ? colon : colon - 4);
      if (colon != std::string::npos) section.value = line.substr(colon + 2);
      result.push_back(std::move(section));
    } else if (!result.empty()) {
      result.back().body += line + "\n";
    }
  }
  return result;
}

std::vector<std::string> words(const std::string& text) {
  std::vector<std::string> result;
  bool quoted = false;
  bool inside = false;
  for (const char c : text) {
    if (c == '"') {
      quoted = !quoted;
      if (quoted && !inside) result.emplace_back();
      inside = true;
    } else if (c == ' ' && !quoted) {
      inside = false;
    } else {
      if (!inside) result.emplace_back();
      inside = true;
      result.back() += c;
    }
  }
  return result;
}

std::vector<std::string> lines(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> result;
  for (std::string line; std::getline(in, line);) result.push_back(line);
  return result;
}

}  // namespace

CliCase read_cli_case(const std::filesystem::path& path) {
  std::ifstream in(path);
  CliCase result;
  for (Section& section : sections(in)) {
    if (section.name == "file") {
      result.files.emplace_back(section.value, section.body);
      continue;
    }
    if (section.name == "run") {
      result.runs.push_back({});
      result.runs.back().arguments = words(section.value);
      continue;
    }
    if (result.runs.empty()) throw std::runtime_error(path.string() + ": no run before this");
    ExpectedRun& run = result.runs.back();
    if (section.name == "stdin") {
      run.input = section.body;
    } else if (section.name == "exit") {
      run.exit = std::stoi(section.value);
    } else if (section.name == "stdout") {
      run.out_whole.push_back(section.body);
    } else if (section.name == "stdout contains") {
      run.out_contains = lines(section.body);
    } else if (section.name == "stderr") {
      run.err_whole.push_back(section.body);
    } else if (section.name == "stderr contains") {
      run.err_contains = lines(section.body);
    } else if (section.name == "after") {
      run.files.emplace_back(section.value, section.body);
    } else {
      throw std::runtime_error(path.string() + ": no such section: " + section.name);
    }
  }
  return result;
}

}  // namespace strikeoff::test
