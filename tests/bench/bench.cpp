// SPDX-License-Identifier: MIT
// How long a whole run of the program takes, as a multiple of a program that only parses the job
// and prints it again. Both are run in turn, so that a slow moment of the machine meets both. With
// "all", the same for everything the program can make of a job: every form, every table, every
// drawing; a run of the program for each. The drawings go to a directory in memory where there is
// one, for the program waits until a disk has each.
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
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

/// A new directory, in memory where there is one, that goes with everything in it.
class Directory {
 public:
  Directory() {
    std::error_code failed;
    const std::filesystem::path memory = "/dev/shm";
    const bool there = std::filesystem::is_directory(memory, failed);
    path_ = (there ? memory : std::filesystem::temp_directory_path()) / "strikeoff-XXXXXX";
    if (mkdtemp(path_.data()) == nullptr) throw std::runtime_error("cannot make " + path_);
  }
  Directory(const Directory&) = delete;
  Directory& operator=(const Directory&) = delete;
  ~Directory() {
    std::error_code failed;
    std::filesystem::remove_all(path_, failed);
  }
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

using Command = std::vector<std::string>;

std::vector<Command> everything(const std::string& program, const std::string& job,
                                const std::string& directory) {
  std::vector<Command> commands;
  for (const char* form : {"text", "json", "html", "ics"}) {
    commands.push_back({program, "plan", job, "--format", form});
  }
  for (const char* table : {"parts", "boards", "materials", "batches", "schedule"}) {
    commands.push_back({program, "plan", job, "--format", "csv", "--table", table});
  }
  commands.push_back({program, "draw", job, "-o", directory});
  return commands;
}

}  // namespace

int main(int argc, char** argv) try {
  const int runs = argc == 5 || argc == 6 ? std::atoi(argv[4]) : 0;
  if (runs < 1) {
    std::cerr << "usage: bench STRIKEOFF PARSE_ECHO JOB RUNS [all]\n";
    return 2;
  }
  const bool all = argc == 6;
  const Directory directory;
  const std::vector<Command> commands = all ? everything(argv[1], argv[3], directory.path())
                                            : std::vector<Command>{{argv[1], "plan", argv[3]}};
  std::vector<double> program;
  std::vector<double> echo;
  for (int run = 0; run < runs; ++run) {
    double sum = 0;
    for (const Command& command : commands) sum += milliseconds_of(command);
    program.push_back(sum);
    echo.push_back(milliseconds_of({argv[2], argv[3]}));
  }
  std::cout << (all ? "strikeoff, every form: " : "strikeoff plan: ") << median(program)
            << " ms, parse and print: " << median(echo) << " ms (medians of " << runs
            << " runs each)\nratio " << median(program) / median(echo)
            << (all ? ", over " + std::to_string(commands.size()) +
                          " runs; should take under 50 ms\n"
                    : std::string(", should be at most 5\n"));
  return 0;
} catch (const std::exception& error) {
  std::cerr << "bench: " << error.what() << '\n';
  return 1;
}
