// SPDX-License-Identifier: MIT
#include "core/unicode.h"

#include <algorithm>

namespace strikeoff {
namespace {

constexpr char32_t replacement = 0xFFFD;

bool within(char32_t code, char32_t first, char32_t last) {
  return code >= first && code <= last;
}

}  // namespace

Character first_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  if (byte(0) < 0x80) return {byte(0), 1};
  const std::size_t bytes = byte(0) >= 0xF0 ? 4 : byte(0) >= 0xE0 ? 3 : byte(0) >= 0xC2 ? 2 : 0;
  if (bytes == 0 || byte(0) > 0xF4 || text.size() < bytes) return {};
  char32_t code = byte(0) & (0x7FU >> bytes);
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0U) != 0x80) return {};
    code = code << 6U | (byte(i) & 0x3FU);
  }
  const bool overlong = (bytes == 3 && code < 0x800) || (bytes == 4 && code < 0x10000);
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (overlong || surrogate || code > 0x10FFFF) return {};
  return {code, bytes};
}

std::u32string code_points(std::string_view text) {
  std::u32string points;
  while (!text.empty()) {
    const Character c = first_character(text);
    points += c.bytes == 0 ? replacement : c.code;
    text.remove_prefix(std::max<std::size_t>(c.bytes, 1));
  }
  return points;
}

std::string utf8(std::u32string_view points) {
  std::string text;
  const auto add = [&](char32_t byte) { text += static_cast<char>(byte); };
  for (const char32_t point : points) {
    if (point < 0x80) {
      add(point);
    } else if (point < 0x800) {
      add(0xC0U | (point >> 6U));
      add(0x80U | (point & 0x3FU));
    } else if (point < 0x10000) {
      add(0xE0U | (point >> 12U));
      add(0x80U | ((point >> 6U) & 0x3FU));
      add(0x80U | (point & 0x3FU));
    } else {
      add(0xF0U | (point >> 18U));
      add(0x80U | ((point >> 12U) & 0x3FU));
      add(0x80U | ((point >> 6U) & 0x3FU));
      add(0x80U | (point & 0x3FU));
    }
  }
  return text;
}

bool is_unprintable(char32_t code) {
  return code < 0x20 || within(code, 0x7F, 0x9F) || code == 0x61C || within(code, 0x200B, 0x200F) ||
         within(code, 0x2028, 0x202E) || within(code, 0x2060, 0x206F) || code == 0xFEFF ||
         within(code, 0xFFF9, 0xFFFB) || within(code, 0xFFFE, 0xFFFF) ||
         within(code, 0xE0000, 0xE007F);
}

bool is_wide(char32_t code) {
  return within(code, 0x1100, 0x115F) || within(code, 0x2E80, 0xA4CF) ||
         within(code, 0xAC00, 0xD7A3) || within(code, 0xF900, 0xFAFF) ||
         within(code, 0xFE30, 0xFE6F) || within(code, 0xFF00, 0xFF60) ||
         within(code, 0xFFE0, 0xFFE6) || within(code, 0x1F300, 0x1FAFF) || code >= 0x20000;
}

}  // namespace strikeoff
