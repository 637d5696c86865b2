// SPDX-License-Identifier: MIT
#include "cli/files.h"

#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "support/temporary_directory.h"

using namespace strikeoff;
using namespace strikeoff::cli;
using Catch::Matchers::Contains;

namespace {

std::istringstream nothing;

std::string failure_to_read(const std::string& path) {
  try {
    static_cast<void>(read_file(path, nothing));
  } catch (const FileError& error) {
    return error.what();
  }
  return "";
}

std::string failure_to_write(const std::string& path) {
  try {
    write_file(path, "text");
  } catch (const FileError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("a file is read whole and standard input by its dash") {
  const test::TemporaryDirectory directory;
  const std::string text(200000, 'x');
  directory.write("job.json", text);
  CHECK(read_file(directory.file("job.json"), nothing) == text);
  std::istringstream in("{}\n");
  CHECK(read_file("-", in) == "{}\n");
}

TEST_CASE("a file that cannot be read is refused with the reason") {
  const test::TemporaryDirectory directory;
  CHECK_THAT(failure_to_read(directory.file("none.json")),
             Contains("none.json\": no such file or directory"));
  CHECK_THAT(failure_to_read(directory.path().string()), Contains("it is a directory"));
  directory.write("large.json", std::string(largest_file + 1, ' '));
  CHECK_THAT(failure_to_read(directory.file("large.json")), Contains("larger than 4 MiB"));
  directory.write("just.json", std::string(largest_file, ' '));
  CHECK(failure_to_read(directory.file("just.json")).empty());
}

TEST_CASE("standard input over the limit is refused") {
  std::istringstream in(std::string(largest_file + 1, ' '));
  CHECK_THROWS_AS(read_file("-", in), FileError);
}

TEST_CASE("writing replaces the file and leaves nothing beside it") {
  const test::TemporaryDirectory directory;
  directory.write("plan.txt", "old and longer");
  write_file(directory.file("plan.txt"), "new");
  CHECK(directory.read("plan.txt") == "new");
  CHECK(directory.entries() == 1);
}

TEST_CASE("a replaced file keeps its mode and a link stays a link") {
  const test::TemporaryDirectory directory;
  directory.write("plan.txt", "old");
  ::chmod(directory.file("plan.txt").c_str(), 0640);
  std::filesystem::create_symlink("plan.txt", directory.file("link"));
  write_file(directory.file("link"), "new");
  CHECK(std::filesystem::is_symlink(directory.file("link")));
  CHECK(directory.read("plan.txt") == "new");
  struct stat status {};
  REQUIRE(::stat(directory.file("plan.txt").c_str(), &status) == 0);
  CHECK((status.st_mode & 0777U) == 0640U);
}

TEST_CASE("a failed write says why and leaves no file behind") {
  const test::TemporaryDirectory directory;
  CHECK_THAT(failure_to_write(directory.file("none/plan.txt")),
             Contains("no such file or directory"));
  CHECK_THAT(failure_to_write(directory.path().string()), Contains("it is a directory"));
  CHECK(directory.entries() == 0);
}

TEST_CASE("a full device is a failure and stays a device") {
  CHECK_THAT(failure_to_write("/dev/full"), Contains("no space left on device"));
  CHECK(std::filesystem::is_character_file("/dev/full"));
}

TEST_CASE("a full output is a failure") {
  std::ofstream full("/dev/full");
  CHECK_THROWS_AS(print(full, std::string(100000, 'x')), FileError);
}

TEST_CASE("two names of one file are the same file") {
  const test::TemporaryDirectory directory;
  directory.write("job.json", "{}");
  std::filesystem::create_symlink("job.json", directory.file("link"));
  std::filesystem::create_hard_link(directory.file("job.json"), directory.file("hard"));
  CHECK(same_file(directory.file("job.json"), directory.file("./job.json")));
  CHECK(same_file(directory.file("job.json"), directory.file("link")));
  CHECK(same_file(directory.file("job.json"), directory.file("hard")));
  CHECK_FALSE(same_file(directory.file("job.json"), directory.file("other")));
  CHECK_FALSE(same_file("-", directory.file("job.json")));
}
