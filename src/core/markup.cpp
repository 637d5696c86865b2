// SPDX-License-Identifier: MIT
#include "core/markup.h"

#include "core/unicode.h"

namespace strikeoff {

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
        result += utf8(std::u32string(1, is_unprintable(point) ? 0xFFFD : point));
    }
  }
  return result;
}

}  // namespace strikeoff
