// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

#include "render/text.h"

namespace strikeoff::html {

/// Whether a box to tick stands before every row of a table. A cell "[ ]" is such a box anyway.
enum class Ticks { none, rows };

/// The same words as HTML, everything escaped: paragraphs and tables. Headings of sections are left
/// out, for the sheet has its own; the title is an <h1>.
[[nodiscard]] std::string blocks(const text::Text& text, Ticks ticks = Ticks::none);

/// <section> with a heading and what stands in it; nothing for nothing.
[[nodiscard]] std::string section(std::string_view id, std::string_view title,
                                  const std::string& content);

}  // namespace strikeoff::html
