// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "core/format.h"
#include "strikeoff/diagnostic.h"

namespace strikeoff {
namespace {

constexpr std::size_t widest_line = 90;  // characters of the user's line shown
constexpr std::size_t lead = 30;         // of them before the marker, in a line cut short

/// The characters of one line (from 1), each as its own text; blanks for tabs and controls.
std::vector<std::string> characters_of_line(std::string_view text, int line) {
  for (int i = 1; i < line; ++i) {
    const std::size_t end = text.find('\n');
    if (end == std::string_view::npos) return {};
    text.remove_prefix(end + 1);
  }
  text = text.substr(0, text.find('\n'));
  if (line == 1 && text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.ends_with('\r')) text.remove_suffix(1);
  std::vector<std::string> characters;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte & 0xC0U) == 0x80U && !characters.empty()) {
      characters.back() += c;
    } else {
      characters.emplace_back(1, byte < 0x20U || byte == 0x7FU ? ' ' : c);
    }
  }
  return characters;
}

/// The line with its number, and the marker under it; a long line is cut on both sides.
std::string excerpt(const Diagnostic& d, std::string_view text) {
  auto characters = characters_of_line(text, d.line);
  std::size_t start = static_cast<std::size_t>(std::max(1, d.column)) - 1;
  std::size_t width = static_cast<std::size_t>(std::max(1, d.width));
  std::string before, after;
  if (characters.size() > widest_line) {
    const std::size_t from = start > lead ? start - lead : 0;
    const std::size_t to = std::min(characters.size(), from + widest_line);
    if (from > 0) before = "...";
    if (to < characters.size()) after = "...";
    characters = {characters.begin() + static_cast<std::ptrdiff_t>(std::min(from, to)),
                  characters.begin() + static_cast<std::ptrdiff_t>(to)};
    start = start - from + before.size();
    width = std::min(width, before.size() + (to - from) - std::min(start, to - from));
  }
  std::string line = before;
  for (const std::string& character : characters) line += character;
  return fmt::format("{:>5} | {}\n{:>5} | {}{}\n", d.line, line + after, "",
                     std::string(start, ' '), std::string(std::max<std::size_t>(width, 1), '^'));
}

}  // namespace

std::string render_diagnostics(const std::vector<Diagnostic>& diagnostics, std::string_view file,
                               std::string_view text) {
  std::string out;
  for (const Diagnostic& d : diagnostics) {
    out += fmt::format("{}:{}:{}: error: {} [{}]\n", file, d.line, d.column, d.message, d.code);
    out += excerpt(d, text);
    if (!d.pointer.empty()) out += fmt::format("  at {}\n", d.pointer);
    if (!d.help.empty()) out += fmt::format("  help: {}\n", d.help);
  }
  out += count(static_cast<int>(diagnostics.size()), "error", "errors") + "; no plan was made\n";
  return out;
}

std::string render_diagnostics_json(const std::vector<Diagnostic>& diagnostics,
                                    std::string_view file) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const Diagnostic& d : diagnostics) {
    list.push_back({{"file", file},
                    {"line", d.line},
                    {"column", d.column},
                    {"pointer", d.pointer},
                    {"severity", "error"},
                    {"code", d.code},
                    {"message", d.message},
                    {"help", d.help}});
  }
  return list.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace strikeoff
