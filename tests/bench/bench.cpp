// SPDX-License-Identifier: MIT
// How long a whole run of the program takes, as a multiple of a program that only parses the job
// and prints it again. Both are run in turn, so that a slow moment of the machine meets both.
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <iostream>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using Milliseconds = std::chrono::duration<double, std::milli>;

/// Wall time of one run with its output thrown away.
double milliseconds_of(std::vector<std::string> command) {
  std::vector<char*> arguments;
  for (std::string& word : command) arguments.push_back(word.data());
  arguments.push_back(nullptr);

  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
  char* environment[] = {nullptr};
  pid_t process = 0;
  int status = 0;
  const auto start = std::chrono::steady_clock::now();
  const bool ran =
      posix_spawn(&process, arguments[0], &actions, nullptr, arguments.data(), environment) == 0 &&
      waitpid(process, &status, 0) == process;
  const Milliseconds elapsed = std::chrono::steady_clock::now() - start;
  posix_spawn_file_actions_destroy(&actions);
  if (!ran || !WIFEXITED(status) || WEXITSTATUS(status) != 0) {
    throw std::runtime_error("cannot run " + command[0]);
  }
  return elapsed.count();
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

}  // namespace

int main(int argc, char** argv) try {
  const int runs = argc == 5 ? std::atoi(argv[4]) : 0;
  if (runs < 1) {
    std::cerr << "usage: bench STRIKEOFF PARSE_ECHO JOB RUNS\n";
    return 2;
  }
  std::vector<double> plan;
  std::vector<double> echo;
  for (int run = 0; run < runs; ++run) {
    plan.push_back(milliseconds_of({argv[1], "plan", argv[3]}));
    echo.push_back(milliseconds_of({argv[2], argv[3]}));
  }
  std::cout << "strikeoff plan: " << median(plan) << " ms, parse and print: " << median(echo)
            << " ms (medians of " << runs << " runs each)\n"
            << "ratio " << median(plan) / median(echo) << ", should be at most 5\n";
  return 0;
} catch (const std::exception& error) {
  std::cerr << "bench: " << error.what() << '\n';
  return 1;
}
