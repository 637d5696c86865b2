// SPDX-License-Identifier: MIT
// Any bytes: read as a job; what reads is planned and printed. Nothing may crash, hang or break
// the width of the page. fuzz_plan calls this with what libFuzzer makes up, fuzz_replay with the
// files of tests/fuzz/corpus. How to run them is in DEVELOPERS.md.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "strikeoff/render.h"

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

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(data, data + size);
  const strikeoff::ReadResult read = strikeoff::read_job(text);
  if (!read.job) {
    // No job and no problem would be a silent loss.
    if (read.diagnostics.empty()) std::abort();
    static_cast<void>(strikeoff::render_diagnostics(read.diagnostics, "job.json", text));
    return 0;
  }
  const strikeoff::Plan plan = strikeoff::make_plan(*read.job);
  for (const strikeoff::Check& check : plan.checks) {
    if (check.code == "cut-list" && check.level == strikeoff::Level::stop) std::abort();
  }
  if (has_long_line(strikeoff::render_text(plan))) std::abort();
  static_cast<void>(strikeoff::render_json(plan));
  static_cast<void>(strikeoff::render_html(plan));  // with every drawing
  static_cast<void>(strikeoff::render_ics(plan));
  using enum strikeoff::CsvTable;
  for (const auto table : {parts, boards, materials, batches, schedule}) {
    static_cast<void>(strikeoff::render_csv(plan, table));
  }
  return 0;
}
