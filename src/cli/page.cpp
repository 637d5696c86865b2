// SPDX-License-Identifier: MIT
#include "cli/page.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <iostream>
#include <string_view>

namespace strikeoff::cli {
namespace {

std::string_view environment(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? "" : value;
}

/// A whole number; 0 for anything else.
std::size_t whole(std::string_view text) {
  std::size_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return error == std::errc() && end == text.data() + text.size() ? value : 0;
}

bool is_terminal(const Streams& streams) {
  return &streams.out == &std::cout && isatty(STDOUT_FILENO) == 1;
}

/// Columns of the terminal; the widest page where nobody says.
std::size_t terminal_width() {
  winsize size{};
  std::size_t columns = 0;
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0) columns = size.ws_col;
  if (columns == 0) columns = whole(environment("COLUMNS"));
  const std::size_t most = TextPage{}.width;
  return columns == 0 ? most : std::clamp(columns, least_width, most);
}

}  // namespace

std::optional<std::size_t> width_of(const std::string& text) {
  const std::size_t width = whole(text);
  if (width < least_width || width > most_width) return std::nullopt;
  return width;
}

TextPage page_for_file(const Look& look) {
  TextPage page;
  if (!look.width.empty()) page.width = width_of(look.width).value();
  return page;
}

TextPage page_for(const Look& look, const Streams& streams) {
  TextPage page = page_for_file(look);
  const bool terminal = is_terminal(streams);
  if (terminal && look.width.empty()) page.width = terminal_width();
  const bool wanted = terminal && environment("NO_COLOR").empty() && environment("TERM") != "dumb";
  page.emphasis = look.color == "always" || (look.color == "auto" && wanted);
  return page;
}

}  // namespace strikeoff::cli
