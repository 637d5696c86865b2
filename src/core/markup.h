// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace strikeoff {

/// Text as it stands between the tags or in a quoted attribute of XML 1.0 and HTML: the five
/// special characters become references; what XML 1.0 forbids (control characters, bytes that are
/// not UTF-8) becomes U+FFFD; line ends and tabs become blanks. Controls of the writing direction
/// (Unicode UAX #9) become U+FFFD too: a name must not turn the words around it.
[[nodiscard]] std::string markup(std::string_view text);

/// The code points of UTF-8 text; U+FFFD for each byte that belongs to none.
[[nodiscard]] std::u32string code_points(std::string_view text);
/// UTF-8 of code points.
[[nodiscard]] std::string utf8(std::u32string_view points);

}  // namespace strikeoff
