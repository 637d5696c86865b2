// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace strikeoff {

/// One problem in a job file, placed in its text.
struct Diagnostic {
  std::string code;     // a word code: "unknown-key", "not-a-length"
  std::string message;  // what is wrong: lower case, one sentence, no full stop
  std::string help;     // how to write it right; may be empty
  std::string pointer;  // JSON Pointer (RFC 6901) of the value or key
  int line = 1;         // from 1
  int column = 1;       // from 1, in characters (UTF-8 code points)
  int width = 1;        // characters to mark on that line, at least 1
  bool operator==(const Diagnostic&) const = default;
};

/// The problems as a person reads them: `FILE:LINE:COLUMN: error: … [code]`, the line with a
/// marker, the pointer, the help; then one line that counts them. `text` is the job file.
[[nodiscard]] std::string render_diagnostics(const std::vector<Diagnostic>& diagnostics,
                                             std::string_view file, std::string_view text);

/// The same problems as a JSON array of objects with the keys file, line, column, pointer,
/// severity, code, message, help.
[[nodiscard]] std::string render_diagnostics_json(const std::vector<Diagnostic>& diagnostics,
                                                  std::string_view file);

}  // namespace strikeoff
