// SPDX-License-Identifier: MIT
#include "cli/run.h"

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <stdexcept>

using namespace strikeoff;
using Catch::Matchers::Contains;

namespace {

/// Input that breaks in a way the program does not expect.
class BrokenInput : public std::streambuf {
 protected:
  int_type underflow() override { throw std::runtime_error("broken"); }
};

}  // namespace

TEST_CASE("a fault nobody expected is one sorry line and status 70") {
  BrokenInput buffer;
  std::istream in(&buffer);
  in.exceptions(std::ios::badbit);
  std::ostringstream out;
  std::ostringstream err;
  CHECK(cli::run({"plan", "-"}, in, out, err) == 70);
  CHECK(out.str().empty());
  CHECK_THAT(err.str(), Contains("sorry, this is a bug in strikeoff (broken)"));
}

TEST_CASE("a full standard output is status 4") {
  std::istringstream in;
  std::ostringstream err;
  for (const char* command : {"new", "--help", "--version"}) {
    std::ofstream full("/dev/full");
    CAPTURE(command);
    CHECK(cli::run({command}, in, full, err) == 4);
  }
  CHECK_THAT(err.str(), Contains("strikeoff: cannot write to standard output"));
}
