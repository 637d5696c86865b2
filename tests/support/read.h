// SPDX-License-Identifier: MIT
#pragma once

#include <catch2/catch.hpp>
#include <string>

#include "strikeoff/read_job.h"

namespace strikeoff::test {

/// The job a text holds; the test fails, with the diagnostics, when it holds none.
inline Job job_of(const std::string& text) {
  const ReadResult result = read_job(text);
  INFO(render_diagnostics(result.diagnostics, "job.json", text));
  REQUIRE(result.job.has_value());
  return *result.job;
}

}  // namespace strikeoff::test
