// SPDX-License-Identifier: MIT
// Any bytes: read as a job; what reads is planned and printed. Nothing may crash, hang or break
// the width of the page. Not part of the tests yet; by hand, with clang and libclang-rt-14-dev:
//   cmake -S . -B build/fuzz -G Ninja -DCMAKE_CXX_COMPILER=clang++ -DSTRIKEOFF_BUILD_TESTS=OFF
//     -DCMAKE_CXX_FLAGS="-g -O1 -fsanitize=fuzzer-no-link,address,undefined"
//   cmake --build build/fuzz --target strikeoff
//   clang++ -std=c++20 -g -O1 -fsanitize=fuzzer,address,undefined -Iinclude
//     tests/fuzz/fuzz_plan.cpp build/fuzz/src/libstrikeoff.a -lfmt -o build/fuzz/fuzz_plan
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
  if (has_long_line(strikeoff::render_text(plan))) std::abort();
  static_cast<void>(strikeoff::render_json(plan));
  return 0;
}
