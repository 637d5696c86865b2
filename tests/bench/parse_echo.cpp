// SPDX-License-Identifier: MIT
// Reads a job file and prints it again: the least a program that handles job files can do.
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "usage: parse_echo JOB\n";
    return 2;
  }
  std::ifstream file(argv[1]);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  const bool with_comments = true;
  std::cout << nlohmann::ordered_json::parse(text, nullptr, true, with_comments).dump(2) << '\n';
  return std::cout.flush() ? 0 : 4;
}
