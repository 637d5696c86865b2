// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/json.h"
#include "strikeoff/diagnostic.h"

namespace strikeoff {

/// A stretch of one line of the text; columns and width in characters (code points).
struct Span {
  int line = 1;
  int column = 1;
  int width = 1;
};

/// Where a value stands; of a list or an object its opening bracket.
struct Place {
  Span value;
  std::optional<Span> key;
};

/// JSON with the place of every value in its text, by JSON Pointer (RFC 6901).
struct JsonText {
  Json root;
  std::map<std::string, Place, std::less<>> places;
};

struct JsonResult {
  std::optional<JsonText> json;  // nothing when the text is no JSON
  std::vector<Diagnostic> diagnostics;
};

inline constexpr int most_levels = 32;
inline constexpr int most_entries = 1000;    // of one list or object
inline constexpr int most_values = 200'000;  // in the whole text
inline constexpr std::size_t most_bytes = 4U << 20U;

/// Reads JSON (RFC 8259) with // and /* */ comments and an optional byte order mark. A text that
/// breaks the grammar or a limit above gives exactly one diagnostic and no value; duplicate keys
/// give one each beside the value, in which the last one counts.
[[nodiscard]] JsonResult read_json(std::string_view text);

/// The pointer of a member: '~' and '/' of the key are escaped.
[[nodiscard]] std::string pointer_to(const std::string& parent, std::string_view key);
[[nodiscard]] std::string pointer_to(const std::string& parent, std::size_t index);

}  // namespace strikeoff
