// SPDX-License-Identifier: MIT
// Any bytes: read as the log of one pour; what reads is planned on and printed. Nothing may crash,
// hang or break the width of the page. As fuzz_plan, with the files of tests/fuzz/logs.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "strikeoff/read_job.h"
#include "strikeoff/render.h"
#include "strikeoff/resume.h"

namespace {

bool has_long_line(std::string_view text) {
  std::size_t characters = 0;
  for (const char c : text) {
    if (c == '\n') {
      characters = 0;
    } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U && ++characters > 100) {
      return true;  // bytes 10xxxxxx go on with a character, so they do not count
    }
  }
  return false;
}

/// Two slabs, two mixers; the water begins at nine.
strikeoff::Job job() {
  const strikeoff::ReadResult read = strikeoff::read_job(R"({
    "date": "2026-05-16T09:00", "mix": "rapid-fine-24kg",
    "slabs": [
      {"name": "bench", "base": {"rectangle": {"length": "1800 mm", "depth": "600 mm"}},
       "overhang": "25 mm", "thickness": "40 mm"},
      {"name": "step", "support": "ground", "thickness": "80 mm",
       "base": {"rectangle": {"length": "900 mm", "depth": "400 mm"}}}],
    "crew": {"mixers": 2, "mixing": 2}})");
  if (!read.job) std::abort();
  return *read.job;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const strikeoff::Job pour = job();
  const std::string text(data, data + size);
  const strikeoff::LogResult read = strikeoff::read_log(text, pour);
  if (!read.log) {
    // No log and no problem would be a silent loss.
    if (read.diagnostics.empty()) std::abort();
    static_cast<void>(strikeoff::render_diagnostics(read.diagnostics, "log.json", text));
    return 0;
  }
  const strikeoff::Resume rest = resume(pour, strikeoff::shipped_catalogue(), *read.log);
  if (has_long_line(strikeoff::render_text(rest))) std::abort();
  static_cast<void>(strikeoff::render_json(rest));
  return 0;
}
