// SPDX-License-Identifier: MIT
#include "core/markup.h"

#include <cstddef>

namespace strikeoff {
namespace {

constexpr char32_t replacement = 0xFFFD;

/// How many bytes a sequence has by its first one; 0 for a byte that begins none.
std::size_t sequence_length(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

/// Too long for its value, a surrogate, or past the last code point (RFC 3629).
bool is_ill_formed(char32_t point, std::size_t length) {
  constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
  return point < least[length] || (point >= 0xD800 && point < 0xE000) || point > 0x10FFFF;
}

bool is_forbidden(char32_t point) {
  const bool control = point < 0x20 || (point >= 0x7F && point < 0xA0);
  const bool direction = (point >= 0x202A && point <= 0x202E) ||
                         (point >= 0x2066 && point <= 0x2069) || point == 0x200E ||
                         point == 0x200F || point == 0x061C;
  return control || direction || point == 0xFFFE || point == 0xFFFF;
}

}  // namespace

std::u32string code_points(std::string_view text) {
  std::u32string points;
  for (std::size_t i = 0; i < text.size();) {
    const auto first = static_cast<unsigned char>(text[i]);
    const std::size_t length = sequence_length(first);
    char32_t point = length <= 1 ? first : first & (0xFFU >> (length + 1));
    bool whole = length > 0 && i + length <= text.size();
    for (std::size_t k = 1; whole && k < length; ++k) {
      const auto next = static_cast<unsigned char>(text[i + k]);
      whole = (next & 0xC0U) == 0x80U;
      point = (point << 6U) | (next & 0x3FU);
    }
    whole = whole && !is_ill_formed(point, length);
    points += whole ? point : replacement;
    i += whole ? length : 1;
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

std::string markup(std::string_view text) {
  std::string result;
  for (const char32_t point : code_points(text)) {
    switch (point) {
      case U'&':
        result += "&amp;";
        break;
      case U'<':
        result += "&lt;";
        break;
      case U'>':
        result += "&gt;";
        break;
      case U'"':
        result += "&quot;";
        break;
      case U'\'':
        result += "&#39;";
        break;
      case U'\t':
      case U'\n':
      case U'\r':
        result += ' ';
        break;
      default:
        result += utf8(std::u32string(1, is_forbidden(point) ? replacement : point));
    }
  }
  return result;
}

}  // namespace strikeoff
