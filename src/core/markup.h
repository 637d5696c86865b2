// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace strikeoff {

/// Text as it stands between the tags or in a quoted attribute of XML 1.0 and HTML: the five
/// special characters become references; line ends and tabs become blanks; other characters that
/// are not printable (see `is_unprintable`: all that XML 1.0 forbids is among them) and bytes that
/// are not UTF-8 become U+FFFD.
[[nodiscard]] std::string markup(std::string_view text);

}  // namespace strikeoff
