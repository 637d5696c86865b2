// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "cli/commands.h"
#include "strikeoff/render.h"

namespace strikeoff::cli {

inline constexpr std::size_t least_width = 60;
inline constexpr std::size_t most_width = 200;

/// A width as written on the command line; nothing when it is no whole number of `least_width` to
/// `most_width` columns.
[[nodiscard]] std::optional<std::size_t> width_of(const std::string& text);

/// The page for standard output. A terminal narrower than 100 columns gets narrower lines, and
/// emphasis unless NO_COLOR is set and not empty (the no-color convention) or TERM is "dumb".
/// What the command line says comes first. Precondition: its width is right.
[[nodiscard]] TextPage page_for(const Look& look, const Streams& streams);

/// The page for a file: as wide as said, and never an escape sequence.
[[nodiscard]] TextPage page_for_file(const Look& look);

}  // namespace strikeoff::cli
