// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace strikeoff::icalendar {

/// A value of type TEXT (RFC 5545, 3.3.11): backslash, semicolon and comma escaped, line feeds as
/// "\n"; other control characters and those of the writing direction become blanks.
[[nodiscard]] std::string escaped(std::string_view text);

/// A content line (3.1), ended by CRLF and folded so that no line has more than 75 octets and none
/// splits a character.
[[nodiscard]] std::string line(std::string_view content);

/// Lower-case letters of ASCII with one hyphen for what stands between them, at most 40: "seal" of
/// "Seal, coat 1 of 2". Figures are left out, for they change when the job changes a little.
[[nodiscard]] std::string slug(std::string_view text);

/// What tells one job's name from another in a UID: its slug, and eight hexadecimal digits of the
/// whole name.
[[nodiscard]] std::string name_slug(std::string_view name);

}  // namespace strikeoff::icalendar
