// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace strikeoff {

struct Character {
  char32_t code = 0;
  std::size_t bytes = 0;  // 0: what stands there is not UTF-8
};
/// The first character of a text that is not empty (RFC 3629: no overlong forms, no surrogates).
[[nodiscard]] Character first_character(std::string_view text);

/// The code points of UTF-8 text; U+FFFD for each byte that belongs to none.
[[nodiscard]] std::u32string code_points(std::string_view text);
/// UTF-8 of code points.
[[nodiscard]] std::string utf8(std::u32string_view points);

/// Controls (Unicode Cc), line separators, zero-width and direction marks, non-characters: nothing
/// to see, and they can rewrite what stands around them.
[[nodiscard]] bool is_unprintable(char32_t code);

/// True in the blocks of wide characters, which take two columns of a terminal (Unicode TR 11, from
/// memory); too many rather than too few.
[[nodiscard]] bool is_wide(char32_t code);

}  // namespace strikeoff
