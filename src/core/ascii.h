// SPDX-License-Identifier: MIT
#pragma once

namespace strikeoff {

// Characters of ASCII; the standard library's functions ask the locale.

[[nodiscard]] constexpr bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
[[nodiscard]] constexpr bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace strikeoff
